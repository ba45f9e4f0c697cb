/**
 * Text that is made again only when its numbers change: a frame that shows the same figures as the last one
 * allocates nothing. The numbers must be rounded by the caller.
 */
export function keyed<Numbers extends number[]>(
  write: (...numbers: Numbers) => string,
): (...numbers: Numbers) => string {
  let a = Number.NaN;
  let b = Number.NaN;
  let c = Number.NaN;
  let text = '';
  return (...numbers) => {
    const [x = 0, y = 0, z = 0] = numbers;
    if (x !== a || y !== b || z !== c) {
      a = x;
      b = y;
      c = z;
      text = write(...numbers);
    }
    return text;
  };
}
