import { newSeenLights } from '../../../aerodrome/slope-lights.ts';
import { GATES_FT } from '../../../circuit/stabilised.ts';
import { beginFlight, type FlightAsked, resumeFlight } from '../../../flight/begin.ts';
import type { Flight } from '../../../flight/flight.ts';
import type { HelpUsed } from '../../../lesson/attempts/attempt.ts';
import type { Recording } from '../../../session/recording.ts';
import type { ControlSource } from '../../../session/source.ts';
import type { Model } from '../../../simulation/model.ts';
import type { Scenario } from '../../../simulation/scenario.ts';
import { newSnapshot } from '../../../simulation/snapshot.ts';
import type { Gate, ViewFrame } from '../../../views/frame.ts';
import { createTrail, extendTrail, type Trail } from '../../../views/trail.ts';
import { judgedByNow } from '../../tolerances.ts';
import { pilotsNow } from './pilots.ts';

/** A flight that stands ready on the page, and everything that is drawn and kept of it. */
export interface ReadyFlight extends Flight {
  readonly trail: Trail;
  readonly frame: ViewFrame;
  /** Null until somebody keeps it. */
  log: FlightLog | null;
  readonly radio: Radio;
}

/** Keeps one flight in the logbook: second by second while it goes on, whole when it is over. */
export interface FlightLog {
  /** Every frame: costs nothing while nothing was flown. */
  note(): void;
  /** The flight stands still: counted when the user asked for it. */
  froze(asked: boolean): void;
  /** How much help there was so far. */
  help(): HelpUsed;
  /** The flight is over and becomes an attempt; resolves once it is kept. A demonstration is not, until asked for. */
  ended(): Promise<void>;
  /** A demonstration that is over is kept after all; resolves once it is. */
  keepShown(): Promise<void>;
  /** From an ended flight another way on is flown: another attempt, with this one as its parent. */
  branches(atS: number): void;
  /** Another page is looked at: counts and journal are brought up to date. */
  left(): void;
  /** Nobody goes on with it. */
  dropped(): void;
}

/** What the page remembers of the calls beside what the lesson does. */
export interface Radio {
  /** Said, and on its way into the flight: the next step takes it. */
  justSaid: string;
  /** When the last call was put right. */
  correctedS: number;
}

const GATES: readonly Gate[] = GATES_FT.map((heightFt) => ({ heightFt, text: `${heightFt} ft` }));

const shown = (flight: Flight, trail: Trail): ReadyFlight => {
  const { model, plan } = flight;
  const { aeroplane, aerodrome, weather } = flight.scenario;
  const frame: ViewFrame = {
    snapshot: newSnapshot(),
    plan,
    runway: model.runway,
    aerodrome,
    aeroplane,
    lights: model.runway.lights ? newSeenLights() : null,
    leg: 'line-up',
    trail,
    forecast: [],
    lookRad: 0,
    picture: 'whiteboard',
    wind: { fromDegM: weather.windFromDegM, kt: weather.windKt, gustKt: weather.gustKt },
    planMode: 'runway-up',
    ghost: null,
    gates: GATES,
    traffic: [],
  };
  return { ...flight, trail, frame, log: null, radio: { justSaid: '', correctedS: 0 } };
};

/** What every flight of the page is begun with. Nobody else flies where the pilots have not been fetched. */
const here = (): Pick<FlightAsked, 'otherPilot' | 'judgedBy'> => ({
  otherPilot: pilotsNow()?.otherPilot ?? null,
  judgedBy: judgedByNow(),
});

/** Prepares a flight; throws an Error sentence when it cannot begin. */
export const readyFlight = (scenario: Scenario, source: FlightAsked['source'], model: Model): ReadyFlight =>
  shown(beginFlight({ ...here(), scenario, model, source }), createTrail());

/** A recorded flight where it stood at a step, ready to be flown on. */
export const readyFrom = (
  recording: Recording,
  atStep: number,
  source: ControlSource<unknown>,
  model: Model,
): ReadyFlight => {
  const trail = createTrail();
  const asked = { ...here(), model, source };
  return shown(
    resumeFlight(recording, atStep, asked, (s) => extendTrail(trail, s)),
    trail,
  );
};
