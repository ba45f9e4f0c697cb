import type { Aeroplane } from '../../aeroplane/schema.ts';
import { legWords as lessonLegWords } from '../../lesson/item-words.ts';

/**
 * What stands on the sequence card, leg by leg: where you are, what comes next, checks to tick, calls to make.
 * Order of actions: UK/EASA PPL exercises 12 and 13 and FAA Airplane Flying Handbook, chapters "Airport traffic
 * patterns" and "Approaches and landings"; calls: CAP 413 ("downwind", "final" within 4 NM). Checks are common
 * practice; the aeroplane's own handbook decides.
 */
export interface CardLine {
  readonly id: string;
  readonly text: string;
  readonly kind: 'do' | 'check' | 'call';
}

export interface Card {
  readonly where: string;
  readonly next: string;
  readonly lines: readonly CardLine[];
}

interface CardSetting {
  readonly aeroplane: Aeroplane;
  readonly runway: string;
  readonly side: 'left' | 'right';
  readonly circuitFt: number;
  readonly crosswindTurnFt: number;
  /** The plan's, half the gust included: it is what the gates ask for. */
  readonly approachKt: number;
}

const degOf = (aeroplane: Aeroplane, stage: number): string => `${aeroplane.flap.stages[stage]?.deg ?? 0}°`;

const sayHeat = (aeroplane: Aeroplane, words: string): readonly [CardLine] | readonly [] =>
  aeroplane.engine.carburettor ? [{ id: 'heat', kind: 'check', text: words }] : [];

const sayPump = (aeroplane: Aeroplane): readonly [CardLine] | readonly [] =>
  aeroplane.equipment.pump
    ? [{ id: 'pump', kind: 'check', text: 'fuel pump on, pressure in the green' }]
    : [];

const sayGear = (aeroplane: Aeroplane, words: string): readonly [CardLine] | readonly [] =>
  aeroplane.undercarriage.retractable ? [{ id: 'gear', kind: 'check', text: words }] : [];

/** The power of base, as this aeroplane's gauges tell it. */
const basePower = ({ plan }: Aeroplane): string =>
  plan.baseManifoldInHg === undefined
    ? `${plan.baseRpm.toLocaleString('en-GB')} rpm`
    : `${plan.baseManifoldInHg} in, propeller forward`;

const LANDED = {
  id: 'straight',
  kind: 'do',
  text: 'straight with the feet, brakes in short applications',
} as const;

const CARDS: Readonly<Record<string, (s: CardSetting) => Card>> = {
  'line-up': ({ aeroplane, runway }) => ({
    where: 'Lined up',
    next: 'the take-off roll',
    lines: [
      { id: 'runway', kind: 'check', text: `heading agrees with runway ${runway}, windsock seen` },
      {
        id: 'flap',
        kind: 'check',
        text: `flap ${degOf(aeroplane, aeroplane.plan.takeOffStage)}, trim at the take-off mark`,
      },
      ...sayHeat(aeroplane, 'carburettor heat cold'),
      ...sayPump(aeroplane),
      { id: 'power', kind: 'do', text: 'full power, smoothly; feet keep it straight' },
    ],
  }),
  'take-off-roll': ({ aeroplane }) => ({
    where: 'Take-off roll',
    next: 'the climb',
    lines: [
      { id: 'alive', kind: 'check', text: 'airspeed alive, engine instruments in the green' },
      { id: 'rotate', kind: 'do', text: `${aeroplane.speeds.rotateKt} kt: ease the nose up` },
    ],
  }),
  upwind: ({ aeroplane, crosswindTurnFt, side }) => ({
    where: 'Upwind',
    next: `the turn to crosswind, ${side}, from ${crosswindTurnFt} ft`,
    lines: [
      { id: 'speed', kind: 'do', text: `${aeroplane.speeds.climbKt} kt, trimmed` },
      { id: 'track', kind: 'do', text: 'track on the extended centreline' },
      ...sayGear(aeroplane, 'climbing, no runway left: gear up'),
      { id: 'after', kind: 'check', text: 'after-take-off check: flap up, engine in the green' },
      { id: 'look', kind: 'check', text: `look out before the turn, ending ${side}` },
    ],
  }),
  crosswind: ({ circuitFt, side }) => ({
    where: 'Crosswind',
    next: `level at ${circuitFt} ft, then downwind`,
    lines: [
      { id: 'track', kind: 'do', text: 'track square to the runway: allow for drift' },
      { id: 'level', kind: 'do', text: `${circuitFt} ft: attitude, power, trim` },
      { id: 'look', kind: 'check', text: `look out before the turn, ending ${side}` },
    ],
  }),
  downwind: ({ aeroplane, circuitFt, side, runway }) => ({
    where: 'Downwind',
    next: 'the base turn, threshold behind the wing',
    lines: [
      {
        id: 'call',
        kind: 'call',
        text: side === 'right' ? '“right-hand downwind”' : `“downwind, runway ${runway}”`,
      },
      { id: 'speed', kind: 'do', text: `${circuitFt} ft, ${aeroplane.speeds.downwindKt} kt, trimmed` },
      { id: 'checks', kind: 'check', text: 'brakes off, mixture, fuel, instruments, harness' },
      ...sayGear(aeroplane, 'gear down below its limit speed, and locked'),
      ...sayPump(aeroplane),
      ...sayHeat(aeroplane, 'carburettor heat hot ten seconds, note rpm'),
      {
        id: 'flap',
        kind: 'check',
        text: `inside the white arc: flap ${degOf(aeroplane, aeroplane.plan.downwindStage)}`,
      },
    ],
  }),
  base: ({ aeroplane }) => ({
    where: 'Base',
    next: 'the turn to final: look along it first',
    lines: [
      ...sayHeat(aeroplane, 'carburettor heat hot'),
      {
        id: 'flap',
        kind: 'check',
        text: `${basePower(aeroplane)}, flap ${degOf(aeroplane, aeroplane.plan.baseStage)}`,
      },
      { id: 'speed', kind: 'do', text: `${aeroplane.speeds.baseKt} kt, trimmed` },
      { id: 'look', kind: 'check', text: 'look along long final and the opposite base' },
    ],
  }),
  final: ({ aeroplane, runway, approachKt }) => ({
    where: 'Final',
    next: 'stabilised at 300 ft, or go around',
    lines: [
      { id: 'call', kind: 'call', text: `“final, runway ${runway}”` },
      {
        id: 'flap',
        kind: 'check',
        text: `landing flap ${degOf(aeroplane, aeroplane.plan.landingStage)}, ${approachKt} kt, trimmed`,
      },
      ...sayGear(aeroplane, 'gear down, propeller forward'),
      ...sayHeat(aeroplane, 'carburettor heat cold below 200 ft'),
      { id: 'clear', kind: 'check', text: 'runway clear, toes off the brakes' },
    ],
  }),
  'hold-off': () => ({
    where: 'Hold-off',
    next: 'main wheels first',
    lines: [
      { id: 'power', kind: 'do', text: 'power closed' },
      { id: 'hold', kind: 'do', text: 'hold it off, looking far ahead' },
    ],
  }),
  'landing-roll': () => ({
    where: 'Landing roll',
    next: 'a stop on the centreline',
    lines: [{ id: 'nose', kind: 'do', text: 'hold the nosewheel off' }, LANDED],
  }),
  'go-around': ({ aeroplane }) => ({
    where: 'Going around',
    next: 'upwind, and another circuit',
    lines: [
      {
        id: 'power',
        kind: 'do',
        text: `full power${aeroplane.engine.carburettor ? ', carburettor heat cold' : ''}`,
      },
      { id: 'attitude', kind: 'do', text: `hold the nose down, ${aeroplane.speeds.goAroundKt} kt` },
      { id: 'flap', kind: 'check', text: 'flap to take-off, then up in stages, climbing' },
      { id: 'call', kind: 'call', text: '“going around”' },
    ],
  }),
  stopped: ({ aeroplane }) => ({
    where: 'Stopped',
    next: 'clear of the runway, then the after-landing check',
    lines: [
      { id: 'after', kind: 'check', text: 'flap up, trim at the take-off mark' },
      ...sayHeat(aeroplane, 'carburettor heat cold'),
    ],
  }),
};

const TURNS: Readonly<Record<string, string>> = {
  'turn-to-crosswind': 'crosswind',
  'turn-to-downwind': 'downwind',
  'turn-to-base': 'base',
  'turn-to-final': 'final',
};

/** The card for a leg as the lesson names it; a turn shows the card of the leg it leads to. */
export const cardFor = (leg: string, setting: CardSetting): Card => {
  const onto = TURNS[leg];
  const make = CARDS[onto ?? leg];
  if (!make) return { where: legWords(leg), next: 'back to the circuit', lines: [] };
  const card = make(setting);
  return onto ? { ...card, where: legWords(leg), next: `roll out onto ${onto}` } : card;
};

/** The same with a capital, to stand first. */
export const legWords = (leg: string): string => {
  const said = lessonLegWords(leg);
  return said.charAt(0).toUpperCase() + said.slice(1);
};

export type { CardSetting };
