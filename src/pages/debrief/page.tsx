import { useCallback, useEffect, useMemo, useState } from 'react';
import { runwayInUse } from '../../aerodrome/runway.ts';
import { windAbove } from '../../circuit/wind-above.ts';
import { limitsOf } from '../../lesson/judge/edit-tolerances.ts';
import type { Scenario } from '../../simulation/scenario.ts';
import '../styles/print.css';
import '../styles/debrief.css';
import { flownTitle, outcomeTitle, outcomeWords } from '../../flight/outcome-words.ts';
import { helpWords } from '../../lesson/attempts/help-words.ts';
import { itemTitle, unitOf } from '../../lesson/judge/item-words.ts';
import { toleranceWords, valueWords } from '../../lesson/judge/value-words.ts';
import { leftOut } from '../../lesson/procedures/left-out.ts';
import { STEP_HZ } from '../../simulation/scenario.ts';
import type { FlownResult, OpenedAttempt } from '../../storage/logbook.ts';
import type { RootResult } from '../../study/root/result.ts';
import type { TrailPiece } from '../../study/trail.ts';
import { clockText } from '../../units/format.ts';
import { openStudy, type Study } from '../../workers/ask-study.ts';
import { windWords } from '../fly/bar/headline.ts';
import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { handOver } from '../hand-over.ts';
import { pilotNow, theLogbook } from '../logbook-here.ts';
import { goTo, useRouteDetail } from '../route.ts';
import { Items } from '../shown/judged-items.tsx';
import { dayText } from '../shown/when.ts';
import { useStore } from '../store.ts';
import { flyAgain, trainAfter } from '../train.ts';
import { AtCursor } from './at-cursor.tsx';
import { type Against, Compare, useSecond } from './compare.tsx';
import { createCursor } from './cursor.ts';
import { asksOwnView, debriefWords } from './first-words.ts';
import { asFlown, OwnView, OwnViewAgain } from './own-view.tsx';
import { savePicture } from './picture.ts';
import { PlanDrawing } from './plan-drawing.tsx';
import { Player } from './player.tsx';
import { Plots } from './plots.tsx';
import { ProfileDrawing } from './profile-drawing.tsx';
import { layOut, type Replayed } from './replayed.ts';
import { RootPanel, type RootSearch, useRoot } from './root-panel.tsx';
import { coloured } from './study-here.ts';

const titleOf = ({ row }: OpenedAttempt): string =>
  `${flownTitle(outcomeTitle(row.exercise), row.exercise, row.from)} · ${row.aerodrome} · runway ${row.runway}`;

const aloft = ({ weather, aerodrome, runway }: Scenario): string =>
  windAbove(weather, runwayInUse(aerodrome, runway), aerodrome).words;

const underOf = ({ row, attempt }: OpenedAttempt): string =>
  [
    row.pilot,
    dayText(row.when),
    row.aeroplane,
    windWords(attempt.recording.scenario.weather),
    aloft(attempt.recording.scenario),
    `${outcomeWords(row.outcome)} after ${clockText(row.flightS)}`,
  ].join(' · ');

const SHOWN =
  'A demonstration by the model pilot: to be watched and stopped anywhere, with nobody’s verdict.';

const firstOf = (opened: OpenedAttempt, root: RootResult | null): string => {
  if (opened.row.demonstration === true) return SHOWN;
  const { first, after } = debriefWords(opened.attempt.result, root);
  return [first, ...after.slice(0, 1)].join(' ');
};

const Doors = ({ opened, search }: { readonly opened: OpenedAttempt; readonly search: RootSearch }) => {
  const save = () => {
    const page = document.querySelector<HTMLElement>('.debrief');
    if (!page) return;
    void savePicture(`lapwing-${opened.row.when.slice(0, 10)}-${opened.row.exercise}.png`, page, {
      title: titleOf(opened),
      under: underOf(opened),
      first: firstOf(opened, search.result),
      lines: opened.attempt.result.items
        .filter((item) => item.value !== null)
        .map((item) => ({
          words: `${itemTitle(item)}: ${valueWords(item.value, unitOf(item))} (${toleranceWords(item.target, item.low, item.high, unitOf(item))})`,
          band: item.band,
        })),
      foot: CAUTION,
    });
  };
  return (
    <div className="debrief-doors no-print">
      <button type="button" onClick={() => window.print()}>
        print
      </button>
      <button type="button" onClick={save}>
        save as a picture
      </button>
      <button type="button" onClick={() => flyAgain(opened.attempt.recording.scenario)}>
        fly it again
      </button>
    </div>
  );
};

/** Items and calls that were left out, by name. */
const leftOutOf = ({ memory, lesson }: Replayed, { items }: FlownResult): readonly string[] =>
  memory === null ? [] : leftOut(memory, lesson, items);

/** Everything there is to be seen of one flight. */
const Flight = ({ opened, laid }: { readonly opened: OpenedAttempt; readonly laid: Replayed }) => {
  const { row, attempt } = opened;
  const { result, marks } = attempt;
  const [ownView, setOwnView] = useState<readonly string[] | null>(
    row.ownView.length > 0 || row.demonstration === true || !asksOwnView(result) ? row.ownView : null,
  );
  const [trail, setTrail] = useState<readonly TrailPiece[]>([]);
  const [against, setAgainst] = useState<Against>(row.parent?.id ?? '');
  const [study, setStudy] = useState<Study | null>(null);
  useEffect(() => {
    const opened = openStudy();
    setStudy(opened);
    return () => opened.close();
  }, []);
  const onTrail = useCallback((pieces: readonly TrailPiece[]) => setTrail(pieces), []);
  const search = useRoot(laid, study, onTrail);
  const root = search.result?.branch ?? null;
  const { second, says } = useSecond(laid, against, study, root, row.parent?.id ?? null);
  const replayed = useMemo(() => coloured(laid, trail), [laid, trail]);
  const replays = useMemo(() => (second ? [replayed, second] : [replayed]), [replayed, second]);
  const endS = Math.max(...replays.map((each) => each.endS));
  const cursor = useMemo(() => createCursor(endS, 0), [endS]);
  useEffect(() => {
    const at = result.gates[0]?.at_s ?? laid.endS;
    cursor.set(row.parent?.atS ?? at);
  }, [cursor, result, laid, row]);

  const takeOver = (timeS: number) => {
    const atStep = Math.min(laid.recording.steps, Math.round(timeS * STEP_HZ));
    const parent = { id: row.id, atS: atStep / STEP_HZ };
    const help = { ...row.help, stepsBack: row.help.stepsBack + 1 };
    handOver({ kind: 'branch', recording: laid.recording, atStep, parent, help });
    goTo('fly');
  };
  if (ownView === null) {
    return (
      <OwnView
        onDone={(answers) => {
          setOwnView(answers);
          if (answers.length > 0) void theLogbook().then((book) => book.writeOwnView(row.id, answers));
        }}
      />
    );
  }
  return (
    <>
      <Doors opened={opened} search={search} />
      {opened.says ? <p className="caution">{opened.says}</p> : null}
      {(row.theirsFromS ?? 0) > 0 ? (
        <p>
          The model pilot flew until {clockText(row.theirsFromS ?? 0)}; from there on it was the pilot’s own,
          and only that is looked at.
        </p>
      ) : null}
      {row.demonstration === true ? (
        <p className="debrief-shown">{SHOWN}</p>
      ) : (
        <RootPanel
          report={result}
          exact={laid.exact}
          search={search}
          onWatch={() => {
            setAgainst('root');
            cursor.set(search.result?.branchFromS ?? 0);
          }}
          onTrain={(exercise) => trainAfter(exercise, laid.recording.scenario)}
        />
      )}
      {leftOutOf(laid, result).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <OwnViewAgain said={ownView} flown={asFlown(result, laid)} />
      <p className="soft debrief-help">
        Flown with: {helpWords(row.help)}. Judged by: {laid.limits.title}.
      </p>
      <div className="debrief-drawn">
        <section className="debrief-box debrief-plan" aria-labelledby="title-plan">
          <div className="debrief-head-row">
            <h2 id="title-plan">Plan</h2>
            <p className="soft debrief-key">
              <span className="key key-stabilised" /> stabilised <span className="key key-recoverable" />{' '}
              recoverable <span className="key key-go-around" /> go around
            </p>
          </div>
          <PlanDrawing replays={replays} cursor={cursor} />
        </section>
        <section className="debrief-box debrief-profile" aria-label="Profile">
          <ProfileDrawing replays={replays} cursor={cursor} />
          <Player replayed={laid} endS={endS} cursor={cursor} onTakeOver={takeOver} />
        </section>
        <AtCursor replayed={laid} cursor={cursor} />
      </div>
      <div className="debrief-lower">
        <section className="debrief-box" aria-labelledby="title-plots">
          <div className="debrief-head-row">
            <h2 id="title-plots">Over time</h2>
            <Compare row={row} against={against} onAgainst={setAgainst} hasRoot={root !== null} says={says} />
          </div>
          <Plots replays={replays} marks={marks} cursor={cursor} />
        </section>
        <Gates opened={opened} />
      </div>
      <Items items={result.items} />
    </>
  );
};

/** Gates, go-arounds and safety stops in words. */
const Gates = ({ opened }: { readonly opened: OpenedAttempt }) => {
  const { gates, go_arounds, safety } = opened.attempt.result;
  return (
    <section className="debrief-gates" aria-labelledby="title-gates">
      <h2 id="title-gates">Gates and decisions</h2>
      {gates.length + go_arounds.length + safety.length === 0 ? <p>No gate was passed.</p> : null}
      <ul>
        {safety.map((stop) => (
          <li key={`${stop.at_s}-${stop.what}`} className="band-red">
            {clockText(stop.at_s)}: {stop.what}
          </li>
        ))}
        {gates.map((gate) => (
          <li key={`${gate.circuit}-${gate.height_ft}`}>
            <span className={`band band-${gate.stabilised ? 'green' : 'red'}`}>
              {gate.height_ft} ft: {gate.stabilised ? 'stabilised' : 'not stabilised'}
            </span>{' '}
            {gate.why.join('; ')}
          </li>
        ))}
        {go_arounds.map((g) => (
          <li key={`${g.at_s}-${g.due_at_s}`}>
            {g.at_s === null
              ? `A go-around was due and was not flown: ${g.why}.`
              : g.due_at_s === null
                ? 'Went around: safe, not needed.'
                : `Went around: ${g.why}.`}
          </li>
        ))}
      </ul>
    </section>
  );
};

type Found =
  | { readonly kind: 'looking' }
  | { readonly kind: 'none' }
  | { readonly kind: 'wrong'; readonly why: string }
  | { readonly kind: 'flight'; readonly opened: OpenedAttempt; readonly laid: Replayed };

/** The attempt of the address, or the newest of the pilot. */
const find = async (id: string): Promise<Found> => {
  const book = await theLogbook();
  const newest = async () => (await book.list({ pilot: await pilotNow(book) }))[0]?.id;
  const wanted = id || (await newest());
  if (wanted === undefined) return { kind: 'none' };
  const opened = await book.open(wanted);
  return {
    kind: 'flight',
    opened,
    laid: layOut(opened.attempt.recording, limitsOf(opened.attempt.judgedBy)),
  };
};

const useFound = (id: string): Found => {
  const [found, setFound] = useState<Found>({ kind: 'looking' });
  useEffect(() => {
    let gone = false;
    setFound({ kind: 'looking' });
    find(id).then(
      (next) => gone || setFound(next),
      (error: unknown) =>
        gone || setFound({ kind: 'wrong', why: error instanceof Error ? error.message : '' }),
    );
    return () => {
      gone = true;
    };
  }, [id]);
  return found;
};

/** What happened, what to change first, and another way to fly it from any instant. */
export const DebriefPage = () => {
  const id = useRouteDetail();
  const found = useFound(id);
  const says = useStore((s) => s.storageSays);
  const flight = found.kind === 'flight' ? found : null;
  return (
    <main className="debrief">
      <header className="debrief-top">
        <div>
          <h1>
            Debrief <span className="debrief-title">{flight ? titleOf(flight.opened) : ''}</span>
          </h1>
          <p className="soft">{flight ? underOf(flight.opened) : ''}</p>
        </div>
        <nav className="debrief-doors no-print" aria-label="Other pages">
          <a className="button" href="#logbook">
            logbook
          </a>
          <a className="button" href="#fly">
            fly
          </a>
        </nav>
      </header>
      {says ? <p className="caution no-print">{says}</p> : null}
      {found.kind === 'looking' ? <p role="status">The flight is being laid out …</p> : null}
      {found.kind === 'none' ? (
        <p>Nothing has been flown yet: fly one circuit, and it is read here.</p>
      ) : null}
      {found.kind === 'wrong' ? (
        <p className="wrong" role="alert">
          {found.why}
        </p>
      ) : null}
      {flight ? <Flight key={flight.opened.row.id} {...flight} /> : null}
      <footer className="debrief-foot">{CAUTION}</footer>
    </main>
  );
};
