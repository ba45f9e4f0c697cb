import * as v from 'valibot';

/**
 * The file of one aeroplane, in the units an instructor reads: metres, kilograms, knots, degrees, rpm.
 * Coefficients are per radian; signs as in DEVELOPERS.md (trailing edge down positive for the elevator).
 */
const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const notNegative = v.pipe(finite, v.minValue(0));
const text = v.pipe(v.string(), v.minLength(1));

/** Low, target and high of a handbook-style claim; `source` says whose figure it is. */
const claimSchema = v.strictObject({
  value: finite,
  low: finite,
  high: finite,
  source: text,
});

const flapStageSchema = v.strictObject({
  deg: notNegative,
  /** Added to the lift coefficient at a given angle of attack. */
  liftCoefficient: notNegative,
  dragCoefficient: notNegative,
  maximumLiftCoefficient: positive,
  /** Pitching moment of the flap itself; the net change also has the lift's share through cmAlpha. */
  pitchingMoment: finite,
  /** Pitching moment per unit of Tc = T/(qS). */
  thrustMoment: finite,
  /** Highest speed at which this stage may be out. */
  limitKt: positive,
});

/** CT and CP as polynomials in the advance ratio J. */
const fixedPitchSchema = v.strictObject({
  kind: v.literal('fixed-pitch'),
  diameterM: positive,
  thrustCoefficient: v.tuple([finite, finite, finite]),
  powerCoefficient: v.tuple([finite, finite, finite]),
  lowestThrustCoefficient: v.pipe(finite, v.ltValue(0)),
});

/** Blades that a governor turns between two stops, as one element at three quarters of the radius. */
const constantSpeedSchema = v.strictObject({
  kind: v.literal('constant-speed'),
  diameterM: positive,
  /** Of all blades together. */
  bladeAreaM2: positive,
  bladeLiftPerRad: positive,
  bladeDrag: positive,
  bladeDragPerLift2: notNegative,
  /** Share of the disk that works, tip and hub left out. */
  diskShare: v.pipe(finite, v.gtValue(0.5), v.maxValue(1)),
  /** Of the blade's zero-lift line there. */
  finePitchDeg: positive,
  coarsePitchDeg: positive,
  /** What the lever asks for fully back; fully forward it asks for the engine's rated rpm. */
  lowestRpm: positive,
});

/** Every speed that is briefed: of an aeroplane, and of a speeds card of one's own. */
export const speedsSchema = v.strictObject({
  rotateKt: positive,
  climbKt: positive,
  bestAngleKt: positive,
  downwindKt: positive,
  baseKt: positive,
  finalKt: positive,
  finalFullFlapKt: positive,
  shortFieldKt: positive,
  glideKt: positive,
  flaplessKt: positive,
  goAroundKt: positive,
});

export const aeroplaneSchema = v.strictObject({
  id: text,
  title: text,
  description: text,
  massKg: v.strictObject({ empty: positive, flown: positive, maximum: positive }),
  wing: v.strictObject({
    areaM2: positive,
    spanM: positive,
    chordM: positive,
    position: v.picklist(['high', 'low']),
    /** Of the wing above the ground with the wheels on it, for ground effect. */
    heightM: positive,
    oswald: v.pipe(finite, v.gtValue(0.3), v.maxValue(1)),
  }),
  lift: v.strictObject({ zeroAlpha: finite, perRad: positive }),
  drag: v.strictObject({ parasite: positive, gear: notNegative, slipPerRad2: notNegative }),
  flap: v.strictObject({ travelDegps: positive, stages: v.pipe(v.array(flapStageSchema), v.minLength(1)) }),
  pitch: v.strictObject({
    inertiaKgM2: positive,
    cm0: finite,
    cmAlpha: v.pipe(finite, v.ltValue(0)),
    cmQ: v.pipe(finite, v.ltValue(0)),
    cmElevator: v.pipe(finite, v.ltValue(0)),
    cmGroundEffect: finite,
    elevatorUpDeg: positive,
    elevatorDownDeg: positive,
    trimUpDeg: positive,
    trimDownDeg: positive,
    /** Wheel position of the take-off mark, -1..1. */
    trimTakeOff: v.pipe(finite, v.minValue(-1), v.maxValue(1)),
    /** Heaviest push or pull one hand can hold, degrees of elevator times kPa of dynamic pressure. */
    handLimitDegKpa: positive,
  }),
  rollAndYaw: v.strictObject({
    inertiaKgM2: positive,
    /** pb/2V at full aileron. */
    rollHelix: positive,
    rollTimeS: positive,
    yawTimeS: positive,
    rudderSlipDeg: positive,
    cyBeta: v.pipe(finite, v.ltValue(0)),
    clBeta: v.pipe(finite, v.ltValue(0)),
    clRollRate: v.pipe(finite, v.ltValue(0)),
    /** Slip the propeller asks for per unit of Tc; positive: the nose goes left, right rudder is needed. */
    propellerSlipDegPerTc: finite,
    /** Slip asked for by full aileron, by the drag of the down-going surface. */
    adverseYawDeg: notNegative,
  }),
  engine: v.strictObject({
    powerKw: positive,
    ratedRpm: positive,
    idleRpm: positive,
    idleTorqueNm: positive,
    /** Closed-throttle torque lost per 1,000 rpm above idle, and the most it can brake. */
    idleTorqueSlopeNm: positive,
    motoringTorqueNm: positive,
    throttleTimeS: positive,
    rotatingInertiaKgM2: positive,
    carburettor: v.boolean(),
    carburettorHeatLoss: v.pipe(finite, v.minValue(0), v.maxValue(0.3)),
  }),
  propeller: v.variant('kind', [fixedPitchSchema, constantSpeedSchema]),
  undercarriage: v.strictObject({
    retractable: v.boolean(),
    cgHeightM: positive,
    eyeHeightM: positive,
    /** Of the eye ahead of the centre of gravity. */
    eyeForwardM: finite,
    mainsAftM: positive,
    noseForwardM: positive,
    trackM: positive,
    mainSagM: positive,
    noseSagM: positive,
    dampingSpm: positive,
    brakeFriction: positive,
    sideFriction: positive,
    steeringDeg: positive,
    /** Sink at touchdown beyond which the leg gives way. */
    collapseSinkFpm: positive,
    tailStrikeDeg: positive,
    /** From up to down and locked, or back. */
    travelS: v.optional(positive, 6),
  }),
  limits: v.strictObject({
    vneKt: positive,
    vnoKt: positive,
    maximumRpm: positive,
    crosswindKt: positive,
    tailwindKt: notNegative,
    loadFactor: positive,
    /** Highest speeds for moving the gear, and for flying with it down. */
    gearOperatingKt: v.exactOptional(positive),
    gearExtendedKt: v.exactOptional(positive),
  }),
  /** What the instructor briefs; speeds at flown mass and IAS. */
  speeds: speedsSchema,
  /** Flap stage used on each leg of the normal circuit (index into flap.stages) and its power. */
  plan: v.strictObject({
    takeOffStage: v.pipe(v.number(), v.integer(), v.minValue(0)),
    downwindStage: v.pipe(v.number(), v.integer(), v.minValue(0)),
    baseStage: v.pipe(v.number(), v.integer(), v.minValue(0)),
    finalStage: v.pipe(v.number(), v.integer(), v.minValue(0)),
    landingStage: v.pipe(v.number(), v.integer(), v.minValue(0)),
    baseRpm: positive,
    /** With a constant-speed propeller: the rpm set after take-off, and the power of base. */
    circuitRpm: v.exactOptional(positive),
    baseManifoldInHg: v.exactOptional(positive),
    /** What a card of one's own asks for on these legs; assessed where it is there. */
    cardRpm: v.exactOptional(
      v.strictObject({
        downwind: v.exactOptional(positive),
        base: v.exactOptional(positive),
        final: v.exactOptional(positive),
      }),
    ),
  }),
  equipment: v.strictObject({ pump: v.boolean(), mixture: v.boolean(), propellerLever: v.boolean() }),
  claims: v.record(v.string(), claimSchema),
  sources: v.record(v.string(), text),
});

/** One aeroplane as its file says it; `shapeOf` in simulation turns it into SI constants for the step. */
export type Aeroplane = v.InferOutput<typeof aeroplaneSchema>;
