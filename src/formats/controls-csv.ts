import type { ScriptRow } from '../session/script.ts';
import { CONTROLS, type ControlRange } from '../simulation/controls.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { parseCsv } from './csv.ts';

/** Controls that may be given as an addition to their starting value, with `d_` before the name. */
const ADDABLE = ['elevator', 'aileron', 'rudder', 'throttle', 'trim', 'brake'];
const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
/** A time written with four decimals still means the step it was written for. */
const WITHIN_STEPS = 0.01;

interface Column {
  readonly name: string;
  /** Index in CONTROLS, or -1 for time_s. */
  readonly control: number;
  readonly added: boolean;
  readonly low: number;
  readonly high: number;
  readonly whole: boolean;
}

const KNOWN = ['time_s', ...CONTROLS.map((c) => c.column), ...ADDABLE.map((name) => `d_${name}`)];

const columnOf = (name: string, topStage: number): Column | null => {
  if (name === 'time_s') return { name, control: -1, added: false, low: 0, high: 86400, whole: false };
  const added = name.startsWith('d_') && ADDABLE.includes(name.slice(2));
  const control = CONTROLS.findIndex((c) => c.column === (added ? name.slice(2) : name));
  if (control < 0) return null;
  const range = CONTROLS[control] as ControlRange;
  const high = range.name === 'flapStage' ? topStage : range.high;
  const span = high - range.low;
  if (added) return { name, control, added, low: -span, high: span, whole: false };
  return { name, control, added, low: range.low, high, whole: range.whole };
};

const readHeader = (cells: readonly string[], file: string, topStage: number): Column[] => {
  const columns = cells.map((cell, i) => {
    const name = cell.trim();
    const column = columnOf(name, topStage);
    if (column === null) {
      throw new Error(`${file}: row 1, column ${i + 1} must be one of ${KNOWN.join(', ')}, was "${name}"`);
    }
    return column;
  });
  if (!columns.some((c) => c.control < 0)) {
    throw new Error(
      `${file}: row 1 must have a column time_s, found ${cells.map((c) => c.trim()).join(', ')}`,
    );
  }
  columns.forEach((column, i) => {
    const first = columns.findIndex((c) => c.control === column.control);
    if (first !== i) {
      throw new Error(
        `${file}: row 1, column ${i + 1} must be another control than column ${first + 1}, was "${column.name}"`,
      );
    }
  });
  return columns;
};

const readCell = (text: string, column: Column, place: string): number => {
  const { low, high, whole } = column;
  const kind = whole ? 'a whole number' : 'a number';
  const range = column.control < 0 ? `${kind} from 0 up` : `${kind} from ${low} to ${high}`;
  if (text === '') throw new Error(`${place} must be ${range}, was empty`);
  const value = NUMBER.test(text) ? Number(text) : Number.NaN;
  if (Number.isNaN(value) || value < low || value > high || (whole && !Number.isInteger(value))) {
    throw new Error(`${place} must be ${range}, was ${Number.isNaN(value) ? `"${text}"` : text}`);
  }
  return value;
};

/**
 * Reads a controls file into the rows of a script. `topStage` is the aeroplane's last flap stage.
 * Throws an Error sentence with file, row and column, what was expected and what was found.
 */
export const parseControlsCsv = (text: string, file: string, topStage: number): ScriptRow[] => {
  const [header, ...body] = parseCsv(text, file);
  if (header === undefined) throw new Error(`${file}: must have a header row with time_s, was empty`);
  const columns = readHeader(header.cells, file, topStage);
  if (body.length === 0) throw new Error(`${file}: must have at least one row below the header, found none`);
  let lastS = -1;
  return body.map(({ row, cells }) => {
    if (cells.length !== columns.length) {
      throw new Error(
        `${file}: row ${row} must have ${columns.length} cells, as the header has, found ${cells.length}`,
      );
    }
    const set: (number | null)[] = CONTROLS.map(() => null);
    const add: (number | null)[] = CONTROLS.map(() => null);
    let timeS = 0;
    columns.forEach((column, i) => {
      const value = readCell((cells[i] as string).trim(), column, `${file}: row ${row}, ${column.name}`);
      if (column.control < 0) timeS = value;
      else (column.added ? add : set)[column.control] = value;
    });
    if (timeS <= lastS) {
      throw new Error(`${file}: row ${row}, time_s must be above ${lastS} in the row before, was ${timeS}`);
    }
    lastS = timeS;
    return { step: Math.max(0, Math.ceil(timeS * STEP_HZ - WITHIN_STEPS)), set, add };
  });
};
