// The file is the command line's contract (design/headless.md, Controls).
import { describe, expect, it } from 'vitest';
import { parseControlsCsv } from '../../../src/formats/controls-csv.ts';
import { CONTROLS } from '../../../src/simulation/controls.ts';

const read = (text: string) => parseControlsCsv(text, 'hands.csv', 3);
const at = (column: string) => CONTROLS.findIndex((c) => c.column === column);

describe('a controls file', () => {
  it('says positions and additions, and nothing about what it does not name', () => {
    const [row] = read('time_s,elevator,d_throttle,flap_stage\r\n0,-0.25,0.1,2\r\n');
    expect(row?.set[at('elevator')]).toBe(-0.25);
    expect(row?.set[at('flap_stage')]).toBe(2);
    expect(row?.add[at('throttle')]).toBe(0.1);
    expect(row?.set[at('throttle')]).toBeNull();
    expect(row?.set[at('rudder')]).toBeNull();
  });

  it('acts from the first step at or after the row', () => {
    const rows = read('time_s,elevator\n0,0\n0.0167,0.1\n0.02,0.2\n1,0.3\n1.001,0.4\n');
    expect(rows.map((r) => r.step)).toEqual([0, 1, 2, 60, 61]);
  });

  it('takes every sixtieth written with four decimals for the step it was written at', () => {
    const times = Array.from({ length: 600 }, (_, i) => (i / 60).toFixed(4));
    const rows = read(`time_s,elevator\n${times.map((t) => `${t},0`).join('\n')}\n`);
    expect(rows.map((r) => r.step)).toEqual(times.map((_, i) => i));
  });

  it.each([
    ['', /hands.csv: must have a header row/],
    ['elevator\n0\n', /row 1 must have a column time_s, found elevator/],
    ['time_s,wheel\n0,0\n', /row 1, column 2 must be one of time_s, elevator, .* was "wheel"/],
    ['time_s,elevator,d_elevator\n0,0,0\n', /row 1, column 3 must be another control than column 2/],
    ['time_s,d_flap_stage\n0,1\n', /row 1, column 2 must be one of/],
    ['time_s,elevator\n', /at least one row/],
    ['time_s,elevator\n0,0\n1\n', /row 3 must have 2 cells, as the header has, found 1/],
    ['time_s,elevator\n0,\n', /row 2, elevator must be a number from -1 to 1, was empty/],
    ['time_s,elevator\n0,up\n', /row 2, elevator must be a number from -1 to 1, was "up"/],
    ['time_s,elevator\n0,1.2\n', /row 2, elevator must be a number from -1 to 1, was 1.2/],
    ['time_s,throttle\n0,-0.1\n', /row 2, throttle must be a number from 0 to 1, was -0.1/],
    ['time_s,flap_stage\n0,1.5\n', /row 2, flap_stage must be a whole number from 0 to 3, was 1.5/],
    ['time_s,flap_stage\n0,4\n', /from 0 to 3, was 4/],
    ['time_s,elevator\n1,0\n1,0\n', /row 3, time_s must be above 1 in the row before, was 1/],
    ['time_s,elevator\n-1,0\n', /row 2, time_s must be a number from 0 up, was -1/],
    ['time_s,elevator\n0,0x1\n', /was "0x1"/],
    ['time_s,elevator\n0,NaN\n', /was "NaN"/],
  ])('refuses %j with row and column', (text, sentence) => {
    expect(() => read(text)).toThrow(sentence);
  });
});
