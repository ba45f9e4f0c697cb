/** What a sentence asks the hands to do, as far as it could hurt at the wrong moment. */
export type Ask = 'nose-up' | 'nose-down' | 'less-power';

const PATTERNS: readonly (readonly [Ask, RegExp])[] = [
  ['nose-up', /\b(?:raise the nose|nose (?:slowly )?up|trim nose up|pull\b(?! less)|more back)/i],
  ['nose-down', /\b(?:lower the nose|nose down|trim nose down|let it come down|nose to the runway|dive)/i],
  // What stands behind "then" is asked for once the first is done, behind "with it" only while it is
  [
    'less-power',
    /\b(?:less power|(?<!then |with it )power (?:back|off|to idle)|throttle closed|close the throttle|power down)/i,
  ],
];

export const asksOf = (text: string): readonly Ask[] =>
  PATTERNS.filter(([, pattern]) => pattern.test(text)).map(([ask]) => ask);
