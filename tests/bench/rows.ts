/** One line of the table: a figure beside its budget. A budget of null is for orientation only. */
export interface Row {
  readonly name: string;
  readonly figure: number;
  readonly unit: string;
  readonly sense: 'at most' | 'at least';
  readonly budget: number | null;
}

/** Hands a row to the table. */
export const say = (row: Row): void => {
  process.stdout.write(`${JSON.stringify(row)}\n`);
};

/** An option of the command line, `--flights 200`, or what stands without it. */
export const numberAsked = (name: string, otherwise: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  const asked = at < 0 ? otherwise : Number(process.argv[at + 1]);
  if (!(asked > 0))
    throw new Error(`--${name} must be a number above 0, was ${process.argv[at + 1] ?? 'nothing'}`);
  return asked;
};
