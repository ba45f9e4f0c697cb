/**
 * Who flies: how people differ at the controls. Figures are common practice of instructing and of manual control
 * (reaction some 0.3 to 0.5 s, readings that wander by a needle's width); they are this test's own, and none comes
 * from the model pilot.
 */
export interface Person {
  readonly name: string;
  /** Keys that move an attitude, keys that move the stick, or a stick of the gamepad. */
  readonly hands: 'keys' | 'gamepad';
  /** Between two looks at the whole picture. */
  readonly glanceS: number;
  /** From seeing to doing. */
  readonly reactionS: number;
  /** Share of an error that one correction takes out; beyond 1 overshoots. */
  readonly pitchGain: number;
  readonly rollGain: number;
  /** Degrees of nose for a knot of speed, once in `correctS`. */
  readonly speedGainDegPerKt: number;
  /** Between two corrections of speed, height or power. */
  readonly correctS: number;
  /** Steps of the power lever, in rpm. */
  readonly powerStepRpm: number;
  /** How far a reading wanders: one standard deviation. */
  readonly wander: {
    readonly speedKt: number;
    readonly heightFt: number;
    readonly headingDeg: number;
    readonly slopeDeg: number;
    readonly acrossShare: number;
    readonly flareFt: number;
  };
  /** A place is met this much late on average, and scatters as much. */
  readonly lateS: number;
  readonly scatterS: number;
  /** Trims when it has held more than this for two seconds (degrees of elevator times kPa). */
  readonly trimsAbove: number;
}

const USUAL = {
  speedKt: 1.5,
  heightFt: 15,
  headingDeg: 1.5,
  slopeDeg: 0.15,
  acrossShare: 0.05,
  flareFt: 2.5,
};

export const PERSONS: readonly Person[] = [
  {
    name: 'smooth',
    hands: 'keys',
    glanceS: 0.4,
    reactionS: 0.3,
    pitchGain: 0.9,
    rollGain: 0.9,
    speedGainDegPerKt: 0.25,
    correctS: 2,
    powerStepRpm: 100,
    wander: USUAL,
    lateS: 0.3,
    scatterS: 0.6,
    trimsAbove: 0.7,
  },
  {
    name: 'over-controlling',
    hands: 'keys',
    glanceS: 0.3,
    reactionS: 0.35,
    pitchGain: 1.35,
    rollGain: 1.3,
    speedGainDegPerKt: 0.45,
    correctS: 1.6,
    powerStepRpm: 150,
    wander: { ...USUAL, speedKt: 2, slopeDeg: 0.2 },
    lateS: 0.2,
    scatterS: 0.9,
    trimsAbove: 1,
  },
  {
    name: 'lagging',
    hands: 'keys',
    glanceS: 0.7,
    reactionS: 0.5,
    pitchGain: 0.8,
    rollGain: 0.85,
    speedGainDegPerKt: 0.2,
    correctS: 2.8,
    powerStepRpm: 100,
    wander: { ...USUAL, heightFt: 20 },
    lateS: 1,
    scatterS: 1.2,
    trimsAbove: 0.8,
  },
  {
    name: 'by gamepad',
    hands: 'gamepad',
    glanceS: 0.35,
    reactionS: 0.3,
    pitchGain: 1,
    rollGain: 1,
    speedGainDegPerKt: 0.3,
    correctS: 2,
    powerStepRpm: 100,
    wander: { ...USUAL, headingDeg: 2 },
    lateS: 0.4,
    scatterS: 0.8,
    trimsAbove: 0.7,
  },
  {
    name: 'heads in',
    hands: 'keys',
    glanceS: 0.55,
    reactionS: 0.4,
    pitchGain: 0.95,
    rollGain: 0.9,
    speedGainDegPerKt: 0.35,
    correctS: 1.8,
    powerStepRpm: 50,
    wander: { ...USUAL, speedKt: 1, headingDeg: 2.5, slopeDeg: 0.25, acrossShare: 0.08 },
    lateS: 0.6,
    scatterS: 1,
    trimsAbove: 0.6,
  },
];

export const personNamed = (name: string): Person => {
  const found = PERSONS.find((person) => person.name === name);
  if (found === undefined)
    throw new Error(`person must be one of ${PERSONS.map((p) => p.name).join(', ')}, was ${name}`);
  return found;
};
