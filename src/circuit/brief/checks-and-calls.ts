import type { Aeroplane } from '../../aeroplane/schema.ts';
import type { CallWords } from '../../simulation/procedures.ts';
import { degFromRad, ftFromM, hpaFromPa } from '../../units/conversions.ts';
import { fixed, thousands, thousandsTo } from '../../units/format.ts';
import { type CheckGiven, type CheckListName, checkLines, shortCall } from '../checks.ts';
import { crosswindTurnM, type Setting } from '../setting.ts';
import type { CircuitLeg } from '../types.ts';
import { namedAltitudeM } from './altitudes.ts';

/** What is checked, said and looked for on a leg. */
export interface LegWords {
  readonly checks: readonly string[];
  readonly calls: readonly string[];
  readonly look: string;
}

/**
 * What stands beside the one table of checks (`../checks.ts`): what is set and looked for on a leg. Lookout ends in
 * the direction of the turn, and before final takes in long final and the opposite base (common practice).
 */
interface Given extends CheckGiven {
  readonly words: CallWords;
  readonly hand: 'left' | 'right';
  /** As the altimeter reads, on QNH. */
  readonly circuitFt: string;
  readonly crosswindTurnFt: string;
}

/** What the flap does on base; up, it was never out. */
const baseFlap = ({ plan, flap }: Aeroplane): string =>
  plan.baseStage === 0 ? 'the flap stays up' : `then flap ${fixed(flap.stages[plan.baseStage]?.deg ?? 0)}°`;

const only = (wanted: boolean, text: string): readonly string[] => (wanted ? [text] : []);

const checks = (list: CheckListName, given: Given): readonly string[] =>
  checkLines(list, given).map(({ text }) => text);

const WORDS: Readonly<Record<CircuitLeg, (g: Given) => LegWords>> = {
  upwind: (g) => ({
    checks: ['above 300 ft', ...checks('after-take-off', g)],
    calls: [],
    look: `from ${g.crosswindTurnFt} ft on QNH, past the end: look ${g.hand === 'left' ? 'right, ahead, left' : 'left, ahead, right'}, then turn`,
  }),
  crosswind: ({ aeroplane, hand, circuitFt }) => ({
    checks: [
      `${circuitFt} ft on QNH: attitude, power, trim`,
      ...only(
        aeroplane.plan.circuitRpm !== undefined,
        `propeller ${thousands(aeroplane.plan.circuitRpm ?? 0)} rpm`,
      ),
    ],
    calls: [],
    look: `along the downwind leg for traffic joining, then ${hand}`,
  }),
  downwind: (g) => ({
    checks: checks('downwind', g),
    calls: [shortCall('downwind', g.hand, g.runway, g.words)],
    look: 'ahead for the one in front, then over the shoulder for the threshold',
  }),
  base: ({ aeroplane, hand, runway, words }) => ({
    checks: [
      ...only(aeroplane.engine.carburettor, 'carburettor heat hot'),
      `power back first, ${baseFlap(aeroplane)}, trim`,
    ],
    calls: [shortCall('base', hand, runway, words)],
    look: 'along long final and the opposite base before the turn',
  }),
  final: (g) => ({
    checks: [...checks('final', g), 'cleared to land where there is a tower'],
    calls: [shortCall('final', g.hand, g.runway, g.words)],
    look: 'aim point still in the windscreen: no movement, no change',
  }),
};

/** What belongs to a leg for this aeroplane and runway. */
export function wordsOf(leg: CircuitLeg, setting: Setting, words: CallWords): LegWords {
  const { aeroplane, aerodrome, runway } = setting;
  const onQnh = (heightM: number): string => thousandsTo(ftFromM(namedAltitudeM(setting, heightM)), 10);
  return WORDS[leg]({
    words,
    aeroplane,
    runway: runway.designator,
    runwayHeadingDegM: degFromRad(runway.headingRadM),
    qnhHpa: hpaFromPa(setting.air.qnhPa),
    hand: runway.circuitSide === 1 ? 'right' : 'left',
    circuitFt: onQnh(runway.circuitHeightM),
    crosswindTurnFt: onQnh(crosswindTurnM(aerodrome)),
  });
}
