/**
 * The exercises in the order in which an instructor would take them: the circuit part by part and whole, then
 * deciding, then harder air, other landings, and what fails (common practice).
 */
const SYLLABUS: readonly (readonly [part: string, exercises: readonly string[]])[] = [
  [
    'The circuit',
    ['take-off-and-climb', 'downwind-and-checks', 'base-and-final', 'final-and-landing', 'normal-circuit'],
  ],
  [
    'Deciding and mending',
    [
      'go-around',
      'balloon-and-bounce',
      'late-base-turn',
      'too-high-on-final',
      'too-low-on-final',
      'abandoned-take-off',
      'extend-orbit-number-two',
    ],
  ],
  ['Wind and air', ['crosswind-circuit', 'gusty-day', 'high-and-hot']],
  ['Other landings', ['flapless', 'slip-to-lose-height', 'glide-approach', 'short-field', 'soft-field']],
  ['When something fails', ['engine-failure-after-take-off', 'partial-power', 'radio-failure']],
  ['Before a check', ['touch-and-go-session']],
];

/** One part of the syllabus with its exercises. */
export interface Part<E> {
  readonly title: string;
  readonly exercises: readonly E[];
}

/** The exercises part by part; what stands in no part comes last. */
export const inParts = <E extends { readonly id: string }>(exercises: readonly E[]): readonly Part<E>[] => {
  const parts = SYLLABUS.map(([title, ids]) => ({
    title,
    exercises: ids.flatMap((id) => exercises.filter((each) => each.id === id)),
  }));
  const placed = new Set(SYLLABUS.flatMap(([, ids]) => ids));
  const others = exercises.filter(({ id }) => !placed.has(id));
  return [...parts, { title: 'Others', exercises: others }].filter((part) => part.exercises.length > 0);
};
