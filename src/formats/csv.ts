/** Comma-separated text after RFC 4180: CRLF (LF is read too), quotes doubled inside quotes. */
export interface CsvRow {
  /** As an editor numbers it; the header is row 1. */
  readonly row: number;
  readonly cells: readonly string[];
}

/** Throws an Error sentence at a quote that never ends. Empty lines at the end are left out. */
export const parseCsv = (text: string, file: string): CsvRow[] => {
  const rows: CsvRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let row = 1;
  let from = 1;
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const endRow = (): void => {
    rows.push({ row: from, cells: [...cells, cell] });
    cells = [];
    cell = '';
    from = row;
  };
  for (let i = 0; i < body.length; i += 1) {
    const c = body[i] as string;
    if (c === '\n') row += 1;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (body[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else quoted = false;
    } else if (c === '"' && cell === '') quoted = true;
    else if (c === ',') {
      cells.push(cell);
      cell = '';
    } else if (c === '\n') endRow();
    else if (c !== '\r' || body[i + 1] !== '\n') cell += c;
  }
  if (quoted) throw new Error(`${file}: row ${from} must close its quote, it never ends`);
  if (cell !== '' || cells.length > 0) endRow();
  while (rows.length > 0 && rows[rows.length - 1]?.cells.join('') === '') rows.pop();
  return rows;
};
