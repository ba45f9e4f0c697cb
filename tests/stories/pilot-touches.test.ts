/**
 * How the model pilot lands, as somebody would who is to imitate it: a few days always, three hundred with
 * `LAPWING_LONG=1`, which prints what was measured, an aeroplane a column.
 */
import { describe, expect, it } from 'vitest';
import { aeroplaneFiles } from '../support/aeroplanes.ts';
import { flyGridDay, type GridFlight, gridDays } from '../support/pilot-grid.ts';
import { share, tableOf } from '../support/pilot-grid-table.ts';

const LONG = process.env.LAPWING_LONG === '1';
/** The short run takes every so many of the days: three aeroplanes, all aerodromes. */
const EVERY = LONG ? 1 : 47;

const flights = gridDays()
  .filter((_, i) => i % EVERY === 0)
  .map(flyGridDay);

const print = (all: readonly GridFlight[]): void => {
  const aeroplanes = aeroplaneFiles().map((name) => name.replace('.json', ''));
  const columns = [...aeroplanes.map((id) => all.filter(({ day }) => day.aeroplane === id)), all];
  const tables = columns.map(tableOf);
  const lines = tables[0]?.map(
    ([what], i) => `| ${what} | ${tables.map((table) => table[i]?.[1]).join(' | ')} |`,
  );
  console.log(
    [`| | ${aeroplanes.join(' | ')} | all |`, '| --- | --- | --- | --- | --- |', ...(lines ?? [])].join('\n'),
  );
};
if (LONG) print(flights);

const named = ({ day, outcome, why }: GridFlight): string => `${JSON.stringify(day)} ${outcome} ${why}`;

describe(`${flights.length} landings of the model pilot`, () => {
  it('end at rest on the runway, or are refused by the brief', () => {
    const other = flights.filter(({ outcome }) => outcome !== 'stopped' && outcome !== 'refused');
    expect(other.map(named)).toEqual([]);
    // One runway end of eight is too short downhill for every aeroplane, and days across the limits are among them
    expect(flights.filter(({ outcome }) => outcome === 'stopped').length).toBeGreaterThan(
      0.7 * flights.length,
    );
  });

  it('touch as the trade asks', () => {
    const sinksFpm = flights.flatMap(({ contacts }) => contacts.map(({ sinkFpm }) => sinkFpm));
    // Common practice: 100 ft/min is gentle, 300 firm
    expect(share(sinksFpm, 0.5)).toBeLessThan(130);
    if (LONG) expect(share(sinksFpm, 0.95)).toBeLessThan(260);
    expect(share(sinksFpm, 1)).toBeLessThan(420);
  });

  // Common practice: in a turn flap changes speed, stall and attitude at once; low, it only adds drag
  it('take flap with the wings level, below its limit, not low, and all of it before the gate', () => {
    for (const { flaps, ...flight } of flights) {
      for (const flap of flaps) {
        expect(flap.bankDeg, named({ flaps, ...flight })).toBeLessThan(5);
        expect(flap.iasKt, named({ flaps, ...flight })).toBeLessThan(flap.limitKt);
        if (!Number.isNaN(flap.aboveSlopeDeg)) expect(flap.aboveSlopeDeg).toBeGreaterThan(-0.5);
      }
      expect(flaps.at(-1)?.heightFt ?? 999).toBeGreaterThan(300);
    }
  });

  // FAA-H-8083-3C ch. 9: to idle through the round-out, the nose wheel held off and let down gently, then the brakes
  it('are rounded out to idle, with the nose wheel held off after them, and braked only then', () => {
    const landed = flights.filter(({ outcome }) => outcome === 'stopped');
    const throttles = landed.map(({ contacts }) => contacts.at(-1)?.throttle ?? 1);
    expect(share(throttles, 0.5)).toBeLessThan(0.05);
    const noseS = landed.map(({ noseAfterS }) => noseAfterS);
    expect(share(noseS, 0.5)).toBeGreaterThan(3);
    expect(landed.filter(({ brakeBeforeNose }) => brakeBeforeNose)).toEqual([]);
  });
});
