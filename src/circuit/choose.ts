import { groundHeightM } from '../aerodrome/runway.ts';
import { atan, tan } from '../maths/functions.ts';
import { degFromRad, mFromNmi, nmiFromM, radFromDeg } from '../units/conversions.ts';
import { fixed } from '../units/format.ts';
import { layOutCircuit } from './layout.ts';
import type { Layout, LayoutRequest } from './layout-request.ts';
import { aimGroundM, BANKS, crosswindTurnM, LINE_UP_M, type Setting } from './setting.ts';
import type { PlanOptions } from './types.ts';
import { TooTight } from './way-down.ts';

/** A circuit as chosen, and what became of it. */
export interface Chosen {
  readonly layout: Layout;
  readonly bank: LayoutRequest['bank'];
  readonly spacingM: number;
  readonly heightM: number;
  readonly askedApproachRad: number;
  /** As it comes out: eye to aim point, straight from the completed final turn. */
  readonly approachRad: number;
  readonly descentFrom: 'abeam' | 'base-turn';
  readonly notes: readonly string[];
}

const WIDER_STEP_M = mFromNmi(0.05);
const WIDEST_STEPS = 60;
/** A circuit counts as being at its spacing within this. */
const AT_SPACING_M = 20;

/** Lays out the circuit of the aerodrome's custom with the options on top; banks first, then spacing give way. */
export function chooseCircuit(setting: Setting, options: PlanOptions = {}): Chosen {
  const { aerodrome, runway, eyeHeightM } = setting;
  const custom = aerodrome.circuit;
  const askedSpacingM = options.spacingM ?? mFromNmi(custom.spacingNmi);
  const askedApproachRad = options.approachRad ?? radFromDeg(custom.approachDeg);
  // Circuit height is flown by the altimeter: in warm air it lies higher than it reads.
  const heightM = (options.circuitHeightM ?? runway.circuitHeightM) / setting.air.altimeterRatio;
  const finalFromAimM =
    options.finalFromAimM ??
    (custom.finalFromAimNmi === undefined ? undefined : mFromNmi(custom.finalFromAimNmi));
  const descentFrom = options.descentFrom ?? custom.descentFrom;
  const liftOffM = runway.surfaceStartM + LINE_UP_M + Math.min(setting.takeOffRunM, runway.takeOffLengthM);
  const notes: string[] = [];

  const attempt = (spacingM: number, bank: LayoutRequest['bank']): Layout | null => {
    try {
      return layOutCircuit({
        spacingM,
        circuitHeightM: heightM,
        liftOffM,
        departureEndM: runway.surfaceEndM,
        groundAtLiftOffM: groundHeightM(runway, liftOffM),
        crosswindTurnM: Math.min(crosswindTurnM(aerodrome), heightM),
        descentFrom,
        nilWindBaseTurnTangent: 1,
        rollOutX: finalFromAimM === undefined ? null : runway.aimM - finalFromAimM,
        aim: { xM: runway.aimM, heightM: aimGroundM(runway) - eyeHeightM },
        approachTangent: tan(askedApproachRad),
        steepestDescentMps: setting.steepestDescentMps,
        windAt: setting.windAt,
        tas: setting.tas,
        climb: setting.climb,
        bank,
        rollRateRadps: setting.rollRateRadps,
      });
    } catch (error) {
      if (error instanceof TooTight) return null;
      throw error;
    }
  };

  const banks = BANKS.map((row) => ({
    climbingRad: row.climbingRad,
    levelRad: options.levelBankRad ?? row.levelRad,
    finalRad: options.finalBankRad ?? row.finalRad,
  }));
  const gentle = banks[0]!;
  const firm = banks[1]!;
  const fits = (layout: Layout | null): layout is Layout =>
    layout !== null && layout.spacingM <= askedSpacingM + AT_SPACING_M;
  let bank = gentle;
  let layout = attempt(askedSpacingM, gentle);
  if (!fits(layout)) {
    bank = firm;
    layout = attempt(askedSpacingM, firm);
    for (let i = 1; layout === null && i <= WIDEST_STEPS; i += 1)
      layout = attempt(askedSpacingM + i * WIDER_STEP_M, firm);
    if (layout === null)
      throw new Error(`${aerodrome.id}: no circuit of this spacing can be flown in this wind`);
    notes.push(
      layout.spacingM <= askedSpacingM + AT_SPACING_M
        ? `The turns need ${fixed(degFromRad(firm.levelRad))} degrees of bank, ${fixed(degFromRad(firm.finalRad))} onto final, for ${fixed(nmiFromM(askedSpacingM), 2)} NM in this wind.`
        : `The turns do not fit into ${fixed(nmiFromM(askedSpacingM), 2)} NM in this wind: the circuit is planned ${fixed(nmiFromM(layout.spacingM), 2)} NM wide.`,
    );
  }
  return {
    layout,
    bank,
    spacingM: layout.spacingM,
    heightM,
    askedApproachRad,
    approachRad: atan(layout.approachTangent),
    descentFrom,
    notes,
  };
}
