import { type BriefRequest, briefOf } from '../../circuit/brief/brief.ts';
import type { Brief, LegBrief } from '../../circuit/brief/types.ts';
import type { SpeedsCard } from '../../formats/own-file.ts';
import type { Exercise } from '../../lesson/exercises/exercise.ts';
import type { AirStart, Scenario } from '../../simulation/scenario.ts';
import { exerciseFlight, exerciseOfSettings } from '../exercise-flight.ts';
import { scenarioOf } from '../fly/sheets/scenario-of-settings.ts';
import { ownPlaces } from '../own/own-places.ts';
import type { Settings } from '../settings.ts';

/** The brief of the very flight that the settings ask for. */
export interface PreparedBrief {
  readonly brief: Brief;
  readonly request: BriefRequest;
  readonly exercise: Exercise | null;
  /** Where it begins in the air; null: at the line-up. */
  readonly start: AirStart | null;
  /** The first leg that is flown. */
  readonly from: LegBrief['leg'];
  /** It begins further on than where the plan turns from that leg. */
  readonly pastTurn: boolean;
  /** Where the aeroplane is a card entered by the user. */
  readonly card: SpeedsCard | null;
  readonly ownAerodrome: boolean;
}

const LEGS: ReadonlySet<string> = new Set(['upwind', 'crosswind', 'downwind', 'base', 'final']);

const firstLeg = ({ start }: Scenario): LegBrief['leg'] => {
  if (start.at === 'line-up') return 'upwind';
  return start.leg !== null && LEGS.has(start.leg) ? (start.leg as LegBrief['leg']) : 'final';
};

/** Throws an Error sentence when the flight cannot be planned. */
export const briefOfSettings = (settings: Settings): PreparedBrief => {
  const exercise = exerciseOfSettings(settings);
  const scenario =
    exercise === null
      ? scenarioOf({ ...settings, start: 'line-up' }).scenario
      : exerciseFlight(exercise, settings);
  const { aeroplane, aerodrome, weather, runway } = scenario;
  const glide = scenario.task?.technique === 'glide';
  const request: BriefRequest = { aeroplane, aerodrome, weather, runway, glide, words: settings.callWords };
  const own = ownPlaces();
  return {
    brief: briefOf(request),
    request,
    exercise,
    start: scenario.start.at === 'line-up' ? null : scenario.start.at,
    from: firstLeg(scenario),
    pastTurn: exercise !== null && 'beyondM' in exercise.start,
    card: own.cards.find((card) => card.id === aeroplane.id) ?? null,
    ownAerodrome: own.aerodromes.some((each) => each.id === aerodrome.id),
  };
};
