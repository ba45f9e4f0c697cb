import type { CircuitPlan } from '../circuit/types.ts';
import type { CoachLevel, CoachMemory } from '../lesson/coach/coach.ts';
import type { JudgedBy } from '../lesson/judge/edit-tolerances.ts';
import type { ToleranceSet } from '../lesson/judge/tolerances.ts';
import type { Lesson } from '../lesson/lesson.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import type { Aircraft, Session } from '../session/session.ts';
import type { ControlSource } from '../session/source.ts';
import type { Model } from '../simulation/model.ts';
import type { Scenario } from '../simulation/scenario.ts';

/** Of each of the others: since which step it has stood on the runway; null while it moves. */
export type StoodSince = (number | null)[];

/** What the coach has said of a flight, and how loud the flight was told that it is: plain data. */
export interface CoachFollowing {
  readonly memory: CoachMemory;
  lastS: number;
  toldLevel: CoachLevel | '';
}

/** One flight from ready to its result: the session, what it is measured against, and what is known of it. */
export interface Flight {
  session: Session;
  readonly scenario: Scenario;
  readonly model: Model;
  readonly plan: CircuitPlan;
  readonly lesson: Lesson;
  /** What it is judged by, from its beginning to its end. */
  readonly judgedBy: JudgedBy | null;
  readonly limits: ToleranceSet;
  readonly stoodSince: StoodSince;
  /** Whose hands the flight was last told of; null: of nobody's yet. */
  flownBy: ControlSource<unknown> | null;
  /** Null until the coach has looked. */
  coach: CoachFollowing | null;
  /** Since when full throttle has turned the propeller too slowly; null while it has not. */
  weakSinceS: number | null;
  /** The step at which there is nothing more to wait for. */
  endsAtStep: number;
}

/** The aircraft that the flight is about. */
export const ownAircraft = ({ session }: Flight): Aircraft => session.aircraft[0] as Aircraft;

/** What the lesson remembers of the flight now. */
export const lessonMemory = (flight: Flight): LessonMemory =>
  ownAircraft(flight).foldMemories[0] as LessonMemory;
