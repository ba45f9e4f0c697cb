// RFC 4180 section 2: CRLF, quotes around cells with commas, quotes and line breaks, quotes doubled inside.
import { describe, expect, it } from 'vitest';
import { parseCsv } from '../../../src/formats/csv.ts';

/** A cell as RFC 4180 writes it. */
const csvCell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

const cells = (text: string) => parseCsv(text, 'x.csv').map((row) => row.cells);

describe('comma-separated text', () => {
  it('reads the examples of RFC 4180', () => {
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(cells('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(cells('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('reads line feeds alone, a byte order mark, and leaves empty lines at the end out', () => {
    expect(cells('\uFEFFa,b\n1,2\n\n')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });

  it('numbers rows as an editor does', () => {
    expect(parseCsv('a\r\n"1\r\n2"\r\n3\r\n', 'x.csv').map((r) => r.row)).toEqual([1, 2, 4]);
  });

  it('says where a quote never ends', () => {
    expect(() => parseCsv('a,b\r\n1,"2\r\n', 'x.csv')).toThrow('x.csv: row 2 must close its quote');
  });

  it('writes what it can read again', () => {
    const row = ['plain', 'with, comma', 'with "quotes"', 'two\r\nlines'];
    expect(cells(`${row.map(csvCell).join(',')}\r\n`)).toEqual([row]);
  });
});
