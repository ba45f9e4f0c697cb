import type { Aeroplane } from '../../aeroplane/schema.ts';
import { CHECK_WORDS, CHECKS, type CheckGiven, isAboard } from '../../circuit/checks.ts';
import { degFromRad, mFromFt } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LegName } from '../names.ts';
import { type CheckItem, itemNamed } from './check-items.ts';
import type { ListId } from './memory.ts';

/** Where each check of the one table (`src/circuit/checks.ts`) belongs; the heights are common practice. */
export interface CheckPlace {
  /** Where it is to be begun, and where it must be done. */
  readonly opens: (leg: LegName, lesson: Lesson) => boolean;
  readonly closes: (leg: LegName, lesson: Lesson) => boolean;
  /** Legs into which the flight may turn away from it. */
  readonly interruptedBy?: readonly LegName[];
  /** The leg goes by of itself: who joined it at its end could not have said it. */
  readonly goesBy?: true;
}

const AFTER_TAKE_OFF_M = mFromFt(300); // South African procedures, night circuit: not below 300 ft
const LAST_CALL_M = mFromFt(200); // common practice: the last call of a circuit
const UP_LEGS: readonly LegName[] = ['upwind', 'turn-to-crosswind', 'crosswind'];

export const CHECK_PLACES: Readonly<Record<ListId, CheckPlace>> = {
  'before-take-off': {
    opens: (leg) => leg === 'line-up',
    closes: (leg) => leg !== 'line-up',
  },
  'after-take-off': {
    opens: (leg, { where }) => leg === 'upwind' && where.heightM > AFTER_TAKE_OFF_M,
    closes: (leg) => !UP_LEGS.includes(leg),
    goesBy: true,
  },
  downwind: {
    opens: (leg) => leg === 'downwind',
    closes: (leg) => leg !== 'downwind',
    interruptedBy: ['left-the-circuit'],
    goesBy: true,
  },
  final: {
    opens: (leg) => leg === 'final',
    closes: (leg, { where }) => leg !== 'final' || where.heightM < LAST_CALL_M,
    interruptedBy: ['go-around', 'turn-to-crosswind'],
    goesBy: true,
  },
  'go-around': {
    opens: (leg) => leg === 'go-around',
    closes: (leg) => leg !== 'go-around',
    interruptedBy: ['final', 'hold-off', 'landing-roll'],
  },
  'after-landing': {
    opens: (leg) => leg === 'stopped',
    closes: (leg) => leg !== 'stopped',
  },
};

export const titleOf = (list: ListId): string => CHECKS[list].title;

/** The items that this aeroplane has. */
export const itemsOf = (list: ListId, aeroplane: Aeroplane): readonly CheckItem[] =>
  CHECKS[list].items.filter((name) => isAboard(name, aeroplane)).map(itemNamed);

const givenOf = ({ aeroplane, runway, procedures }: Lesson): CheckGiven => ({
  aeroplane,
  runway: runway.designator,
  runwayHeadingDegM: degFromRad(runway.headingRadM),
  qnhHpa: procedures?.qnhHpa ?? null,
});

/** An item in its words. */
export const checkItemWords = ({ name }: CheckItem, lesson: Lesson): string =>
  CHECK_WORDS[name].words(givenOf(lesson));
