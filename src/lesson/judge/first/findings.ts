import { WENT_ON } from '../../watch/go-around.ts';
import { CAUSE_WORDS } from '../cause-words.ts';
import { besideNumber, itemSentence } from '../item-words.ts';
import { wordsFor } from '../judge.ts';
import type { CauseReport, GateReport, GoAroundReport, ItemReport, Report, SafetyReport } from '../report.ts';
import { ruleOf } from '../rules.ts';
import { type Ended, endingWords } from './ending-words.ts';
import type { Finding } from './finding.ts';
import { placeOf, rankOf } from './order.ts';
import { STOP_WORDS, type StopWords } from './safety-words.ts';

/** What of a result is looked at. */
export type Looked = Ended & Pick<Report, 'safety' | 'go_arounds' | 'causes' | 'gates'>;

type Told = 'needs' | 'covers' | 'strain';
type Own = Omit<Finding, 'rank' | 'place' | Told> & Partial<Pick<Finding, Told>>;

const finding = (place: number, own: Own): Finding => ({
  needs: [],
  covers: [],
  strain: 0,
  ...own,
  place,
  rank: rankOf(own.key),
});

const NEVER_WRONG = 'A go-around is never wrong: power, attitude, configuration.';

const endingFinding = (result: Looked, circuit: number): Finding | null => {
  const words = endingWords(result);
  return words && finding(placeOf('ended'), { ...words, harm: 'hurt', band: 'red', circuit });
};

/** What was gone on from stands with the go-around that was missed; one that was flown late is said here. */
const wentOn = (what: string, circuit: number, missed: readonly GoAroundReport[]): Finding | null =>
  missed.some(({ why }) => what.endsWith(why))
    ? null
    : finding(placeOf('went-on'), {
        key: 'went-on',
        harm: 'gate',
        band: 'red',
        circuit,
        says: `You ${what}.`,
        short: 'you went around late',
        next: NEVER_WRONG,
        exercise: 'go-around',
      });

/** A stop of which nothing more is known, as a memory of an earlier version keeps it. */
const plainWords = (what: string): StopWords => ({
  harm: 'gate',
  says: () => `${what.charAt(0).toUpperCase()}${what.slice(1)}.`,
  short: what,
  next: '',
  exercise: 'normal-circuit',
});

const stopFinding = (
  { id, what }: SafetyReport,
  circuit: number,
  missed: readonly GoAroundReport[],
): Finding | null => {
  if (id === WENT_ON) return wentOn(what, circuit, missed);
  const words = STOP_WORDS[id] ?? plainWords(what);
  return finding(placeOf(id), { ...words, key: id, says: words.says(what), band: 'red', circuit });
};

const FLARING: ReadonlySet<GoAroundReport['due']> = new Set(['first-third', 'high-bounce', 'drift']);

/** A go-around that was due and not flown; in the hold-off its rows say more. */
const missedFinding = (missed: GoAroundReport, gates: readonly GateReport[]): Finding => {
  const { circuit, due, gate_ft, why } = missed;
  const gate = gates.find((g) => g.circuit === circuit && g.height_ft === gate_ft);
  const flaring = FLARING.has(due);
  return finding(placeOf(flaring ? 'went-on-flaring' : 'went-on'), {
    key: flaring ? 'went-on-flaring' : 'went-on',
    harm: flaring ? 'outside' : 'gate',
    band: 'red',
    circuit,
    says: `You went on when a go-around was due: ${why}.`,
    short: `you went on when a go-around was due${gate_ft === null ? '' : ` at ${gate_ft} ft`}`,
    next: NEVER_WRONG,
    exercise: 'go-around',
    needs: gate?.faults ?? (due === null ? [] : [due]),
  });
};

const causeFinding = ({ id, band, circuit, amount }: CauseReport): Finding => {
  const words = CAUSE_WORDS[id];
  return finding(placeOf(id), {
    key: id,
    harm: id === 'turned-back' ? 'hurt' : band === 'red' ? 'outside' : 'untidy',
    band,
    circuit,
    says: words.says(amount),
    short: words.short(amount),
    next: words.next,
    exercise: words.trainedBy,
    covers: words.covers,
  });
};

/** A gate that was passed unstabilised, where no going around was missed: the flight was over before. */
const gateFinding = ({ id, circuit, band }: ItemReport, result: Looked): Finding | null => {
  const gate = result.gates.find((g) => g.circuit === circuit && `gate-${g.height_ft}` === id);
  const missed = result.go_arounds.some((g) => g.gate_ft === gate?.height_ft && g.circuit === circuit);
  if (band !== 'red' || gate === undefined || missed) return null;
  return finding(placeOf('went-on'), {
    key: 'went-on',
    harm: 'gate',
    band,
    circuit,
    says: `You were not stabilised at ${gate.height_ft} ft: ${gate.why.join('; ')}.`,
    short: `you were not stabilised at ${gate.height_ft} ft`,
    next: NEVER_WRONG,
    exercise: 'go-around',
    needs: gate.faults,
  });
};

/** Beyond the edge, in shares of what is allowed on that side. */
const strainOf = ({ value, target, low, high }: ItemReport): number => {
  if (value === null || target === null) return 0;
  const edge = low !== null && value < low ? low : high;
  return edge === null || edge === target ? 0 : Math.abs((value - edge) / (edge - target));
};

const wasToldOf = ({ go_arounds, safety }: Looked, circuit: number): boolean =>
  go_arounds.some((g) => g.at_s === null && g.circuit === circuit) || safety.some(({ id }) => id === WENT_ON);

const itemFinding = (item: ItemReport, result: Looked): Finding | null => {
  const { id, band, value, low, circuit, leg } = item;
  if (band !== 'red' && band !== 'amber') return null;
  // What was missed has its own finding
  if (id === 'go-around' && wasToldOf(result, circuit)) return null;
  if (id.startsWith('gate-')) return gateFinding(item, result);
  const rule = ruleOf(id);
  const side = low !== null && value !== null && value < low ? 'low' : 'high';
  const spoken = rule?.spoken?.[side];
  const number = besideNumber(item);
  const clause = spoken === undefined ? '' : `${spoken.charAt(0).toLowerCase()}${spoken.slice(1)}`;
  return finding(placeOf(id, leg), {
    key: `${id}:${side}`,
    harm: band === 'amber' ? 'untidy' : rule?.besideFlying === true ? 'beside' : 'outside',
    band,
    circuit,
    says: spoken === undefined ? itemSentence(item) : `${spoken}${number === '' ? '' : `: ${number}`}.`,
    short: clause === '' || number === '' ? clause : `${clause} (${number})`,
    strain: strainOf(item),
    next: wordsFor(item),
    exercise: rule?.trainedBy ?? 'normal-circuit',
  });
};

/** How far from a gate a safety stop still belongs to its approach. */
const NEAR_GATE_S = 60; // our choice: an approach lasts no longer

/** Everything there is to speak of, in no order. */
export const findingsOf = (result: Looked): readonly Finding[] => {
  const last = Math.max(1, ...result.items.map(({ circuit }) => circuit));
  const circuitAt = (atS: number): number =>
    result.gates.find((gate) => Math.abs(gate.at_s - atS) < NEAR_GATE_S)?.circuit ?? last;
  const missed = result.go_arounds.filter(({ at_s }) => at_s === null);
  return [
    endingFinding(result, last),
    ...result.safety.map((stop) => stopFinding(stop, circuitAt(stop.at_s), missed)),
    ...missed.map((each) => missedFinding(each, result.gates)),
    ...result.causes.map(causeFinding),
    ...result.items.map((item) => itemFinding(item, result)),
  ].filter((found) => found !== null);
};
