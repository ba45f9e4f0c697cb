const LIGHT_WORDS: Readonly<Record<string, string>> = { W: 'white', R: 'red', P: 'changing', '-': 'dark' };

/** "white white red red", from the unit furthest from the runway. */
export const lightsInWords = (letters: string): string =>
  [...letters].map((l) => LIGHT_WORDS[l] ?? l).join(' ');
