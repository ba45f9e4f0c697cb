import type { Aeroplane } from '../aeroplane/schema.ts';
import type { CallWords } from '../simulation/procedures.ts';
import { fixed, headingDigits } from '../units/format.ts';

/**
 * The one table of checks: what they are called, in which order, in which words, and which of them an aeroplane has.
 * The brief prints them, the card shows them, the lesson watches them being done (`src/lesson/procedures`).
 *
 * Items of the pre-landing check: BUMPFFITCHH and its kin as UK, Commonwealth and US circuit texts list them
 * (quoted); order of the go-around: FAA-H-8083-3C p. 9-11, power, attitude, configuration, the call last; after
 * landing only once clear and stopped (FAA-H-8083-3C ch. 9). The rest is common practice. The aeroplane's handbook decides.
 */
export interface CheckGiven {
  readonly aeroplane: Aeroplane;
  readonly runway: string;
  readonly runwayHeadingDegM: number;
  /** What the altimeter is to be set to; null where that is not told yet. */
  readonly qnhHpa: number | null;
}

interface CheckWords {
  /** What a list calls it; the same item has one id in every list. */
  readonly id: string;
  readonly words: (given: CheckGiven) => string;
  readonly aboard?: (aeroplane: Aeroplane) => boolean;
}

const plain = (id: string, text: string): CheckWords => ({ id, words: () => text });

const degrees = (aeroplane: Aeroplane, stage: number): string =>
  stage === 0 ? 'up' : `${fixed(aeroplane.flap.stages[stage]?.deg ?? 0)}°`;

/** The first flap on downwind; nothing of the white arc where it is still up. */
const downwindFlap = (aeroplane: Aeroplane): string => {
  const { downwindStage } = aeroplane.plan;
  return downwindStage === 0
    ? 'flap still up'
    : `inside the white arc: flap ${degrees(aeroplane, downwindStage)}`;
};

const hasGear = ({ undercarriage }: Aeroplane): boolean => undercarriage.retractable;
const hasPump = ({ equipment }: Aeroplane): boolean => equipment.pump;
const hasCarburettor = ({ engine }: Aeroplane): boolean => engine.carburettor;

/** Landing flap, or what the approach is planned with where more is not wanted. */
const landingFlap = (aeroplane: Aeroplane): string => {
  const { plan } = aeroplane;
  if (plan.landingStage === 0) return 'flap stays up';
  const most = degrees(aeroplane, plan.landingStage);
  return plan.finalStage < plan.landingStage
    ? `landing flap ${degrees(aeroplane, plan.finalStage)}, or ${most}`
    : `landing flap ${most}`;
};

export const CHECK_WORDS = {
  brakes: plain('brakes', 'brakes: press, pressure firm, off'),
  trim: plain('trim', 'trim at the take-off mark'),
  mixtureRich: {
    ...plain('mixture', 'mixture rich, leaned only for power in thin air'),
    aboard: ({ equipment }: Aeroplane) => equipment.mixture,
  },
  propellerFine: {
    ...plain('propeller', 'propeller fully fine'),
    aboard: ({ equipment }: Aeroplane) => equipment.propellerLever,
  },
  heatCold: { ...plain('heat', 'carburettor heat cold'), aboard: hasCarburettor },
  heatTried: {
    ...plain('heat', 'carburettor heat hot ten seconds, note the rpm'),
    aboard: hasCarburettor,
  },
  gearDown: { ...plain('gear', 'gear down, green'), aboard: hasGear },
  gearUp: { ...plain('gear', 'gear up, climbing'), aboard: hasGear },
  fuel: plain('fuel', 'fuel: tank, contents enough to go around'),
  pumpOn: { ...plain('pump', 'fuel pump on, pressure'), aboard: hasPump },
  pumpOff: { ...plain('pump', 'fuel pump off, pressure holds'), aboard: hasPump },
  subscale: {
    id: 'altimeter',
    words: ({ qnhHpa }: CheckGiven) => `altimeter on QNH${qnhHpa === null ? '' : ` ${fixed(qnhHpa)}`}`,
  },
  compass: {
    id: 'compass',
    words: ({ runway, runwayHeadingDegM }: CheckGiven) =>
      `compass agrees with runway ${runway}: ${headingDigits(runwayHeadingDegM)}`,
  },
  engine: plain('engine', 'temperatures and pressures in the green'),
  harness: plain('harness', 'hatches and harnesses secure'),
  fullAndFree: plain('controls', 'controls full and free: stick fully back, forward, left and right'),
  lights: plain('lights', 'landing light and strobes'),
  ifItStops: plain('if-it-stops', 'say what you do if the engine stops'),
  flapTakeOff: {
    id: 'flap',
    words: ({ aeroplane }: CheckGiven) => `flap ${degrees(aeroplane, aeroplane.plan.takeOffStage)}`,
  },
  flapBelowWhite: {
    id: 'flap',
    words: ({ aeroplane }: CheckGiven) => downwindFlap(aeroplane),
  },
  flapLanding: { id: 'flap', words: ({ aeroplane }: CheckGiven) => landingFlap(aeroplane) },
  flapUp: plain('flap', 'flap up'),
  runwayClear: plain('runway', 'runway clear'),
  toesOff: plain('toes', 'toes off the brakes'),
  fullPower: plain('power', 'power: full, smoothly'),
  attitude: {
    id: 'attitude',
    words: ({ aeroplane }: CheckGiven) =>
      `attitude: sink stopped, then ${fixed(aeroplane.speeds.goAroundKt)} kt`,
  },
  flapOneUp: plain('flap', 'configuration: flap up one stage'),
  flapAllUp: plain('flap-up', 'flap up by stages, climbing'),
} as const satisfies Readonly<Record<string, CheckWords>>;

export type CheckName = keyof typeof CHECK_WORDS;

export const CHECKS = {
  'before-take-off': {
    title: 'Before take-off',
    items: [
      'brakes',
      'trim',
      'mixtureRich',
      'propellerFine',
      'heatCold',
      'fuel',
      'pumpOn',
      'flapTakeOff',
      'subscale',
      'compass',
      'engine',
      'harness',
      'fullAndFree',
      'lights',
      'ifItStops',
    ],
  },
  'after-take-off': { title: 'After take-off', items: ['gearUp', 'flapUp', 'pumpOff', 'engine'] },
  downwind: {
    title: 'Downwind',
    items: [
      'brakes',
      'gearDown',
      'mixtureRich',
      'propellerFine',
      'fuel',
      'pumpOn',
      'subscale',
      'engine',
      'heatTried',
      'harness',
      'flapBelowWhite',
    ],
  },
  final: {
    title: 'Final',
    items: ['gearDown', 'propellerFine', 'flapLanding', 'heatCold', 'toesOff', 'runwayClear'],
  },
  'go-around': {
    title: 'Going around',
    items: ['fullPower', 'heatCold', 'attitude', 'flapOneUp', 'gearUp', 'flapAllUp'],
  },
  'after-landing': {
    title: 'After landing',
    items: ['flapUp', 'heatCold', 'pumpOff', 'trim', 'lights'],
  },
} as const satisfies Readonly<
  Record<string, { readonly title: string; readonly items: readonly CheckName[] }>
>;

export type CheckListName = keyof typeof CHECKS;

export interface CheckLine {
  readonly name: CheckName;
  readonly id: string;
  readonly text: string;
}

/** Whether an aeroplane has what an item is about. */
export const isAboard = (name: CheckName, aeroplane: Aeroplane): boolean => {
  const { aboard }: CheckWords = CHECK_WORDS[name];
  return aboard?.(aeroplane) ?? true;
};

/** A check as this aeroplane has it, in its order and words. */
export const checkLines = (list: CheckListName, given: CheckGiven): readonly CheckLine[] =>
  CHECKS[list].items
    .filter((name) => isAboard(name, given.aeroplane))
    .map((name) => ({ name, id: CHECK_WORDS[name].id, text: CHECK_WORDS[name].words(given) }));

/**
 * What is tried when part of the power is gone, once the speed is there: carburettor heat first (New Zealand Flight
 * Instructor Guide, engine failure after take-off), then fuel and pump (common practice).
 */
export const triedForPower = ({ engine, equipment }: Aeroplane): readonly string[] => [
  ...(engine.carburettor ? ['carburettor heat hot'] : []),
  'fuel',
  ...(equipment.pump ? ['pump on'] : []),
];

/**
 * Position calls as a card or a brief notes them, in short, and where they belong. CAP 413: "downwind" (abeam the
 * upwind end: CAP 493, quoted), right-hand said where circuits are to the right, "final" within 4 NM. FAA AIM 4-1-9:
 * the hand always, on entering downwind, and base where nobody answers.
 */
export const shortCall = (
  call: 'downwind' | 'base' | 'final' | 'going-around',
  hand: 'left' | 'right',
  runway: string,
  words: CallWords,
): string => {
  if (call === 'downwind') {
    if (words === 'faa') return `“${hand} downwind” on entering it`;
    return `${hand === 'right' ? '“right-hand downwind”' : '“downwind”'} abeam the upwind end`;
  }
  if (call === 'base') {
    return words === 'faa' ? `“${hand} base” without a tower, or as asked` : '“base” where it is asked for';
  }
  return call === 'final' ? `“final, runway ${[...runway].join(' ')}”` : '“going around”';
};
