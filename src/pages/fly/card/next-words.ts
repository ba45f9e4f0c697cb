import { GATES_FT } from '../../../circuit/stabilised.ts';
import type { CircuitLeg, CircuitPlan, PathPoint } from '../../../circuit/types.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import { ftFromM } from '../../../units/conversions.ts';
import { thousands } from '../../../units/format.ts';

const secondsText = (seconds: number): string =>
  seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;

/** Seconds until the aeroplane, as it goes now, is abreast of the end of a planned leg; negative once past. */
export const secondsToEnd = (plan: CircuitPlan, leg: CircuitLeg, s: Readonly<Snapshot>): number =>
  secondsTo(plan.legs[leg].to, plan.legs[leg].trackRadT, s);

const secondsTo = (to: PathPoint, trackRadT: number, s: Readonly<Snapshot>): number => {
  const sin = Math.sin(trackRadT);
  const cos = Math.cos(trackRadT);
  const leftM = (to.eastM - s.eastM) * sin + (to.northM - s.northM) * cos;
  const closingMps = s.velocityEastMps * sin + s.velocityNorthMps * cos;
  return closingMps > 5 ? leftM / closingMps : Number.NaN;
};

/** Further off than this the descent can wait. */
const SOON_S = 60;

const turnText = (onto: string, seconds: number): string => {
  if (!Number.isFinite(seconds) || seconds > 200) return `then ${onto}`;
  return seconds > 0 ? `turn to ${onto} in ${secondsText(seconds)}` : `turn to ${onto} now`;
};

const gateText = (s: Readonly<Snapshot>): string => {
  const heightFt = ftFromM(s.heightM);
  const gate = GATES_FT.find((ft) => ft < heightFt - 1);
  if (gate === undefined) return 'land, or go around';
  const sinkMps = -s.verticalSpeedMps;
  if (sinkMps < 0.3) return `gate at ${gate} ft`;
  return `gate at ${gate} ft in ${secondsText((heightFt - gate) / ftFromM(sinkMps))}`;
};

const WORDS: Readonly<Record<string, (plan: CircuitPlan, s: Readonly<Snapshot>) => string>> = {
  'line-up': () => 'full power when ready',
  'take-off-roll': () => 'ease the nose up at speed',
  upwind: (plan, s) => {
    const turnFt = ftFromM(plan.turns.crosswind.from.heightM);
    return ftFromM(s.heightM) < turnFt - 20
      ? `crosswind turn at ${thousands(Math.round(turnFt / 10) * 10)} ft`
      : turnText('crosswind', secondsToEnd(plan, 'upwind', s));
  },
  crosswind: (plan, s) => turnText('downwind', secondsToEnd(plan, 'crosswind', s)),
  downwind: (plan, s) => {
    const { change, trackRadT } = plan.legs.downwind;
    const downS = change === null ? Number.NaN : secondsTo(change.at, trackRadT, s);
    return downS > 0 && downS < SOON_S
      ? `power back, down from abeam in ${secondsText(downS)}`
      : turnText('base', secondsToEnd(plan, 'downwind', s));
  },
  base: (plan, s) => turnText('final', secondsToEnd(plan, 'base', s)),
  final: (_, s) => gateText(s),
  'turn-to-final': (_, s) => gateText(s),
  'hold-off': () => 'main wheels first',
  'landing-roll': () => 'brake to a stop',
  'go-around': () => 'climb, then round again',
  'engine-out': () => 'land ahead',
  'partial-power': () => 'land while there is a choice',
  abandoned: () => 'stop on the runway',
  stopped: () => '',
};

/** What comes next, in a few words: for the bar. */
export const nextWords = (leg: string, plan: CircuitPlan, s: Readonly<Snapshot>): string =>
  WORDS[leg]?.(plan, s) ?? '';
