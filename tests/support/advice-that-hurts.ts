import type { CircuitPlan } from '../../src/circuit/types.ts';
import type { FlownResult } from '../../src/formats/result.ts';
import { asksOf } from '../../src/lesson/coach/asks.ts';
import { degFromRad } from '../../src/units/conversions.ts';

/** What the flight was like, from the figures of its result alone. */
const stateOf = ({ gates, touchdowns, items, safety, outcome }: FlownResult, plan: CircuitPlan) => {
  const wantedDeg = degFromRad(plan.approachRad);
  const last = gates[gates.length - 1];
  const value = (id: string): number | null => items.find((item) => item.id === id)?.value ?? null;
  return {
    low: last !== undefined && last.slope_deg < wantedDeg - 0.5,
    slow: safety.some(({ what }) => /stall|1\.2 times/.test(what)),
    fellFromHigh: (value('round-out-height') ?? 0) > 28 && (touchdowns[0]?.sink_fpm ?? 0) > 240,
    red: outcome !== 'stopped' || safety.length > 0 || items.some(({ band }) => band === 'red'),
  };
};

/** What of a text would make that flight worse; written from physics, not from what the program says. */
export const adviceThatHurts = (text: string, result: FlownResult, plan: CircuitPlan): string[] => {
  const { low, slow, fellFromHigh, red } = stateOf(result, plan);
  const asks = asksOf(text);
  const wrong: string[] = [];
  const say = (why: string): number => wrong.push(`${why}: "${text}"`);
  if ((low || slow) && asks.includes('less-power')) say('power away when low or slow');
  if ((low || slow) && asks.includes('nose-up')) say('nose up when low or slow');
  if (low && asks.includes('nose-down')) say('nose down when low');
  if (fellFromHigh && /hold(?:ing)? off longer/i.test(text)) say('hold off longer, having levelled high');
  if (red && /nothing (?:before .*)?needs changing|inside its tolerance/i.test(text))
    say('praise over red rows');
  return wrong;
};
