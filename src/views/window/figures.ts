/** Figures by strokes on a grid 2 wide and 4 tall, x and y by turns from the lower left; our own drawing. */
const FIGURES: Readonly<Record<string, readonly (readonly number[])[]>> = {
  '0': [[0, 0, 2, 0, 2, 4, 0, 4, 0, 0]],
  '1': [[1, 0, 1, 4, 0.4, 3.2]],
  '2': [[0, 4, 2, 4, 2, 2, 0, 2, 0, 0, 2, 0]],
  '3': [
    [0, 4, 2, 4, 2, 0, 0, 0],
    [0.6, 2, 2, 2],
  ],
  '4': [
    [0, 4, 0, 1.6, 2, 1.6],
    [1.6, 4, 1.6, 0],
  ],
  '5': [[2, 4, 0, 4, 0, 2, 2, 2, 2, 0, 0, 0]],
  '6': [[2, 4, 0, 4, 0, 0, 2, 0, 2, 2, 0, 2]],
  '7': [[0, 4, 2, 4, 0.8, 0]],
  '8': [
    [0, 0, 2, 0, 2, 4, 0, 4, 0, 0],
    [0, 2, 2, 2],
  ],
  '9': [[2, 2, 0, 2, 0, 4, 2, 4, 2, 0, 0, 0]],
  L: [[0, 4, 0, 0, 2, 0]],
  R: [
    [0, 0, 0, 4, 2, 4, 2, 2, 0, 2],
    [0.8, 2, 2, 0],
  ],
  C: [[2, 4, 0, 4, 0, 0, 2, 0]],
};

/** Strokes of one figure or letter in shares of its width and height: x1, y1, x2, y2. */
export const strokesOf = (figure: string): [number, number, number, number][] =>
  (FIGURES[figure] ?? []).flatMap((run) =>
    Array.from({ length: run.length / 2 - 1 }, (_, i): [number, number, number, number] => [
      (run[2 * i] as number) / 2,
      (run[2 * i + 1] as number) / 4,
      (run[2 * i + 2] as number) / 2,
      (run[2 * i + 3] as number) / 4,
    ]),
  );
