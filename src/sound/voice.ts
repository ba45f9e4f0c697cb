/**
 * Speech by the browser's own voices (W3C Web Speech API), where there are any. One sentence at a time: a newer one
 * takes the place of what is being said.
 */
export interface Voice {
  say(text: string): void;
  hush(): void;
}

/** Slightly quicker than reading aloud, as on the radio. */
const RATE = 1.08;

export const createVoice = (): Voice => {
  const speech = typeof speechSynthesis === 'undefined' ? null : speechSynthesis;
  return {
    say: (text) => {
      if (speech === null || text === '') return;
      speech.cancel();
      const words = new SpeechSynthesisUtterance(spoken(text));
      words.lang = 'en-GB';
      words.rate = RATE;
      speech.speak(words);
    },
    hush: () => speech?.cancel(),
  };
};

const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'niner'] as const;

const figureByFigure = (digits: string): string =>
  [...digits].map((digit) => FIGURES[Number(digit)] ?? digit).join(' ');

/** Runways, call signs and bearings are said figure by figure (ICAO Annex 10 volume II); the rest stays. */
export const spoken = (text: string): string =>
  text
    .replace(
      /\b(runway|Lapwing) (\d+)/gi,
      (_, word: string, digits: string) => `${word} ${figureByFigure(digits)}`,
    )
    .replace(/\b(\d{3}) degrees/g, (_, digits: string) => `${figureByFigure(digits)} degrees`);
