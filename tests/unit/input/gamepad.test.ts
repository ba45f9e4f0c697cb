import { describe, expect, it } from 'vitest';
import { newPadReading, type Pad, readPad, watchGamepads } from '../../../src/input/gamepad.ts';
import { newIntent } from '../../../src/input/intent.ts';
import { curved, DEAD_ZONE, steadied } from '../../../src/input/stick-curve.ts';

/** Layout of the standard gamepad: W3C Gamepad, section "Remapping" (4 axes, 17 buttons). */
const pad = (
  axes: readonly number[],
  pressed: readonly number[] = [],
  values: Record<number, number> = {},
): Pad => ({
  connected: true,
  mapping: 'standard',
  axes,
  buttons: Array.from({ length: 17 }, (_, i) => ({
    pressed: pressed.includes(i),
    value: values[i] ?? (pressed.includes(i) ? 1 : 0),
  })),
});

describe('the stick curve', () => {
  it('is nothing in the dead zone and everything at the end', () => {
    expect(curved(DEAD_ZONE)).toBe(0);
    expect(curved(1)).toBe(1);
    expect(curved(-1)).toBe(-1);
    expect(curved(Number.NaN)).toBe(0);
  });

  it('is gentler than a straight line in the middle', () => {
    expect(curved(0.5)).toBeGreaterThan(0);
    expect(curved(0.5)).toBeLessThan(0.5);
  });

  it('does not follow a trembling axis', () => {
    let held = 0.25;
    for (let i = 0; i < 100; i += 1) held = steadied(held, 0.25 + (i % 2 === 0 ? 0.004 : -0.004));
    expect(held).toBe(0.25);
    expect(steadied(held, 0.35)).not.toBe(0.25);
  });
});

describe('a pad in the standard layout', () => {
  it('pulls when the left stick comes back and banks with it to the side', () => {
    const reading = newPadReading();
    readPad(pad([-1, 1, 0, 0]), reading, () => {});
    expect(reading.pitch).toBe(1);
    expect(reading.roll).toBe(-1);
  });

  it('adds power with the right trigger and takes it with the left', () => {
    const reading = newPadReading();
    readPad(pad([0, 0, 0, 0], [], { 7: 1 }), reading, () => {});
    expect(reading.power).toBe(1);
    readPad(pad([0, 0, 0, 0], [], { 6: 1 }), reading, () => {});
    expect(reading.power).toBe(-1);
  });

  it('tells a press once, and again only after it was let go', () => {
    const told: string[] = [];
    const reading = newPadReading();
    const press = (action: string) => told.push(action);
    readPad(pad([0, 0, 0, 0], [14]), reading, press);
    readPad(pad([0, 0, 0, 0], [14]), reading, press);
    readPad(pad([0, 0, 0, 0]), reading, press);
    readPad(pad([0, 0, 0, 0], [14]), reading, press);
    expect(told).toEqual(['look-left', 'look-left']);
  });

  it('says when it is plugged in and out, and asks for nothing once it is out', () => {
    let plugged: Pad | null = null;
    const changes: boolean[] = [];
    const pads = watchGamepads(
      () => [null, plugged],
      () => {},
      (connected) => changes.push(connected),
    );
    pads.poll();
    plugged = pad([1, 0, 0, 0]);
    pads.poll();
    plugged = null;
    pads.poll();
    const intent = newIntent();
    pads.read(intent);
    expect(changes).toEqual([true, false]);
    expect(intent).toEqual(newIntent());
  });

  it('counts flap presses for the next step only', () => {
    const pads = watchGamepads(
      () => [pad([0, 0, 0, 0], [5])],
      () => {},
      () => {},
    );
    pads.poll();
    const first = newIntent();
    pads.read(first);
    const second = newIntent();
    pads.read(second);
    expect([first.flapStages, second.flapStages]).toEqual([1, 0]);
  });
});
