import type { LegName } from '../names.ts';
import type { ItemReport } from './report.ts';
import { limitsWords, valueWords } from './value-words.ts';

/** "turn-to-base" as it is said; a hold-off and a take-off keep their hyphen. */
export const legWords = (leg: string): string =>
  leg === 'hold-off' ? leg : leg.replaceAll('-', ' ').replace('take off', 'take-off');

/** `downwind-height-2` is the second circuit's `downwind-height`; gates keep their height. */
export const circuitOfItem = (id: string): { readonly id: string; readonly circuit: number } => {
  const found = /^(.*[a-z]|gate-\d+)-(\d+)$/.exec(id);
  if (found === null || /^gate$/.test(found[1] as string)) return { id, circuit: 1 };
  return { id: found[1] as string, circuit: Number(found[2]) };
};

/** How a measure is called, and what it is called above and below its tolerance. */
interface MeasureWords {
  readonly name: string;
  readonly above: string;
  readonly below: string;
}

const WORDS: Readonly<Record<string, MeasureWords>> = {
  height: { name: 'height', above: 'too high', below: 'too low' },
  speed: { name: 'speed', above: 'too fast', below: 'too slow' },
  track: { name: 'track', above: 'to the right', below: 'to the left' },
  spacing: { name: 'spacing', above: 'too wide', below: 'too close' },
  bank: { name: 'bank', above: 'too steep', below: 'too shallow' },
  angle: { name: 'where the turn begins', above: 'too late', below: 'too early' },
  overshoot: { name: 'overshoot of the centreline', above: 'too far', below: 'too far' },
  centreline: { name: 'centreline', above: 'to the right', below: 'to the left' },
  point: { name: 'touchdown point', above: 'too far', below: 'too short' },
  sink: { name: 'sink at touchdown', above: 'too hard', below: 'too soft' },
  drift: { name: 'drift at touchdown', above: 'to the right', below: 'to the left' },
  crab: { name: 'alignment at touchdown', above: 'nose to the right', below: 'nose to the left' },
  bounces: { name: 'bounces', above: 'too many', below: 'too few' },
  balance: { name: 'balance', above: 'ball out', below: '' },
  rpm: { name: 'power by the card', above: 'too much', below: 'too little' },
  trim: { name: 'trim', above: 'pulling', below: 'pushing' },
  flap: { name: 'flap', above: 'too much', below: 'too little' },
  lights: { name: 'slope lights', above: 'too high', below: 'too low' },
  remaining: { name: 'runway left', above: '', below: 'too little' },
};

/** Rows whose last word alone would not say it, by their whole name. */
const WHOLE: Readonly<Record<string, string>> = {
  'flap-limit': 'speed above the limit of the flap',
  'extended-by': 'how far it was extended',
  'orbit-turned': 'how far round the orbit went',
  'glide-power': 'power in the glide',
  'slip-used': 'time in the slip',
  'go-around-answer': 'answer to the call',
  'stop-answer': 'answer to the call',
  'engine-failure-speed': 'gliding speed',
  'engine-failure-turn': 'turned from the heading',
  'round-out-height': 'round-out height',
  'touchdown-in-first-half': 'touchdown in the first half',
  'touchdown-centreline': 'touchdown from the centreline',
  'touchdown-nose-first': 'nose wheel first',
  'nose-held-off': 'nose wheel held off',
  brakes: 'longest on the brakes',
  'three-in-a-row': 'sound landings in a row',
  'checks-before-take-off': 'check before take-off',
  'checks-after-take-off': 'check after take-off',
  'checks-downwind': 'check',
  'checks-final': 'check',
  'checks-go-around': 'order of the go-around, whole',
  'checks-after-landing': 'check after landing',
  'downwind-order': 'order of the check',
  'go-around-order': 'power, attitude, configuration',
  'heads-in-height': 'height with heads in',
  'heads-in-heading': 'heading with heads in',
  'lookout-crosswind': 'lookout before it',
  'lookout-downwind': 'lookout before it',
  'lookout-base': 'lookout before it',
  'lookout-final': 'lookout before it',
  'read-back': 'reading back',
  clearance: 'runway used without a clearance',
  'spacing-ahead': 'distance to the one ahead',
  'brakes-found': 'brakes tried',
  subscale: 'altimeter on QNH',
};

const measureOf = (id: string): MeasureWords | null => WORDS[id.slice(id.lastIndexOf('-') + 1)] ?? null;

/** "downwind: height"; `id` without the circuit's number. */
export const itemWords = (id: string, leg: LegName): string => {
  if (id.startsWith('gate-')) return `final: stabilised at ${id.slice('gate-'.length)} ft`;
  if (id === 'go-around') return 'going around when it is due';
  return `${legWords(leg)}: ${WHOLE[id] ?? measureOf(id)?.name ?? id.replaceAll('-', ' ')}`;
};

/** The same with a capital, to stand first, and with the circuit where it is not the first. */
export const itemTitle = (item: Pick<ItemReport, 'id' | 'leg'>): string => {
  const { id, circuit } = circuitOfItem(item.id);
  const words = itemWords(id, item.leg);
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return circuit === 1 ? title : `${title}, circuit ${circuit}`;
};

/** Rows that are counted rather than measured. */
const COUNTED: Readonly<Record<string, (count: number, title: string) => string>> = {
  faults: (count, title) =>
    `${title}: no, ${count === 1 ? 'one thing was' : `${count} things were`} not as it should be.`,
  ignored: () => 'A go-around was due and was not flown.',
};

/** "Downwind: height was 640 ft; the tolerance is 900 ft to 1100 ft." */
export const itemSentence = (item: ItemReport): string => {
  const counted = COUNTED[item.unit];
  if (counted !== undefined && item.value !== null) return counted(item.value, itemTitle(item));
  const limits = limitsWords(item.low, item.high, item.unit);
  const tolerance = limits === '' ? '' : `; the tolerance is ${limits}`;
  return `${itemTitle(item)} was ${valueWords(item.value, item.unit)}${tolerance}.`;
};

/** "too high", or empty where a side says nothing. */
export const sideWords = (id: string, side: 'above' | 'below'): string => measureOf(id)?.[side] ?? '';
