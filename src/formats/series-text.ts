/**
 * A series of whole numbers as short text that deflates well: what is written is how the step from one to the next
 * changes, small for anything that moves smoothly. Each number is folded (0 -1 1 -2 2 ... become 0 1 2 3 4 ...);
 * below 80 it is one character, otherwise one of eleven that go on, standing for the remainder by eleven.
 */
const ALPHABET = [...Array(92).keys()]
  .map((i) => String.fromCharCode(35 + i))
  .filter((c) => c !== '\\')
  .join('');
const ENDING = 80;
const GOING_ON = ALPHABET.length - ENDING;
const PLACE = new Int16Array(128).fill(-1);
for (let i = 0; i < ALPHABET.length; i += 1) PLACE[ALPHABET.charCodeAt(i)] = i;

/** Of the first `count` values. */
export const seriesText = (values: ArrayLike<number>, count: number): string => {
  let text = '';
  let before = 0;
  let stepBefore = 0;
  for (let i = 0; i < count; i += 1) {
    const value = values[i] as number;
    const step = value - before;
    const change = step - stepBefore;
    let left = change < 0 ? -2 * change - 1 : 2 * change;
    while (left >= ENDING) {
      left -= ENDING;
      text += ALPHABET.charAt(ENDING + (left % GOING_ON));
      left = Math.floor(left / GOING_ON);
    }
    text += ALPHABET.charAt(left);
    before = value;
    stepBefore = step;
  }
  return text;
};

/** The values again. Throws an Error sentence at a character that is none of ours, a cut, or a number too large. */
export const seriesFromText = (text: string, place: string): number[] => {
  const values: number[] = [];
  const remainders: number[] = [];
  let before = 0;
  let stepBefore = 0;
  for (let i = 0; i < text.length; i += 1) {
    const at = PLACE[text.charCodeAt(i)] ?? -1;
    if (at < 0) throw new Error(`${place}[${i}] must be one of the characters of a series, was "${text[i]}"`);
    if (at >= ENDING) {
      remainders.push(at - ENDING);
      if (remainders.length > 12) throw new Error(`${place}[${i}] must end its number, it goes on and on`);
      continue;
    }
    let folded = at;
    for (let r = remainders.pop(); r !== undefined; r = remainders.pop())
      folded = folded * GOING_ON + r + ENDING;
    const change = folded % 2 === 1 ? -(folded + 1) / 2 : folded / 2;
    stepBefore += change;
    before += stepBefore;
    values.push(before);
  }
  if (remainders.length > 0) throw new Error(`${place} must end with a whole number, was cut off`);
  return values;
};
