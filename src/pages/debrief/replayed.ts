import { acrossM, alongM } from '../../aerodrome/runway.ts';
import { exerciseOf } from '../../catalogue.ts';
import { planCircuit } from '../../circuit/plan.ts';
import type { CircuitPlan } from '../../circuit/types.ts';
import { sameModel } from '../../formats/scenario-json.ts';
import type { ToleranceSet } from '../../lesson/judge/tolerances.ts';
import type { Lesson } from '../../lesson/lesson.ts';
import { lessonOfScenario } from '../../lesson/lesson-of.ts';
import type { LessonMemory } from '../../lesson/memory.ts';
import type { LegName } from '../../lesson/names.ts';
import { slopeFromAimRad } from '../../lesson/watch/gates.ts';
import { createLessonFold } from '../../lesson/watch/lesson-fold.ts';
import type { Recording } from '../../session/recording.ts';
import {
  beginReplay,
  type Instant,
  instantOf,
  replayTo,
  resumeReplay,
  seeInstant,
} from '../../session/replay.ts';
import type { Fold } from '../../session/source.ts';
import { type Model, prepare } from '../../simulation/model.ts';
import { STEP_HZ } from '../../simulation/scenario.ts';
import { newSnapshot, type Snapshot } from '../../simulation/snapshot.ts';
import { degFromRad, ftFromM, ktFromMps, rpmFromRevps } from '../../units/conversions.ts';
import { distanceAlong, type Track, trackOf } from '../../views/profile/track.ts';
import { type ApproachBand, bandNow } from './approach-bands.ts';

/** What the plots, the plan and the profile draw: twice a second, in cockpit units; NaN where it says nothing. */
export interface Sample {
  readonly timeS: number;
  readonly eastM: number;
  readonly northM: number;
  readonly heightM: number;
  /** Along the planned circuit, as the profile unrolls it. */
  readonly distanceM: number;
  /** From the landing threshold, along the runway and across it. */
  readonly alongM: number;
  readonly acrossM: number;
  readonly altitudeFt: number;
  readonly iasKt: number;
  readonly bankDeg: number;
  readonly powerRpm: number;
  readonly heldDegKpa: number;
  /** From the planned approach, + high; on final only. */
  readonly slopeOffDeg: number;
  /** + right of it; on final and on the runway. */
  readonly centrelineM: number;
  readonly flapDeg: number;
  readonly leg: LegName;
  readonly band: ApproachBand;
}

/** A recorded flight laid out to be looked at: its samples, and the whole of it at any instant. */
export interface Replayed {
  readonly recording: Recording;
  readonly model: Model;
  readonly plan: CircuitPlan;
  readonly lesson: Lesson;
  readonly track: Track;
  readonly samples: readonly Sample[];
  readonly endS: number;
  /** It was flown again to the bit; otherwise only its keyframes stand. */
  readonly exact: boolean;
  /** What it was judged by. */
  readonly limits: ToleranceSet;
  /** What the lesson had found at the end; null where it could not watch. */
  readonly memory: LessonMemory | null;
  /** For whoever looks at an instant and keeps nothing of it. */
  readonly scratch: Snapshot;
  /** Fills `into` with the instant: flown again from the second before. */
  at(timeS: number, into: Snapshot): Snapshot;
}

const SAMPLE_STEPS = STEP_HZ / 2;
const ON_FINAL: ReadonlySet<LegName> = new Set(['final', 'turn-to-final', 'hold-off']);
const ON_RUNWAY: ReadonlySet<LegName> = new Set(['take-off-roll', 'landing-roll', 'stopped', 'line-up']);

const lastBefore = (instants: readonly Instant[], at: number): Instant => {
  let low = 0;
  let high = instants.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((instants[middle] as Instant).step <= at) low = middle;
    else high = middle - 1;
  }
  return instants[low] as Instant;
};

/** Lays a flight out, with the approach as those limits see it. Throws an Error sentence where its circuit cannot be planned. */
export const layOut = (recording: Recording, limits: ToleranceSet): Replayed => {
  const { scenario } = recording;
  const model = prepare(scenario);
  const { runway } = model;
  const plan = planCircuit(model.shape, scenario.aeroplane, scenario.aerodrome, runway, scenario.weather);
  const lesson = lessonOfScenario(scenario, runway, plan, exerciseOf(scenario));
  const track = trackOf(plan, runway);
  const samples: Sample[] = [];
  let beforeM = Number.NaN;

  const take = (s: Readonly<Snapshot>, leg: LegName, band: ApproachBand): void => {
    beforeM = distanceAlong(track, s.eastM, s.northM, s.heightM, beforeM);
    const along = alongM(runway, s.eastM, s.northM);
    const across = acrossM(runway, s.eastM, s.northM);
    const descending = ON_FINAL.has(leg) && along < runway.aimM - 60;
    samples.push({
      timeS: s.timeS,
      eastM: s.eastM,
      northM: s.northM,
      heightM: s.heightM,
      distanceM: beforeM,
      alongM: along,
      acrossM: across,
      altitudeFt: ftFromM(s.altitudeM),
      iasKt: ktFromMps(s.shownIasMps),
      bankDeg: degFromRad(s.bankRad),
      powerRpm: rpmFromRevps(s.engineRevps),
      heldDegKpa: s.heldPressureDegKpa,
      slopeOffDeg: descending
        ? degFromRad(slopeFromAimRad(lesson, along, s.heightM) - plan.approachRad)
        : Number.NaN,
      centrelineM: ON_FINAL.has(leg) || ON_RUNWAY.has(leg) ? across : Number.NaN,
      flapDeg: s.flapDeg,
      leg,
      band,
    });
  };

  const whole = sameModel(scenario);
  const seen = whole
    ? flyAgain(recording, model, lesson, limits, take)
    : { instants: seeKeyframes(recording, model, take), memory: null };
  const { instants, memory } = seen;

  const at = (timeS: number, into: Snapshot): Snapshot => {
    const wanted = Math.max(0, Math.min(recording.steps, Math.round(timeS * STEP_HZ)));
    const from = lastBefore(instants, wanted);
    if (!whole || from.step === wanted) {
      seeInstant(model, from, into);
      return into;
    }
    const replay = resumeReplay(recording, model, from);
    replayTo(replay, wanted);
    return Object.assign(into, replay.snapshot);
  };
  const endS = recording.steps / STEP_HZ;
  return {
    recording,
    model,
    plan,
    lesson,
    limits,
    track,
    samples,
    endS,
    exact: whole,
    memory,
    scratch: newSnapshot(),
    at,
  };
};

type Take = (s: Readonly<Snapshot>, leg: LegName, band: ApproachBand) => void;

const flyAgain = (
  recording: Recording,
  model: Model,
  lesson: Lesson,
  limits: ToleranceSet,
  take: Take,
): { readonly instants: readonly Instant[]; readonly memory: LessonMemory } => {
  const replay = beginReplay(recording, model, [createLessonFold(lesson, limits) as Fold<unknown>]);
  const memory = replay.foldMemories[0] as LessonMemory;
  const instants: Instant[] = [];
  for (let at = 0; at <= recording.steps; at += 1) {
    replayTo(replay, at);
    if (at % STEP_HZ === 0) instants.push(instantOf(replay));
    if (at % SAMPLE_STEPS === 0 || at === recording.steps)
      take(replay.snapshot, memory.legs.leg, bandNow(memory, lesson, replay.snapshot, limits));
  }
  return { instants, memory };
};

const seeKeyframes = (recording: Recording, model: Model, take: Take): readonly Instant[] => {
  const seen = newSnapshot();
  for (const keyframe of recording.keyframes) {
    seeInstant(model, keyframe, seen);
    take(seen, 'line-up', 'plain');
  }
  return recording.keyframes;
};

/** The sample at or before a time. */
export const sampleAt = ({ samples }: Replayed, timeS: number): Sample => {
  let low = 0;
  let high = samples.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((samples[middle] as Sample).timeS <= timeS) low = middle;
    else high = middle - 1;
  }
  return samples[low] as Sample;
};
