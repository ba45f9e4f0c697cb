import { ownAircraft } from '../../../flight/flight.ts';
import { COACH_WORDS, type HelpUsed, type Parent, PICTURES } from '../../../lesson/attempts/attempt.ts';
import { isDemonstration } from '../../../session/flown-by.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import type { AttemptBody, FlightJournal } from '../../../storage/logbook.ts';
import { pilotNow, theLogbook } from '../../logbook-here.ts';
import { alreadyTold, PartMissing } from '../../parts/fetch-part.ts';
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

/** A flight that has ended. */
interface Ended {
  readonly parent: Parent | null;
  judge(): Promise<AttemptBody>;
}

/** Steps before a flight is worth a journal. */
const WORTH_STEPS = STEP_HZ;

/** So long after the logbook did not come. */
const PAUSE_STEPS = 15 * STEP_HZ;

const NO_COUNTS = { freezes: 0, stepsBack: 0, planLooks: 0, watchedS: 0 };

/** The picture that showed more. */
const moreShown = (a: HelpUsed['picture'], b: HelpUsed['picture']): HelpUsed['picture'] =>
  PICTURES.indexOf(a) < PICTURES.indexOf(b) ? a : b;

/** The coach that said more. */
const louder = (a: HelpUsed['coach'], b: HelpUsed['coach']): HelpUsed['coach'] =>
  COACH_WORDS.indexOf(a) < COACH_WORDS.indexOf(b) ? a : b;

/** The user is told why an ended flight is not in the logbook yet; resolves when it is worth another try. */
const tryLater = (error: unknown, written: boolean): Promise<void> =>
  new Promise((resolve) => {
    const why = error instanceof Error ? error.message : String(error);
    const again = () => {
      removeEventListener('online', again);
      resolve();
    };
    addEventListener('online', again);
    useStore.setState({
      missing: {
        says: written
          ? `The flight is over and stands written, but it cannot be judged yet. ${why} It is offered again, too, when the page is next opened.`
          : `The flight is over, but it is not in the logbook yet: leave this page open until it is. ${why}`,
        // What is written nowhere would be lost by it
        reload: written && error instanceof PartMissing && error.reload,
        again,
      },
    });
  });

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
  /** After the logbook did not come. */
  let noJournalBefore = 0;
  /** Counts the ways on that were flown, so that a late answer finds its own flight or none. */
  let way = 0;
  /** Another flight is shown by now. */
  let left = false;

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
    const flown = way;
    asked ??= theLogbook()
      .then(async (book) => {
        const begun = await book.beginJournal(await pilotNow(book), parent, aside);
        if (flown === way) journal = begun;
        return begun;
      })
      .catch((error: unknown) => {
        if (flown === way) asked = null;
        noJournalBefore = flight.session.step + PAUSE_STEPS;
        throw error;
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

  /**
   * First the flight stands written to its end; then it becomes an attempt. One that was flown on from meanwhile is
   * kept all the same, under an id of its own.
   */
  const keepIt = async (used: HelpUsed, flown: number, ended: Ended): Promise<void> => {
    const book = await theLogbook();
    const mine =
      flown === way
        ? (journal ?? (await openJournal()))
        : await book.beginJournal(await pilotNow(book), ended.parent, aside);
    if (flown === way) await mine.flush(recordingNow());
    const body = await ended.judge();
    const { id, pilot, when } = mine;
    await book.keep({ id, pilot, when, help: used, notes: '', ownView: [], parent: mine.parent }, body);
    await mine.end();
    if (flown !== way) return;
    attempt = id;
    if (!left) useStore.setState({ attempt: id });
  };

  /** The flight that has just ended goes into the logbook, now or when that can be had. */
  const keepEnded = async (): Promise<void> => {
    const used = help();
    const flown = way;
    let body: AttemptBody | null = null;
    const judge = async () => {
      body ??= await bodyNow();
      return body;
    };
    // At once, where what judges it is there: the flight may be set back before the logbook answers
    judge().catch(alreadyTold);
    const ended = { parent, judge };
    for (;;) {
      try {
        return await keepIt(used, flown, ended);
      } catch (error) {
        // Written, and flown on from: it is offered again when the page is next opened
        if (flown !== way && body === null) return;
        await tryLater(error, flown === way && journal !== null);
        if (flown !== way && body === null) return;
      }
    }
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
      // What is only watched is not written down
      else if (pilot === 'hands' && step > WORTH_STEPS && step >= noJournalBefore)
        openJournal().catch(alreadyTold);
    },
    froze: (byUser) => {
      if (byUser) freezes += 1;
      if (journal !== null && !over) void journal.flush(recordingNow());
    },
    help,
    ended: async () => {
      if (over) return;
      over = true;
      if (!isDemonstration(recordingNow())) return keepEnded();
      // Begun by hand and handed over, it is nobody's attempt either
      void (journal?.end() ?? asked?.then((late) => late.end()));
      journal = null;
      asked = null;
    },
    keepShown: async () => {
      if (over && isDemonstration(recordingNow())) await keepEnded();
    },
    branches: (atS) => {
      if (!over) return;
      takeIn();
      counts = { ...counts, stepsBack: counts.stepsBack + 1 };
      parent = attempt === null ? null : { id: attempt, atS };
      over = false;
      way += 1;
      journal = null;
      asked = null;
      noJournalBefore = 0;
    },
    left: () => {
      takeIn();
      if (journal !== null && !over) void journal.flush(recordingNow());
    },
    dropped: () => {
      left = true;
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
