/** A person's own luck: one number of state, so that a memory that holds it can be copied. Mulberry32 (public domain). */
export interface Luck {
  state: number;
}

export const luckOf = (seed: number): Luck => ({ state: (Math.imul(seed, 0x9e3779b1) ^ 0x5bd1e995) >>> 0 });

/** 0 to 1. */
export const chance = (luck: Luck): number => {
  luck.state = (luck.state + 0x6d2b79f5) >>> 0;
  let t = luck.state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};

/** Normal, mean 0, standard deviation 1 (twelve draws: held inside six). */
export const deviate = (luck: Luck): number => {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += chance(luck);
  return sum;
};

/** A reading that wanders round 0 with this spread, as a needle is misread: the error stays for some seconds. */
export const wandered = (error: number, spread: number, sinceS: number, luck: Luck): number => {
  const stays = Math.exp(-sinceS / 6);
  return error * stays + spread * Math.sqrt(1 - stays * stays) * deviate(luck);
};
