// A page with nothing but the logbook on it, for tests that drive it by hand.
import curlewSands from '../../../../assets/aerodromes/curlew-sands.json';
import sandpiper from '../../../../assets/aeroplanes/sandpiper.json';
import { parseAerodrome } from '../../../../src/aerodrome/parse.ts';
import { parseAeroplane } from '../../../../src/aeroplane/parse.ts';
import { EMPTY_REPORT } from '../../../../src/lesson/judge/report.ts';
import { forkSession } from '../../../../src/session/fork.ts';
import { firstDifference } from '../../../../src/session/replay.ts';
import { createScript } from '../../../../src/session/script.ts';
import { createSession, type Session, tick } from '../../../../src/session/session.ts';
import { MODEL_VERSION, type Scenario } from '../../../../src/simulation/scenario.ts';
import { MIGRATIONS } from '../../../../src/storage/database.ts';
import {
  type AttemptBody,
  type AttemptHead,
  type FlightAside,
  type FlightJournal,
  type Logbook,
  openLogbook,
} from '../../../../src/storage/logbook.ts';

const scenario: Scenario = {
  modelVersion: MODEL_VERSION,
  exercise: 'normal-circuit',
  aeroplane: parseAeroplane(sandpiper, 'sandpiper.json'),
  aerodrome: parseAerodrome(curlewSands, 'curlew-sands.json'),
  runway: '22',
  weather: {
    windFromDegM: 250,
    windKt: 12,
    gustKt: 20,
    turbulence: 'light',
    temperatureC: 15,
    dewPointC: null,
    qnhHpa: 1013.25,
  },
  start: {
    at: {
      east_m: -3000,
      north_m: 0,
      height_ft: 1000,
      heading_deg: 40,
      ias_kt: 80,
      flap_deg: 0,
      gear: 'down',
      bank_deg: 0,
      flight_path_deg: 0,
    },
    trimmed: true,
    leg: null,
  },
  seed: 7,
  assists: { rudder: true },
  failures: [],
  circuits: 1,
};

const aside: FlightAside = {
  help: {
    coach: 'silent',
    picture: 'cockpit',
    rudderAssist: true,
    handHolds: true,
    freezes: 0,
    stepsBack: 0,
    planLooks: 0,
    watchedS: 0,
  },
  marks: [],
};

const headOf = (id: string): AttemptHead => ({
  id,
  pilot: 'Wren',
  when: '2026-01-31T09:30:00.000Z',
  help: aside.help,
  notes: '',
  ownView: [],
  parent: null,
});

const begin = (): Session => createSession([{ scenario, source: createScript([]), folds: [] }]);
const recordingOf = (session: Session) => session.aircraft[0]!.recorder.recording;

const bodyOf = (session: Session): AttemptBody => ({
  recording: recordingOf(session),
  marks: [],
  judgedBy: null,
  result: {
    outcome: 'time-up',
    why: 'Long enough.',
    flight_s: session.step / 60,
    ...EMPTY_REPORT,
  },
});

const told: string[] = [];
let logbook: Logbook;
let journal: FlightJournal | null = null;
let session = begin();

const desk = {
  told,
  openBook: async (versions = 0) => {
    const more = Array.from({ length: versions }, () => () => {});
    logbook = await openLogbook({
      tell: (sentence) => told.push(sentence),
      migrations: [...MIGRATIONS, ...more],
    });
    return logbook.kept;
  },
  keep: async (id: string, seconds: number) => {
    const flight = begin();
    while (flight.step < seconds * 60) tick(flight);
    return logbook.keep(headOf(id), bodyOf(flight));
  },
  ids: async () => (await logbook.list()).map((row) => row.id),
  remove: (ids: string[]) => logbook.remove(ids),
  purge: (ids: string[]) => logbook.purge(ids),
  flownAgain: async (id: string) => firstDifference((await logbook.open(id)).attempt.recording),
  exported: async (ids: string[] | 'all') => (await logbook.exportJson(ids)).blob.text(),
  imported: async (text: string) => logbook.importFile(new File([text], 'x.json')),
  nextChange: () =>
    new Promise<void>((resolve) => {
      const stop = logbook.onChange(() => {
        stop();
        resolve();
      });
    }),
  /** Flies at the rate of the clock from now on, with the journal open. */
  fly: async () => {
    journal = await logbook.beginJournal('Wren', null, () => aside);
    const fromMs = performance.now() - (session.step / 60) * 1000;
    const frame = () => {
      while (session.step < ((performance.now() - fromMs) / 1000) * 60) tick(session);
      journal?.note(recordingOf(session));
    };
    setInterval(frame, 16);
    return journal.id;
  },
  stepNow: () => session.step,
  unfinished: () => logbook.unfinished(),
  takeUp: async (id: string) => {
    const taken = await logbook.takeUp(id, (before) => before);
    if (taken === null) return null;
    const { recording } = taken;
    session = forkSession([{ recording, source: createScript([]), folds: [] }], recording.steps);
    journal = taken.journal;
    return { steps: recording.steps, difference: firstDifference(recording) };
  },
  /** Flies on to a step and gives the state there. */
  stateAt: (step: number) => {
    while (session.step < step) tick(session);
    return [...session.aircraft[0]!.state];
  },
  freshStateAt: (step: number) => {
    const fresh = begin();
    while (fresh.step < step) tick(fresh);
    return [...fresh.aircraft[0]!.state];
  },
};

export type Desk = typeof desk;
declare global {
  interface Window {
    desk: Desk;
  }
}
window.desk = desk;
