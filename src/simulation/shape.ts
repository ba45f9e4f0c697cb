import type { Aeroplane } from '../aeroplane/schema.ts';
import { G0_MPS2 } from '../units/constants.ts';
import { mpsFromFpm, mpsFromKt, radFromDeg, revpsFromRpm } from '../units/conversions.ts';

/**
 * An aeroplane's constants in SI, flat, as the step uses them. Leg offsets are from the centre of gravity to the
 * bottom of the unloaded wheel, body axes (x forward, z down).
 */
export interface Shape {
  readonly aeroplane: Aeroplane;
  readonly massKg: number;
  readonly weightN: number;
  readonly areaM2: number;
  readonly spanM: number;
  readonly chordM: number;
  readonly wingAboveCgM: number;
  readonly inducedFactor: number;
  readonly cl0: number;
  readonly clAlpha: number;
  readonly cd0: number;
  readonly cdGear: number;
  readonly cdSlip: number;
  readonly pitchInertiaKgM2: number;
  readonly cm0: number;
  readonly cmAlpha: number;
  readonly cmQ: number;
  readonly cmElevator: number;
  readonly cmGround: number;
  readonly elevatorUpRad: number;
  readonly elevatorDownRad: number;
  readonly trimUpRad: number;
  readonly trimDownRad: number;
  readonly rollInertiaKgM2: number;
  readonly rollHelix: number;
  readonly rollTimeS: number;
  readonly rollPerSlip: number;
  readonly yawTimeS: number;
  readonly rudderSlipRad: number;
  readonly cyBeta: number;
  readonly propellerSlipRadPerTc: number;
  readonly adverseYawRad: number;
  readonly ratedTorqueNm: number;
  readonly ratedRevps: number;
  readonly idleRevps: number;
  readonly idleTorqueNm: number;
  /** Torque lost per rev/s above idle with the throttle closed. */
  readonly idleTorqueSlope: number;
  readonly motoringTorqueNm: number;
  readonly throttleTimeS: number;
  readonly rotatingInertiaKgM2: number;
  readonly heatLoss: number;
  readonly diameterM: number;
  /** True with a constant-speed propeller, which has blades and stops; else the polynomials hold. */
  readonly governed: boolean;
  readonly bladeAreaM2: number;
  readonly bladeRadiusM: number;
  readonly bladeLift: number;
  readonly bladeDrag: number;
  readonly bladeDragPerLift2: number;
  readonly diskAreaM2: number;
  readonly fineRad: number;
  readonly coarseRad: number;
  readonly lowestRevps: number;
  readonly ct0: number;
  readonly ct1: number;
  readonly ct2: number;
  readonly ctLow: number;
  readonly cp0: number;
  readonly cp1: number;
  readonly cp2: number;
  readonly mainX: number;
  readonly mainY: number;
  readonly mainZ: number;
  readonly noseX: number;
  readonly noseZ: number;
  readonly mainStiffness: number;
  readonly noseStiffness: number;
  readonly legDampingSpm: number;
  readonly brakeFriction: number;
  readonly sideFriction: number;
  readonly steeringRad: number;
  readonly wheelbaseM: number;
  readonly eyeX: number;
  readonly eyeAboveCgM: number;
  readonly collapseSinkMps: number;
  readonly tailStrikeRad: number;
  readonly gearPerS: number;
  /** 0 where the gear is fixed. */
  readonly gearOperatingMps: number;
  readonly gearExtendedMps: number;
  /** Carried by the main wheels of the standing aeroplane. */
  readonly mainStandingN: number;
  readonly flapTravelDegps: number;
  readonly vneMps: number;
  readonly maximumRevps: number;
}

/** SI constants of an aeroplane flown at `massKg` (its flown mass when not given). */
export const shapeOf = (aeroplane: Aeroplane, massKg = aeroplane.massKg.flown): Shape => {
  const { wing, pitch, rollAndYaw: roll, engine, propeller, undercarriage: legs } = aeroplane;
  const weightN = massKg * G0_MPS2;
  const base = legs.mainsAftM + legs.noseForwardM;
  const aspect = (wing.spanM * wing.spanM) / wing.areaM2;
  const ratedRevps = revpsFromRpm(engine.ratedRpm);
  return {
    aeroplane,
    massKg,
    weightN,
    areaM2: wing.areaM2,
    spanM: wing.spanM,
    chordM: wing.chordM,
    wingAboveCgM: wing.heightM - legs.cgHeightM,
    inducedFactor: 1 / (Math.PI * aspect * wing.oswald),
    cl0: aeroplane.lift.zeroAlpha,
    clAlpha: aeroplane.lift.perRad,
    cd0: aeroplane.drag.parasite,
    cdGear: aeroplane.drag.gear,
    cdSlip: aeroplane.drag.slipPerRad2,
    pitchInertiaKgM2: pitch.inertiaKgM2,
    cm0: pitch.cm0,
    cmAlpha: pitch.cmAlpha,
    cmQ: pitch.cmQ,
    cmElevator: pitch.cmElevator,
    cmGround: pitch.cmGroundEffect,
    elevatorUpRad: radFromDeg(pitch.elevatorUpDeg),
    elevatorDownRad: radFromDeg(pitch.elevatorDownDeg),
    trimUpRad: radFromDeg(pitch.trimUpDeg),
    trimDownRad: radFromDeg(pitch.trimDownDeg),
    rollInertiaKgM2: roll.inertiaKgM2,
    rollHelix: roll.rollHelix,
    rollTimeS: roll.rollTimeS,
    rollPerSlip: roll.clBeta / -roll.clRollRate,
    yawTimeS: roll.yawTimeS,
    rudderSlipRad: radFromDeg(roll.rudderSlipDeg),
    cyBeta: roll.cyBeta,
    propellerSlipRadPerTc: radFromDeg(roll.propellerSlipDegPerTc),
    adverseYawRad: radFromDeg(roll.adverseYawDeg),
    ratedTorqueNm: (engine.powerKw * 1000) / (2 * Math.PI * ratedRevps),
    ratedRevps,
    idleRevps: revpsFromRpm(engine.idleRpm),
    idleTorqueNm: engine.idleTorqueNm,
    idleTorqueSlope: engine.idleTorqueSlopeNm / revpsFromRpm(1000),
    motoringTorqueNm: engine.motoringTorqueNm,
    throttleTimeS: engine.throttleTimeS,
    rotatingInertiaKgM2: engine.rotatingInertiaKgM2,
    heatLoss: engine.carburettorHeatLoss,
    ...propellerShape(propeller, ratedRevps),
    mainX: -legs.mainsAftM,
    mainY: legs.trackM / 2,
    mainZ: legs.cgHeightM + legs.mainSagM,
    noseX: legs.noseForwardM,
    noseZ: legs.cgHeightM + legs.noseSagM,
    mainStiffness: (weightN * legs.noseForwardM) / base / 2 / legs.mainSagM,
    noseStiffness: (weightN * legs.mainsAftM) / base / legs.noseSagM,
    legDampingSpm: legs.dampingSpm,
    brakeFriction: legs.brakeFriction,
    sideFriction: legs.sideFriction,
    steeringRad: radFromDeg(legs.steeringDeg),
    wheelbaseM: base,
    eyeX: legs.eyeForwardM,
    eyeAboveCgM: legs.eyeHeightM - legs.cgHeightM,
    collapseSinkMps: mpsFromFpm(legs.collapseSinkFpm),
    tailStrikeRad: radFromDeg(legs.tailStrikeDeg),
    gearPerS: 1 / legs.travelS,
    gearOperatingMps: mpsFromKt(aeroplane.limits.gearOperatingKt ?? 0),
    gearExtendedMps: mpsFromKt(aeroplane.limits.gearExtendedKt ?? 0),
    mainStandingN: (weightN * legs.noseForwardM) / base,
    flapTravelDegps: aeroplane.flap.travelDegps,
    vneMps: mpsFromKt(aeroplane.limits.vneKt),
    maximumRevps: revpsFromRpm(aeroplane.limits.maximumRpm),
  };
};

type PropellerShape = Pick<
  Shape,
  | 'diameterM'
  | 'governed'
  | 'bladeAreaM2'
  | 'bladeRadiusM'
  | 'bladeLift'
  | 'bladeDrag'
  | 'bladeDragPerLift2'
  | 'diskAreaM2'
  | 'fineRad'
  | 'coarseRad'
  | 'lowestRevps'
  | 'ct0'
  | 'ct1'
  | 'ct2'
  | 'ctLow'
  | 'cp0'
  | 'cp1'
  | 'cp2'
>;

/** Where a blade is represented by one section. */
const SECTION = 0.75; // textbook: three quarters of the radius stand for a blade

/** One shape for both kinds, so that the step's code sees one: what a kind does not have is nought. */
const propellerShape = (propeller: Aeroplane['propeller'], ratedRevps: number): PropellerShape => {
  const fixed = propeller.kind === 'fixed-pitch' ? propeller : null;
  const blades = propeller.kind === 'constant-speed' ? propeller : null;
  const radiusM = propeller.diameterM / 2;
  return {
    diameterM: propeller.diameterM,
    governed: blades !== null,
    bladeAreaM2: blades?.bladeAreaM2 ?? 0,
    bladeRadiusM: SECTION * radiusM,
    bladeLift: blades?.bladeLiftPerRad ?? 0,
    bladeDrag: blades?.bladeDrag ?? 0,
    bladeDragPerLift2: blades?.bladeDragPerLift2 ?? 0,
    diskAreaM2: Math.PI * radiusM * radiusM * (blades?.diskShare ?? 1),
    fineRad: radFromDeg(blades?.finePitchDeg ?? 0),
    coarseRad: radFromDeg(blades?.coarsePitchDeg ?? 0),
    lowestRevps: blades === null ? ratedRevps : revpsFromRpm(blades.lowestRpm),
    ct0: fixed?.thrustCoefficient[0] ?? 0,
    ct1: fixed?.thrustCoefficient[1] ?? 0,
    ct2: fixed?.thrustCoefficient[2] ?? 0,
    ctLow: fixed?.lowestThrustCoefficient ?? 0,
    cp0: fixed?.powerCoefficient[0] ?? 0,
    cp1: fixed?.powerCoefficient[1] ?? 0,
    cp2: fixed?.powerCoefficient[2] ?? 0,
  };
};

/** What one flap angle does. */
export interface FlapEffect {
  lift: number;
  drag: number;
  maximumLift: number;
  moment: number;
  thrustMoment: number;
}

/** The flap's coefficients at any angle, straight lines between the stages; fills `into`. */
export const flapEffect = (shape: Shape, flapDeg: number, into: FlapEffect): FlapEffect => {
  const stages = shape.aeroplane.flap.stages;
  let i = 0;
  while (i < stages.length - 2 && flapDeg > (stages[i + 1]?.deg ?? 0)) i += 1;
  const a = stages[i];
  const b = stages[i + 1] ?? a;
  if (!a || !b) throw new Error(`${shape.aeroplane.id}: flap.stages must hold at least one stage`);
  const width = b.deg - a.deg;
  const raw = width > 0 ? (flapDeg - a.deg) / width : 0;
  const t = raw < 0 ? 0 : raw > 1 ? 1 : raw;
  into.lift = a.liftCoefficient + t * (b.liftCoefficient - a.liftCoefficient);
  into.drag = a.dragCoefficient + t * (b.dragCoefficient - a.dragCoefficient);
  into.maximumLift = a.maximumLiftCoefficient + t * (b.maximumLiftCoefficient - a.maximumLiftCoefficient);
  into.moment = a.pitchingMoment + t * (b.pitchingMoment - a.pitchingMoment);
  into.thrustMoment = a.thrustMoment + t * (b.thrustMoment - a.thrustMoment);
  return into;
};

export const newFlapEffect = (): FlapEffect => ({
  lift: 0,
  drag: 0,
  maximumLift: 0,
  moment: 0,
  thrustMoment: 0,
});
