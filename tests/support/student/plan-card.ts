import type { CircuitLeg, CircuitPlan } from '../../../src/circuit/types.ts';
import type { Steady } from '../../../src/simulation/performance/steady.ts';
import type { Scenario } from '../../../src/simulation/scenario.ts';
import { wrapPi } from '../../../src/units/angles.ts';
import { degFromRad, ftFromM, ktFromMps, rpmFromRevps } from '../../../src/units/conversions.ts';

/** What the student has learnt by heart from the brief: per leg heading, speed, power, attitude, flap. */
export interface LegCard {
  readonly trackDeg: number;
  readonly headingDeg: number;
  readonly speedKt: number;
  readonly rpm: number;
  readonly throttle: number;
  readonly pitchDeg: number;
  readonly flapStage: number;
  readonly gear: 0 | 1;
}

export interface Card {
  readonly legs: Readonly<Record<CircuitLeg, LegCard>>;
  /** Downwind once the descent has begun, where it begins abeam. */
  readonly descending: LegCard | null;
  readonly descendAtM: number;
  readonly levelHeightFt: number;
  readonly crosswindAtFt: number;
  readonly crosswindAtM: number;
  readonly downwindAtM: number;
  readonly baseAngleDeg: number;
  readonly finalAtM: number;
  /** Height where base is flown level to, and where it ends. */
  readonly baseFromFt: number;
  readonly baseToFt: number;
  readonly rollOutFt: number;
  readonly bankDeg: { readonly climbing: number; readonly level: number; readonly final: number };
  readonly rotateKt: number;
  readonly approachKt: number;
  readonly fixedPitch: boolean;
  readonly flapLimitsKt: readonly number[];
  readonly carburettor: boolean;
  readonly retractable: boolean;
  readonly pump: boolean;
}

const turnOf = (deg: number): number => ((deg % 360) + 360) % 360;

export const cardOf = (plan: CircuitPlan, aeroplane: Scenario['aeroplane']): Card => {
  const { runway, side, turns } = plan;
  const rel = (rad: number): number => turnOf(degFromRad(side * wrapPi(rad - runway.headingRadT)));
  const leg = (name: CircuitLeg, steady: Steady): LegCard => {
    const l = plan.legs[name];
    return {
      trackDeg: rel(l.trackRadT),
      headingDeg: rel(l.headingRadT),
      speedKt: ktFromMps(l.iasMps),
      rpm: rpmFromRevps(steady.revps),
      throttle: steady.throttle,
      pitchDeg: degFromRad(steady.pitchRad),
      flapStage: l.flapStage,
      gear: l.gear,
    };
  };
  const of = (name: CircuitLeg) => leg(name, plan.legs[name].steady);
  const along = (p: { eastM: number; northM: number }) =>
    p.eastM * runway.sinHeading + p.northM * runway.cosHeading;
  const across = (p: { eastM: number; northM: number }) =>
    side * (p.eastM * runway.cosHeading - p.northM * runway.sinHeading);
  const change = plan.legs.downwind.change;
  const base = plan.legs.base;
  return {
    legs: {
      upwind: of('upwind'),
      crosswind: of('crosswind'),
      downwind: of('downwind'),
      base: leg('base', base.change?.steady ?? base.steady),
      final: leg('final', plan.legs.final.change?.steady ?? plan.legs.final.steady),
    },
    descending: plan.descentFrom === 'abeam' && change !== null ? leg('downwind', change.steady) : null,
    descendAtM: change === null ? Number.NEGATIVE_INFINITY : along(change.at),
    levelHeightFt: ftFromM(plan.heightM),
    crosswindAtFt: ftFromM(turns.crosswind.from.heightM),
    crosswindAtM: along(turns.crosswind.from),
    downwindAtM: across(turns.downwind.from),
    baseAngleDeg: degFromRad(plan.baseTurnAngleRad),
    finalAtM: across(turns.final.from),
    baseFromFt: ftFromM(base.from.heightM),
    baseToFt: ftFromM(base.to.heightM),
    rollOutFt: ftFromM(plan.rollOutOnFinalHeightM),
    bankDeg: {
      climbing: degFromRad(turns.crosswind.bankRad),
      level: degFromRad(turns.base.bankRad),
      final: degFromRad(turns.final.bankRad),
    },
    rotateKt: ktFromMps(plan.rotateIasMps),
    approachKt: ktFromMps(plan.approachIasMps),
    fixedPitch: !aeroplane.equipment.propellerLever,
    flapLimitsKt: aeroplane.flap.stages.map(({ limitKt }) => limitKt),
    carburettor: aeroplane.engine.carburettor,
    retractable: aeroplane.undercarriage.retractable,
    pump: false,
  };
};
