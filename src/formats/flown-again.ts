import { planCircuit } from '../circuit/plan.ts';
import { lastWhere } from '../lesson/last-where.ts';
import type { Lesson } from '../lesson/lesson.ts';
import { lessonOfScenario } from '../lesson/lesson-of.ts';
import type { LessonMemory } from '../lesson/memory.ts';
import { LEG_NAMES, type LegName } from '../lesson/names.ts';
import { createLessonFold } from '../lesson/watch/lesson-fold.ts';
import { type Keyframe, keyframeBefore, type Recording } from '../session/recording.ts';
import { beginReplay, seeInstant, setHands, takeStep } from '../session/replay.ts';
import type { Fold } from '../session/source.ts';
import { type Model, prepare } from '../simulation/model.ts';
import { STEP_HZ } from '../simulation/scenario.ts';
import { newSnapshot } from '../simulation/snapshot.ts';
import type { FlownResult } from './result.ts';
import { sameModel } from './scenario-json.ts';
import { type TrackMoment, trackHeader, trackRow } from './track/csv-track.ts';
import type { TrackPoint } from './track/earth.ts';
import { gpxText } from './track/gpx.ts';
import { type KmlPin, kmlText } from './track/kml.ts';

/** The lesson of the recorded flight, or null where no circuit can be planned. */
const lessonOf = (model: Model): Lesson | null => {
  const { aeroplane, aerodrome, weather } = model.scenario;
  try {
    const plan = planCircuit(model.shape, aeroplane, aerodrome, model.runway, weather);
    // Which rows are looked at does not matter: only the legs are asked for
    return lessonOfScenario(model.scenario, model.runway, plan, null);
  } catch {
    return null;
  }
};

/**
 * Shows a recorded flight moment by moment, each `everySteps` steps and at its end, with the hands of the step
 * that begins there. The moment is one object filled anew. A flight of another model version cannot be flown
 * again: its keyframes are shown instead.
 */
const seeAgain = (recording: Recording, everySteps: number, see: (moment: TrackMoment) => void): void => {
  if (sameModel(recording.scenario)) flyAgain(recording, everySteps, see);
  else seeKeyframes(recording, see);
};

const flyAgain = (recording: Recording, everySteps: number, see: (moment: TrackMoment) => void): void => {
  const model = prepare(recording.scenario);
  const lesson = lessonOf(model);
  const folds = lesson === null ? [] : [createLessonFold(lesson) as Fold<unknown>];
  const replay = beginReplay(recording, model, folds);
  const memory = replay.foldMemories[0] as LessonMemory | undefined;
  const show = () => {
    const { snapshot, controls } = replay;
    see({ snapshot, controls, leg: memory?.legs.leg ?? '', runway: model.runway });
  };
  while (replay.step < recording.steps) {
    setHands(replay);
    if (replay.step % everySteps === 0) show();
    takeStep(replay);
  }
  show();
};

/** What the lesson had remembered as the leg, if it still says it the same way. */
const rememberedLeg = (keyframe: Keyframe): LegName | '' => {
  const memory = keyframe.foldMemories[0] as { legs?: { leg?: unknown } } | undefined;
  return LEG_NAMES.find((name) => name === memory?.legs?.leg) ?? '';
};

const seeKeyframes = (recording: Recording, see: (moment: TrackMoment) => void): void => {
  const model = prepare(recording.scenario);
  const snapshot = newSnapshot();
  for (const keyframe of recording.keyframes) {
    const { controls } = keyframe;
    seeInstant(model, keyframe, snapshot);
    const leg = rememberedLeg(keyframeBefore(recording, keyframe.step));
    see({ snapshot, controls, leg, runway: model.runway });
  }
};

/** The flight as the command line's track, ten rows a second unless said otherwise. */
export const recordedCsv = (recording: Recording, hz = 10): string => {
  const rows: string[] = [trackHeader()];
  seeAgain(recording, STEP_HZ / hz, (moment) => rows.push(trackRow(moment)));
  return rows.join('');
};

/** One point a second. */
const recordedPoints = (recording: Recording): TrackPoint[] => {
  const points: TrackPoint[] = [];
  seeAgain(recording, STEP_HZ, ({ snapshot, runway }) => {
    const altitudeM = runway.thresholdElevationM + snapshot.heightM;
    points.push({ timeS: snapshot.timeS, eastM: snapshot.eastM, northM: snapshot.northM, altitudeM });
  });
  return points;
};

const nameOf = ({ scenario }: Recording): string =>
  `${scenario.aeroplane.title}, ${scenario.aerodrome.title} ${scenario.runway}`;

export const recordedGpx = (recording: Recording): string =>
  gpxText(nameOf(recording), recordedPoints(recording));

/** With a pin at each touchdown and each gate. */
export const recordedKml = (recording: Recording, result: FlownResult): string => {
  const points = recordedPoints(recording);
  const at = (timeS: number): TrackPoint | null => lastWhere(points, (p) => p.timeS <= timeS);
  const pins: KmlPin[] = [];
  const pin = (timeS: number, name: string, text: string) => {
    const place = at(timeS);
    if (place !== null) pins.push({ ...place, timeS, name, text });
  };
  for (const g of result.gates) {
    const words = g.stabilised ? 'stabilised' : g.why.join(', ');
    pin(g.at_s, `${g.height_ft} ft`, `${g.ias_kt} kt, sinking ${g.sink_fpm} ft/min: ${words}`);
  }
  for (const t of result.touchdowns)
    pin(t.at_s, 'Touchdown', `${t.ias_kt} kt, ${t.past_threshold_m} m past the threshold`);
  return kmlText(nameOf(recording), points, pins);
};
