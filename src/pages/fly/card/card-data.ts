import type { Aeroplane } from '../../../aeroplane/schema.ts';
import { type CheckListName, checkLines, shortCall, triedForPower } from '../../../circuit/checks.ts';
import { legWords as lessonLegWords } from '../../../lesson/names.ts';
import type { CallWords } from '../../../simulation/procedures.ts';
import { thousands } from '../../../units/format.ts';

/**
 * What stands on the sequence card, leg by leg: where you are, what comes next, checks to tick, calls to make. The
 * checks are those of the one table (`src/circuit/checks.ts`). Order of actions: UK/EASA PPL exercises 12 and 13 and
 * FAA-H-8083-3C ch. 8 and 9.
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
  readonly runwayHeadingDegM: number;
  readonly qnhHpa: number;
  readonly side: 'left' | 'right';
  /** Whose words the calls use. */
  readonly callWords: CallWords;
  /** Circuit height as the altimeter shows it on QNH. */
  readonly circuitAltitudeFt: number;
  readonly crosswindTurnFt: number;
  /** Where the plan goes down before base: its power and sink; null where it stays level. */
  readonly descent: { readonly rpm: number; readonly fpm: number } | null;
  /** Of the plan's base, or of one's own card. */
  readonly baseRpm: number;
  /** The sum for the head on each leg that has drift: "60 × 9 ÷ 84 ≈ 6°". */
  readonly drift: Readonly<Record<'crosswind' | 'downwind' | 'base', string | null>>;
  /** The plan's, half the gust included: it is what the gates ask for. */
  readonly approachKt: number;
}

/** The check as the one table has it; where checks are flown these lines make room for it. */
const checked = (list: CheckListName, setting: CardSetting): readonly CardLine[] =>
  checkLines(list, setting).map(({ id, text }) => ({ id, text, kind: 'check' }));

const did = (id: string, text: string): CardLine => ({ id, text, kind: 'do' });
const looked = (text: string): CardLine => ({ id: 'look', text, kind: 'check' });

const called = (
  call: Parameters<typeof shortCall>[0],
  { side, runway, callWords }: CardSetting,
): CardLine => ({
  id: 'call',
  kind: 'call',
  text: shortCall(call, side, runway, callWords),
});

/** The power of base, as this aeroplane's gauges tell it. */
const basePower = ({ aeroplane: { plan }, baseRpm }: CardSetting): string =>
  plan.baseManifoldInHg === undefined
    ? `${thousands(baseRpm)} rpm`
    : `${plan.baseManifoldInHg} in, propeller forward`;

const driftWords = (sum: string | null): string => (sum === null ? '' : `, into wind: ${sum}`);

const flapAt = (aeroplane: Aeroplane, stage: number): string =>
  stage === 0 ? 'flap up' : `flap ${aeroplane.flap.stages[stage]?.deg ?? 0}°`;

const CARDS: Readonly<Record<string, (s: CardSetting) => Card>> = {
  'line-up': (s) => ({
    where: 'Lined up',
    next: 'the take-off roll',
    lines: [
      did('roll', 'full power, smoothly; feet keep it straight'),
      looked('final clear, windsock seen'),
      ...checked('before-take-off', s),
    ],
  }),
  'take-off-roll': ({ aeroplane }) => ({
    where: 'Take-off roll',
    next: 'the climb',
    lines: [
      { id: 'alive', kind: 'check', text: 'airspeed alive, engine instruments in the green' },
      did('rotate', `${aeroplane.speeds.rotateKt} kt: ease the nose up`),
    ],
  }),
  upwind: (s) => ({
    where: 'Upwind',
    next: `${s.side} turn from ${s.crosswindTurnFt} ft`,
    lines: [
      did('speed', `${s.aeroplane.speeds.climbKt} kt, trimmed`),
      did('track', 'track on the extended centreline'),
      ...checked('after-take-off', s),
      looked(`look out before the turn, ending ${s.side}`),
    ],
  }),
  crosswind: ({ circuitAltitudeFt, side, drift }) => ({
    where: 'Crosswind',
    next: `level at ${thousands(circuitAltitudeFt)} ft`,
    lines: [
      did('track', `track square to the runway${driftWords(drift.crosswind)}`),
      did('level', `${thousands(circuitAltitudeFt)} ft: attitude, power, trim`),
      looked(`look out before the turn, ending ${side}`),
    ],
  }),
  downwind: (s) => ({
    where: 'Downwind',
    next: 'the base turn',
    lines: [
      did('speed', `${thousands(s.circuitAltitudeFt)} ft, ${s.aeroplane.speeds.downwindKt} kt, trimmed`),
      ...(s.drift.downwind === null ? [] : [did('track', `parallel${driftWords(s.drift.downwind)}`)]),
      ...(s.descent === null
        ? []
        : [
            did(
              'descent',
              `abeam the threshold power back: ${thousands(s.descent.rpm)} rpm, down at ${s.descent.fpm} ft/min`,
            ),
          ]),
      called('downwind', s),
      ...checked('downwind', s),
    ],
  }),
  base: (s) => ({
    where: 'Base',
    next: 'the turn to final',
    lines: [
      ...(s.aeroplane.engine.carburettor
        ? [{ id: 'heat', kind: 'check', text: 'carburettor heat hot' } as const]
        : []),
      did('flap', `${basePower(s)}, ${flapAt(s.aeroplane, s.aeroplane.plan.baseStage)}`),
      did('speed', `${s.aeroplane.speeds.baseKt} kt, trimmed`),
      ...(s.drift.base === null ? [] : [did('track', `square to the runway${driftWords(s.drift.base)}`)]),
      looked('look along the approach and the opposite base'),
    ],
  }),
  final: (s) => ({
    where: 'Final',
    next: 'stabilised at 300 ft',
    lines: [did('speed', `${s.approachKt} kt, trimmed`), called('final', s), ...checked('final', s)],
  }),
  'hold-off': () => ({
    where: 'Hold-off',
    next: 'main wheels first',
    lines: [did('power', 'power closed'), did('hold', 'hold it off, looking far ahead')],
  }),
  'landing-roll': () => ({
    where: 'Landing roll',
    next: 'a stop on the centreline',
    lines: [
      did('nose', 'hold the nosewheel off'),
      did('straight', 'straight with the feet, brakes in short applications'),
    ],
  }),
  'go-around': (s) => ({
    where: 'Going around',
    next: 'another circuit',
    lines: [
      did('nose', 'power, attitude, configuration; then the call'),
      ...checked('go-around', s),
      called('going-around', s),
    ],
  }),
  // CAA New Zealand Flight Instructor Guide, engine failure after take-off: the aeroplane first, checks only if there is time
  'engine-out': ({ aeroplane }) => ({
    where: 'Engine failure',
    next: 'land ahead',
    lines: [
      did('glide', `gliding attitude, ${aeroplane.speeds.glideKt} kt, and keep it`),
      did('field', 'a field within 30° of the nose; no turning back'),
      did('flap', 'flap when sure of the field'),
      did('if-time', 'only if there is time: fuel, heat, mayday; then fuel and switches off'),
    ],
  }),
  // ATSB AR-2010-055, partial power loss after take-off
  'partial-power': ({ aeroplane }) => ({
    where: 'Partial power',
    next: 'land while there is a choice',
    lines: [
      did('speed', `${aeroplane.speeds.glideKt} kt first, by attitude`),
      did('lever', `${triedForPower(aeroplane).join(', ')}; then leave alone what works`),
      did('turns', 'gentle turns, 15° of bank'),
      did('choice', 'it climbs: a low, wide-awake circuit; it does not: land ahead'),
    ],
  }),
  // UK and EASA PPL syllabus exercise 12, abandoned take-off
  abandoned: () => ({
    where: 'Take-off abandoned',
    next: 'stop on the runway',
    lines: [
      did('throttle', 'throttle closed, at once'),
      did('straight', 'straight with the feet'),
      did('brakes', 'brakes hard; ease them where a wheel locks'),
      did('tell', 'then tell, then ask why'),
    ],
  }),
  stopped: (s) => ({
    where: 'Stopped',
    next: 'clear of the runway',
    lines: checked('after-landing', s),
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
