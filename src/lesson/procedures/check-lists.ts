import type { Aeroplane } from '../../aeroplane/schema.ts';
import { mFromFt } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LegName } from '../names.ts';
import { type CheckItem, ITEMS } from './check-items.ts';
import type { ListId } from './memory.ts';

/**
 * The checks and where they belong. Items of the pre-landing check: BUMPFFITCHH and its kin as UK, Commonwealth
 * and US circuit texts list them (quoted); order of the go-around: FAA-H-8083-3C chapter 9, power, attitude,
 * configuration, the call last; after landing only once clear and stopped (FAA-H-8083-3C). The rest, and the
 * heights, are common practice. The aeroplane's handbook decides.
 */
export interface CheckList {
  readonly title: string;
  readonly items: readonly CheckItem[];
  /** Where it is to be begun, and where it must be done. */
  readonly opens: (leg: LegName, lesson: Lesson) => boolean;
  readonly closes: (leg: LegName, lesson: Lesson) => boolean;
  /** Legs into which the flight may turn away from it. */
  readonly interruptedBy?: readonly LegName[];
}

const AFTER_TAKE_OFF_M = mFromFt(300);
const LAST_CALL_M = mFromFt(200);
const UP_LEGS: readonly LegName[] = ['upwind', 'turn-to-crosswind', 'crosswind'];

export const CHECK_LISTS: Readonly<Record<ListId, CheckList>> = {
  'before-take-off': {
    title: 'Before take-off',
    items: [
      ITEMS.brakes,
      ITEMS.trim,
      ITEMS.mixtureRich,
      ITEMS.propellerFine,
      ITEMS.heatCold,
      ITEMS.fuel,
      ITEMS.pumpOn,
      ITEMS.flapTakeOff,
      ITEMS.subscale,
      ITEMS.compass,
      ITEMS.engine,
      ITEMS.harness,
      ITEMS.fullAndFree,
      ITEMS.lights,
      ITEMS.ifItStops,
    ],
    opens: (leg) => leg === 'line-up',
    closes: (leg) => leg !== 'line-up',
  },
  'after-take-off': {
    title: 'After take-off',
    items: [ITEMS.gearUp, ITEMS.flapUp, ITEMS.pumpOff, ITEMS.engine],
    opens: (leg, { where }) => leg === 'upwind' && where.heightM > AFTER_TAKE_OFF_M,
    closes: (leg) => !UP_LEGS.includes(leg),
  },
  downwind: {
    title: 'Downwind',
    items: [
      ITEMS.brakes,
      ITEMS.gearDown,
      ITEMS.mixtureRich,
      ITEMS.propellerFine,
      ITEMS.fuel,
      ITEMS.pumpOn,
      ITEMS.subscale,
      ITEMS.engine,
      ITEMS.heatTried,
      ITEMS.harness,
      ITEMS.flapBelowWhite,
    ],
    opens: (leg) => leg === 'downwind',
    closes: (leg) => leg !== 'downwind',
    interruptedBy: ['left-the-circuit'],
  },
  final: {
    title: 'Final',
    items: [
      ITEMS.gearDown,
      ITEMS.propellerFine,
      ITEMS.flapLanding,
      ITEMS.heatCold,
      ITEMS.toesOff,
      ITEMS.runwayClear,
    ],
    opens: (leg) => leg === 'final',
    closes: (leg, { where }) => leg !== 'final' || where.heightM < LAST_CALL_M,
    interruptedBy: ['go-around', 'turn-to-crosswind'],
  },
  'go-around': {
    title: 'Going around',
    items: [
      ITEMS.fullPower,
      { ...ITEMS.heatCold, how: 'set' },
      ITEMS.attitude,
      ITEMS.flapOneUp,
      ITEMS.gearUp,
      ITEMS.flapAllUp,
    ],
    opens: (leg) => leg === 'go-around',
    closes: (leg) => leg !== 'go-around',
    interruptedBy: ['final', 'hold-off', 'landing-roll'],
  },
  'after-landing': {
    title: 'After landing',
    items: [ITEMS.flapUp, ITEMS.heatCold, ITEMS.pumpOff, { ...ITEMS.trim, id: 'trim' }, ITEMS.lights],
    opens: (leg) => leg === 'stopped',
    closes: (leg) => leg !== 'stopped',
  },
};

/** The items that this aeroplane has. */
export const itemsOf = (list: ListId, aeroplane: Aeroplane): readonly CheckItem[] =>
  CHECK_LISTS[list].items.filter((item) => item.aboard?.(aeroplane) ?? true);
