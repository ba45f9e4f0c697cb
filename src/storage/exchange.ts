import { headOf } from '../formats/attempt.ts';
import { recordedCsv, recordedGpx, recordedKml } from '../formats/flown-again.ts';
import { attemptText, LOGBOOK_TEXT, packedAttemptText } from '../formats/logbook-json.ts';
import type { AttemptRow } from '../lesson/attempts/attempt.ts';
import type { attemptsOf } from './attempts.ts';
import { type CheckFile, checkFile, type Incoming } from './check-file.ts';
import { nameOf } from './file-words.ts';
import type { Keeper } from './keeper.ts';
import type { FileOut, ImportOutcome, ImportWatch } from './logbook.ts';
import { Refusal } from './refusals.ts';

/** `lapwing-2026-01-31-0930-normal-circuit.json`: nothing but letters, digits and hyphens. */
const fileName = (row: AttemptRow, ending: string): string => {
  const when = row.when.slice(0, 16).replace('T', '-').replace(':', '');
  const what = row.exercise
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replace(/^-/, '')
    .slice(0, 40);
  return `lapwing-${when}-${what}.${ending}`;
};

const file = (name: string, type: string, parts: readonly string[]): FileOut => ({
  name,
  type,
  blob: new Blob([...parts], { type }),
});

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

const importWords = (added: number, already: number, old: number): string =>
  [
    added === 0 ? 'Nothing new' : `${plural(added, 'attempt')} added`,
    already === 0 ? '' : `${already} there already`,
    old === 0 ? '' : `${old} of another model version, shown from keyframes`,
  ]
    .filter((words) => words !== '')
    .join('; ')
    .concat('.');

/** Files out and in; fetched by those pages that offer it. */
export const exchangeOf = (
  keeper: Keeper,
  attempts: ReturnType<typeof attemptsOf>,
  check: CheckFile = checkFile(),
) => {
  /** All in one transaction; which of them were new, or null when nothing was changed. */
  const putAll = (incoming: readonly Incoming[]): Promise<AttemptRow[] | null> =>
    keeper.on(async (db) => {
      const tx = db.transaction(['attempts', 'flights', 'pilots'], 'readwrite');
      const rows = tx.objectStore('attempts');
      const put = async ({ row, packed }: Incoming): Promise<AttemptRow | null> => {
        const there = await rows.get(row.id);
        if (there !== undefined && there.deletedAt === null) return null;
        const back = there === undefined ? row : { ...there, deletedAt: null };
        await Promise.all([
          rows.put(back),
          tx.objectStore('pilots').put({ name: row.pilot }),
          there === undefined && tx.objectStore('flights').put({ id: row.id, packed }),
        ]);
        return back;
      };
      const [placed] = await Promise.all([Promise.all(incoming.map(put)), tx.done]);
      return placed.filter((row) => row !== null);
    }, null);

  const putLoose = (incoming: readonly Incoming[]): AttemptRow[] => {
    const fresh = incoming.filter(({ row }) => !keeper.loose.has(row.id));
    for (const { row, packed } of fresh) keeper.loose.set(row.id, { row, packed });
    return fresh.map(({ row }) => row);
  };

  return {
    exportJson: async (ids: readonly string[] | 'all'): Promise<FileOut> => {
      const wanted = ids === 'all' ? (await attempts.list()).map((row) => row.id) : ids;
      const [only] = wanted;
      if (only === undefined) throw new Refusal('logbook: there must be an attempt to save, found none');
      const { before, between, after } = LOGBOOK_TEXT;
      if (wanted.length === 1) {
        const { row, attempt } = await attempts.open(only);
        const text = attemptText(attempt, attempt);
        return file(fileName(row, 'json'), 'application/json', [before, text, after]);
      }
      const parts: string[] = [before];
      for (const id of wanted) {
        const { row, packed } = await attempts.packedOf(id);
        if (parts.length > 1) parts.push(between);
        parts.push(packedAttemptText(headOf(row), packed));
      }
      parts.push(after);
      const today = new Date().toISOString().slice(0, 10);
      return file(`lapwing-logbook-${today}.json`, 'application/json', parts);
    },
    exportCsv: async (id: string): Promise<FileOut> => {
      const { row, attempt } = await attempts.open(id);
      return file(fileName(row, 'csv'), 'text/csv', [recordedCsv(attempt.recording)]);
    },
    exportGpx: async (id: string): Promise<FileOut> => {
      const { row, attempt } = await attempts.open(id);
      return file(fileName(row, 'gpx'), 'application/gpx+xml', [recordedGpx(attempt.recording)]);
    },
    exportKml: async (id: string): Promise<FileOut> => {
      const { row, attempt } = await attempts.open(id);
      const text = recordedKml(attempt.recording, attempt.result);
      return file(fileName(row, 'kml'), 'application/vnd.google-earth.kml+xml', [text]);
    },
    importFile: async (from: File, watch: ImportWatch = {}): Promise<ImportOutcome> => {
      const name = nameOf(from);
      try {
        const incoming = await check(from, watch.onProgress, watch.cancelled);
        watch.onChecked?.();
        const added = keeper.kept ? await putAll(incoming) : putLoose(incoming);
        if (added === null) {
          return {
            ok: false,
            why: `${name}: must fit into the browser's storage, did not; nothing was changed`,
          };
        }
        keeper.changed();
        const old = incoming.filter((one) => !one.exact).length;
        const already = incoming.length - added.length;
        return { ok: true, added, already, says: importWords(added.length, already, old) };
      } catch (error) {
        return { ok: false, why: error instanceof Error ? error.message : `${name}: could not be read` };
      }
    },
  };
};
