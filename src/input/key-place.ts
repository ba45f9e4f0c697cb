/** What of a key event says which key it was. */
export interface KeyStruck {
  /** What the key writes (UI Events `KeyboardEvent.key`). */
  readonly key: string;
  /** Where it stands, by the letter that a US keyboard has there (`KeyboardEvent.code`). */
  readonly code: string;
}

const LATIN = /^\p{Script=Latin}$/u;
const OTHER_LETTER = /^(?!\p{Script=Latin})[\p{L}\p{M}]/u;
const OTHER_DIGIT = /^(?![0-9])\p{Nd}$/u;
const ASCII_MARK = /^[!-/:-@[-`{-~]$/;

const MARKS: Readonly<Record<string, string>> = { Comma: ',', Period: '.', Slash: '?' };

/** What a US keyboard writes there, letters in lower case; empty for what is no letter, digit or mark of the table. */
const writtenThere = (code: string): string =>
  /^Key[A-Z]$/.test(code)
    ? code.slice(3).toLowerCase()
    : /^Digit\d$/.test(code)
      ? code.slice(5)
      : (MARKS[code] ?? '');

/**
 * Reads keys by their place where the letters are not Latin (Cyrillic, Greek, Hebrew, Arabic ...), so that W is where W
 * stands; null where what the key writes counts. Such keyboards write marks on some keys of letters too: those count by
 * place as long as the last letter was not Latin.
 */
export const createKeyPlaces = (): ((struck: KeyStruck) => string | null) => {
  let latin = true;
  return ({ key, code }) => {
    const onLetter = /^Key[A-Z]$/.test(code);
    if (LATIN.test(key)) latin = true;
    else if (onLetter && OTHER_LETTER.test(key)) latin = false;
    const byPlace =
      OTHER_LETTER.test(key) || OTHER_DIGIT.test(key) || (!latin && onLetter && ASCII_MARK.test(key));
    return (byPlace && writtenThere(code)) || null;
  };
};
