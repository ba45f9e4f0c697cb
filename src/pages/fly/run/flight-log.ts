import { ownAircraft } from '../../../flight/flight.ts';
import { COACH_WORDS, type HelpUsed, type Parent, PICTURES } from '../../../lesson/attempts/attempt.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import type { AttemptBody, FlightJournal } from '../../../storage/logbook.ts';
import { pilotNow, theLogbook } from '../../logbook-here.ts';
import { useStore } from '../../store.ts';
import { marksOf } from './marks-of.ts';
import type { FlightLog, ReadyFlight } from './ready.ts';
import { loadResults } from './results.ts';

/** With what a flight begins that has begun elsewhere. */
export interface BegunElsewhere {
  readonly parent?: Parent | null;
  readonly help?: HelpUsed;
  readonly journal?: FlightJournal;
}

/** Steps before a flight is worth a journal. */
const WORTH_STEPS = STEP_HZ;

const NO_COUNTS = { freezes: 0, stepsBack: 0, planLooks: 0, watchedS: 0 };

/** The picture that showed more. */
const moreShown = (a: HelpUsed['picture'], b: HelpUsed['picture']): HelpUsed['picture'] =>
  PICTURES.indexOf(a) < PICTURES.indexOf(b) ? a : b;

/** The coach that said more. */
const louder = (a: HelpUsed['coach'], b: HelpUsed['coach']): HelpUsed['coach'] =>
  COACH_WORDS.indexOf(a) < COACH_WORDS.indexOf(b) ? a : b;

export const createFlightLog = (flight: ReadyFlight, begun: BegunElsewhere = {}): FlightLog => {
  const settingsNow = () => useStore.getState().settings;
  let parent = begun.parent ?? null;
  let counts = begun.help ?? NO_COUNTS;
  let picture = begun.help?.picture ?? null;
  let coach = begun.help?.coach ?? null;
  let held = begun.help?.handHolds ?? false;
  let freezes = 0;
  let watchedSteps = 0;
  let lastSteps = flight.session.step;
  let journal: FlightJournal | null = begun.journal ?? null;
  let asked: Promise<FlightJournal> | null = null;
  let over = false;
  let attempt: string | null = null;

  const recordingNow = () => ownAircraft(flight).recorder.recording;
  const help = (): HelpUsed => {
    const { stepsBack, planLooks } = useStore.getState();
    const { handStyle, picture: shown, coach: loud } = settingsNow();
    return {
      coach: louder(coach ?? loud, loud),
      picture: moreShown(picture ?? shown, shown),
      rudderAssist: flight.scenario.assists.rudder,
      handHolds: held || handStyle === 'hold',
      freezes: counts.freezes + freezes,
      stepsBack: counts.stepsBack + stepsBack,
      planLooks: counts.planLooks + planLooks,
      watchedS: Math.round(counts.watchedS + watchedSteps / STEP_HZ),
    };
  };
  const aside = () => ({ help: help(), marks: marksOf(recordingNow()) });
  const openJournal = (): Promise<FlightJournal> => {
    asked ??= theLogbook().then(async (book) => {
      journal = await book.beginJournal(await pilotNow(book), parent, aside);
      return journal;
    });
    return asked;
  };
  /** What the page has counted becomes part of this flight's own count. */
  const takeIn = () => {
    counts = help();
    freezes = 0;
    watchedSteps = 0;
  };
  const bodyNow = async (): Promise<AttemptBody> => {
    const { resultHere } = await loadResults();
    const result = resultHere(flight, help().watchedS);
    const recording = recordingNow();
    return { recording, marks: marksOf(recording), result, judgedBy: flight.judgedBy };
  };

  return {
    note: () => {
      const { step } = flight.session;
      if (step === lastSteps) return;
      const { pilot, settings } = useStore.getState();
      if (pilot === 'model' && step > lastSteps) watchedSteps += step - lastSteps;
      lastSteps = step;
      if (picture !== settings.picture) picture = moreShown(picture ?? settings.picture, settings.picture);
      held ||= settings.handStyle === 'hold';
      if (coach !== settings.coach) coach = louder(coach ?? settings.coach, settings.coach);
      if (over) return;
      if (journal !== null) journal.note(recordingNow());
      else if (step > WORTH_STEPS) void openJournal();
    },
    froze: (byUser) => {
      if (byUser) freezes += 1;
      if (journal !== null && !over) void journal.flush(recordingNow());
    },
    help,
    ended: async () => {
      if (over) return;
      over = true;
      const used = help();
      const body = await bodyNow();
      const book = await theLogbook();
      const { id, pilot, when } = journal ?? (await openJournal());
      const kept = journal;
      await book.keep({ id, pilot, when, help: used, notes: '', ownView: [], parent }, body);
      attempt = id;
      await kept?.end();
      useStore.setState({ attempt: id });
    },
    branches: (atS) => {
      if (!over) return;
      takeIn();
      counts = { ...counts, stepsBack: counts.stepsBack + 1 };
      parent = attempt === null ? null : { id: attempt, atS };
      over = false;
      journal = null;
      asked = null;
    },
    left: () => {
      takeIn();
      if (journal !== null && !over) void journal.flush(recordingNow());
    },
    dropped: () => {
      if (over) return;
      over = true;
      void (journal?.end() ?? asked?.then((late) => late.end()));
    },
  };
};

/** The log of a flight; it goes with it from page to page. */
export const logOf = (flight: ReadyFlight, begun: BegunElsewhere = {}): FlightLog => {
  flight.log ??= createFlightLog(flight, begun);
  return flight.log;
};
