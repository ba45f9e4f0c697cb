import type { Aeroplane } from '../../aeroplane/schema.ts';
import { LEAN_FROM_KGPM3 } from '../../simulation/mixture.ts';
import { fixed, thousands } from '../../units/format.ts';
import type { Setting } from '../setting.ts';
import type { CircuitLeg } from '../types.ts';

/** What is checked, said and looked for on a leg. */
export interface LegWords {
  readonly checks: readonly string[];
  readonly calls: readonly string[];
  readonly look: string;
}

/**
 * Checks follow the aeroplane's equipment: pre-landing checks as listed in UK and Commonwealth circuit training
 * (brakes, undercarriage, mixture, fuel, instruments, carburettor heat, hatches and harness; common practice);
 * after-take-off and final checks common practice. Calls: CAP 413 ("downwind", "final" within 4 NM). Lookout
 * ends in the direction of the turn, and before final takes in long final and the opposite base (common practice).
 */
interface Given {
  readonly aeroplane: Aeroplane;
  readonly runway: string;
  readonly hand: 'left' | 'right';
  readonly circuitFt: string;
  readonly crosswindTurnFt: string;
  /** Thin air: full rich would cost power. */
  readonly high: boolean;
}

const flap = (aeroplane: Aeroplane, stage: number): string =>
  stage === 0 ? 'flap up' : `flap ${fixed(aeroplane.flap.stages[stage]?.deg ?? 0)}°`;

const only = (wanted: boolean, text: string): readonly string[] => (wanted ? [text] : []);

const WORDS: Readonly<Record<CircuitLeg, (g: Given) => LegWords>> = {
  upwind: ({ aeroplane, hand, crosswindTurnFt }) => ({
    checks: [
      ...only(aeroplane.undercarriage.retractable, 'climbing, no runway left to land on: brakes, gear up'),
      'flap up by stages, climbing and above 300 ft',
      ...only(aeroplane.equipment.pump, 'fuel pump off, pressure holds'),
      'temperatures and pressures in the green',
    ],
    calls: [],
    look: `from ${crosswindTurnFt} ft, past the end: look ${hand === 'left' ? 'right, ahead, left' : 'left, ahead, right'}, then turn`,
  }),
  crosswind: ({ aeroplane, hand, circuitFt }) => ({
    checks: [
      `${circuitFt} ft: attitude, power, trim`,
      ...only(
        aeroplane.plan.circuitRpm !== undefined,
        `propeller ${thousands(aeroplane.plan.circuitRpm ?? 0)} rpm`,
      ),
    ],
    calls: [],
    look: `along the downwind leg for traffic joining, then ${hand}`,
  }),
  downwind: ({ aeroplane, hand, high }) => ({
    checks: [
      'brakes off, pressure firm',
      aeroplane.undercarriage.retractable ? 'gear down, greens' : 'undercarriage fixed',
      ...only(aeroplane.equipment.mixture, high ? 'mixture leaned for power up here' : 'mixture rich'),
      `fuel enough to go around${aeroplane.equipment.pump ? ', pump on, pressure' : ''}`,
      'altimeter on QNH, temperatures and pressures',
      ...only(aeroplane.engine.carburettor, 'carburettor heat hot 10 s, note the rpm'),
      'hatches, harnesses',
      `inside the white arc: ${flap(aeroplane, aeroplane.plan.downwindStage)}`,
    ],
    calls: [hand === 'right' ? '“right-hand downwind”' : '“downwind”'],
    look: 'ahead for the one in front, then over the shoulder for the threshold',
  }),
  base: ({ aeroplane }) => ({
    checks: [
      ...only(aeroplane.engine.carburettor, 'carburettor heat hot'),
      `power back first, then ${flap(aeroplane, aeroplane.plan.baseStage)}, trim`,
    ],
    calls: ['“base” where it is asked for'],
    look: 'along long final and the opposite base before the turn',
  }),
  final: ({ aeroplane, runway }) => ({
    checks: [
      `landing flap, trim, ${aeroplane.undercarriage.retractable ? 'gear down, ' : ''}toes off the brakes`,
      ...only(aeroplane.equipment.propellerLever, 'propeller fully forward'),
      ...only(aeroplane.engine.carburettor, 'carburettor heat as the handbook says, cold to go around'),
      'runway clear, and cleared to land where there is a tower',
    ],
    calls: [`“final, runway ${[...runway].join(' ')}”`],
    look: 'aim point still in the windscreen: no movement, no change',
  }),
};

/** What belongs to a leg for this aeroplane and runway. */
export function wordsOf(leg: CircuitLeg, setting: Setting): LegWords {
  const { aeroplane, aerodrome, runway } = setting;
  return WORDS[leg]({
    aeroplane,
    runway: runway.designator,
    hand: runway.circuitSide === 1 ? 'right' : 'left',
    circuitFt: thousands(aerodrome.circuitHeightFt),
    crosswindTurnFt: thousands(aerodrome.circuit.crosswindTurnFt),
    high: setting.air.elevationDensityKgpm3 < LEAN_FROM_KGPM3,
  });
}
