import { sameModel } from '../formats/scenario-json.ts';
import type { Parent } from '../lesson/attempts/attempt.ts';
import { KEYFRAME_S, KEYFRAME_STEPS, RECORDING_VERSION, type Recording } from '../session/recording.ts';
import type { Claims, Release } from './claims.ts';
import type { FlightAside, FlightHead, FlightState } from './flight-under-way.ts';
import { type JournalPart, noteWritten, nothingWritten, partSince, recordingFrom } from './journal.ts';
import type { Keeper } from './keeper.ts';
import { newId } from './new-id.ts';

const SECOND_STEPS = KEYFRAME_STEPS / KEYFRAME_S;
/** After a write that failed: not again for so long. */
const PAUSE_STEPS = 15 * SECOND_STEPS;
/** Unfinished flights older than this are no longer offered. */
const FORGET_MS = 30 * 24 * 3600 * 1000;

/** Keeps a flight under way from second to second. */
export interface FlightJournal {
  /** The id that its attempt will have. */
  readonly id: string;
  readonly pilot: string;
  readonly when: string;
  readonly parent: Parent | null;
  /** Call it every frame: it writes when a second has been flown since it last did, and never waits. */
  note(recording: Recording): void;
  /** Writes what there is: at a freeze, when the page is hidden. */
  flush(recording: Recording): Promise<void>;
  /** The flight is over. What is not kept as an attempt is gone. */
  end(): Promise<void>;
}

/** A flight whose tab was closed. */
export interface UnfinishedFlight {
  readonly id: string;
  readonly pilot: string;
  readonly when: string;
  readonly exercise: string;
  readonly aeroplane: string;
  readonly aerodrome: string;
  readonly runway: string;
  readonly flightS: number;
  /** False: the model has changed since; it can be looked at, not flown on. */
  readonly goesOn: boolean;
}

/** A flight gone on with: stand it at the recording's last step and fly. */
export interface FlightTakenUp {
  readonly recording: Recording;
  readonly aside: FlightAside;
  readonly journal: FlightJournal;
}

const partsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity]);

const readable = (head: FlightHead): boolean =>
  head.version === RECORDING_VERSION && sameModel(head.scenario);

/** Flights under way: written each second, offered again when their tab was closed. */
export const flightsUnderWay = (keeper: Keeper, claims: Claims) => {
  const forget = (id: string): Promise<void> =>
    keeper.on(async (db) => {
      const tx = db.transaction(['underWay', 'asides', 'journal'], 'readwrite');
      await Promise.all([
        tx.objectStore('underWay').delete(id),
        tx.objectStore('asides').delete(id),
        tx.objectStore('journal').delete(partsOf(id)),
        tx.done,
      ]);
    }, undefined);

  const write = (head: FlightHead, state: FlightState, part: JournalPart): Promise<boolean> =>
    keeper.on(async (db) => {
      const tx = db.transaction(['underWay', 'asides', 'journal'], 'readwrite', { durability: 'relaxed' });
      const journal = tx.objectStore('journal');
      const anew =
        part.part === 0 ? [journal.delete(partsOf(part.flight)), tx.objectStore('underWay').put(head)] : [];
      await Promise.all([...anew, journal.put(part), tx.objectStore('asides').put(state), tx.done]);
      return true;
    }, false);

  const journalOf = (
    begun: Omit<FlightHead, 'version' | 'modelVersion' | 'scenario'>,
    asideNow: () => FlightAside,
    release: Release,
  ): FlightJournal => {
    const { id, pilot, when, parent } = begun;
    const written = nothingWritten();
    let pausedUntil = 0;
    let ended = false;
    let going: Promise<void> | null = null;

    const writeNow = async (recording: Recording): Promise<void> => {
      const part = partSince(id, recording, written);
      const { version, modelVersion, scenario, steps } = recording;
      const head = { ...begun, version, modelVersion, scenario };
      const state = { id, steps, ...asideNow() };
      // Noted at once: what is flown while this is being written belongs to the next part.
      noteWritten(written, recording, part);
      if (await write(head, state, part)) return;
      written.recording = null;
      pausedUntil = steps + PAUSE_STEPS;
    };
    const begin = (recording: Recording): Promise<void> => {
      const now = writeNow(recording).finally(() => {
        going = null;
      });
      going = now;
      return now;
    };
    return {
      id,
      pilot,
      when,
      parent,
      note: (recording) => {
        if (going !== null || ended || !keeper.kept) return;
        const { steps } = recording;
        const setBack = recording !== written.recording;
        if (!setBack && steps - written.steps < SECOND_STEPS) return;
        if (pausedUntil > 0 && steps < pausedUntil && steps > pausedUntil - PAUSE_STEPS) return;
        void begin(recording);
      },
      flush: async (recording) => {
        if (going !== null) await going;
        if (ended || !keeper.kept) return;
        if (recording === written.recording && recording.steps === written.steps) return;
        await begin(recording);
      },
      end: async () => {
        ended = true;
        if (going !== null) await going;
        await forget(id);
        release();
      },
    };
  };

  return {
    beginJournal: async (
      pilot: string,
      parent: Parent | null,
      asideNow: () => FlightAside,
    ): Promise<FlightJournal> => {
      const id = newId();
      const release = (await claims.claim(id)) ?? (() => {});
      return journalOf({ id, pilot, when: new Date().toISOString(), parent }, asideNow, release);
    },
    unfinished: async (): Promise<readonly UnfinishedFlight[]> => {
      const all = await keeper.on(async (db) => {
        const tx = db.transaction(['underWay', 'asides']);
        const [heads, states] = await Promise.all([
          tx.objectStore('underWay').getAll(),
          tx.objectStore('asides').getAll(),
          tx.done,
        ]);
        return { heads, steps: new Map(states.map((state) => [state.id, state.steps])) };
      }, null);
      const found: UnfinishedFlight[] = [];
      for (const head of all?.heads ?? []) {
        if (!(await claims.isFree(head.id))) continue;
        if (Date.now() - Date.parse(head.when) > FORGET_MS) {
          await forget(head.id);
          continue;
        }
        const { id, pilot, when, scenario } = head;
        found.push({
          id,
          pilot,
          when,
          exercise: scenario.exercise,
          aeroplane: scenario.aeroplane.title,
          aerodrome: scenario.aerodrome.title,
          runway: scenario.runway,
          flightS: (all?.steps.get(id) ?? 0) / SECOND_STEPS,
          goesOn: readable(head),
        });
      }
      return found.sort((a, b) => (a.when < b.when ? 1 : -1));
    },
    takeUp: async (
      id: string,
      asideNow: (before: FlightAside) => FlightAside,
    ): Promise<FlightTakenUp | null> => {
      const release = await claims.claim(id);
      if (release === null) return null;
      const found = await keeper.on(async (db) => {
        const tx = db.transaction(['underWay', 'asides', 'journal']);
        const [head, state, parts] = await Promise.all([
          tx.objectStore('underWay').get(id),
          tx.objectStore('asides').get(id),
          tx.objectStore('journal').getAll(partsOf(id)),
          tx.done,
        ]);
        return head === undefined || state === undefined ? null : { head, state, parts };
      }, null);
      const recording =
        found === null || !readable(found.head) ? null : recordingFrom(found.head, found.parts);
      if (found === null || recording === null) {
        release();
        return null;
      }
      const { pilot, when, parent } = found.head;
      const { help, marks } = found.state;
      const aside = { help, marks };
      const journal = journalOf({ id, pilot, when, parent }, () => asideNow(aside), release);
      return { recording, aside, journal };
    },
    discard: async (id: string): Promise<void> => {
      const release = await claims.claim(id);
      if (release === null) return;
      await forget(id);
      release();
    },
  };
};
