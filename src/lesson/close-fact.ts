/**
 * A fact that changes no more, frozen through and through: every keyframe shares it instead of copying it, so
 * that what a flight carries grows with the flight and not with its square.
 */
export const closeFact = <T>(fact: T): T => {
  if (typeof fact !== 'object' || fact === null || Object.isFrozen(fact)) return fact;
  for (const part of Object.values(fact)) closeFact(part);
  return Object.freeze(fact);
};
