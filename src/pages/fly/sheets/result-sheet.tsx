import { useState } from 'react';
import { outcomeTitle } from '../../../flight/outcome-words.ts';
import type { FlownResult } from '../../../formats/result.ts';
import { itemTitle, unitOf } from '../../../lesson/judge/item-words.ts';
import type { ItemReport, LegReport, Report } from '../../../lesson/judge/report.ts';
import { valueWords } from '../../../lesson/judge/value-words.ts';
import { ftFromM } from '../../../units/conversions.ts';
import { clockText, fixed } from '../../../units/format.ts';
import { alreadyTold } from '../../parts/fetch-part.ts';
import { goTo } from '../../route.ts';
import { BAND_WORDS } from '../../shown/bands.ts';
import { Items } from '../../shown/judged-items.tsx';
import { useStore } from '../../store.ts';
import { chooseExercise } from '../../train.ts';
import { flightCommands } from '../run/commands.ts';
import type { ResultCard } from '../run/shown-result.ts';
import { ResultPlan, ResultProfile } from './result-drawings.tsx';
import { SheetOver } from './sheet.tsx';
import { CAUTION } from './start-sheet.tsx';

const LEGS = ['upwind', 'crosswind', 'downwind', 'base', 'final'] as const;

/** A value with its mark (round inside, triangle just outside, square outside) and the plan's value below. */
const Flown = ({ item }: { readonly item: ItemReport | undefined }) => {
  if (!item) return <td className="soft">–</td>;
  return (
    <td title={itemTitle(item)}>
      <span className={`band band-${item.band}`}>
        {valueWords(item.value, unitOf(item))}
        <span className="only-heard"> {BAND_WORDS[item.band]}</span>
      </span>
      <small>plan {valueWords(item.target, unitOf(item))}</small>
    </td>
  );
};

/** Per leg: height, speed and track against the plan, and the bank of the turn onto it. */
const LegTable = ({ items }: { readonly items: readonly ItemReport[] }) => {
  const find = (id: string) => items.find((item) => item.id === id);
  return (
    <table className="leg-table">
      <caption className="only-heard">Against the plan, leg by leg</caption>
      <thead>
        <tr>
          <th scope="col">leg</th>
          <th scope="col">height</th>
          <th scope="col">speed</th>
          <th scope="col">track off</th>
          <th scope="col">bank, turning on</th>
        </tr>
      </thead>
      <tbody>
        {LEGS.map((leg) => (
          <tr key={leg}>
            <th scope="row">{leg}</th>
            <Flown item={find(`${leg}-height`)} />
            <Flown item={find(`${leg}-speed`)} />
            <Flown item={find(`${leg}-track`)} />
            <Flown item={find(`turn-to-${leg}-bank`)} />
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const Gates = ({ report }: { readonly report: Report }) => (
  <table>
    <caption className="only-heard">Gates, touchdown and stop</caption>
    <tbody>
      {report.gates.map((gate) => (
        <tr key={`${gate.circuit}-${gate.height_ft}`}>
          <th scope="row">
            gate {gate.height_ft} ft{gate.at_s === null ? '' : ` at ${clockText(gate.at_s)}`}
          </th>
          <td>
            <span className={`band band-${gate.stabilised ? 'green' : 'red'}`}>
              {gate.stabilised ? 'stabilised' : 'not stabilised'}
            </span>{' '}
            {gate.why.join(', ')}
          </td>
        </tr>
      ))}
      {report.go_arounds.map((g) => (
        <tr key={`${g.at_s}-${g.due_at_s}`}>
          <th scope="row">go-around</th>
          <td>
            {g.at_s === null
              ? `due and not flown: ${g.why}`
              : g.due_at_s === null
                ? 'safe, not needed'
                : g.why}
          </td>
        </tr>
      ))}
      {report.touchdowns.map((t) => (
        <tr key={t.at_s}>
          <th scope="row">touchdown</th>
          <td>
            {fixed(Math.abs(t.past_specified_m))} m ({fixed(Math.abs(ftFromM(t.past_specified_m)))} ft){' '}
            {t.past_specified_m < 0 ? 'short of' : 'past'} the point, {fixed(t.ias_kt)} kt, sinking{' '}
            {fixed(t.sink_fpm)} ft/min
            {t.bounces > 0 ? `, ${t.bounces} bounce${t.bounces > 1 ? 's' : ''}` : ''}
          </td>
        </tr>
      ))}
      {report.stop ? (
        <tr>
          <th scope="row">stop</th>
          <td>
            {fixed(report.stop.remaining_m)} m of runway in hand, {fixed(Math.abs(report.stop.centreline_m))}{' '}
            m {report.stop.centreline_m < 0 ? 'left' : 'right'} of the centreline
          </td>
        </tr>
      ) : null}
      {report.safety.map((s) => (
        <tr key={`${s.at_s}-${s.what}`}>
          <th scope="row">at {clockText(s.at_s)}</th>
          <td className="band-red">{s.what}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** Straight legs that were flown, to begin again from. */
const startsOf = (legs: readonly LegReport[]): readonly LegReport[] =>
  legs.filter((leg) => ['upwind', 'crosswind', 'downwind', 'base', 'final'].includes(leg.leg)).slice(-5);

const AgainFrom = ({ result }: { readonly result: FlownResult }) => {
  const [atS, setAtS] = useState(Math.max(0, Math.floor(result.flight_s - 30)));
  return (
    <div className="from-here">
      <label htmlFor="again-from">Again from</label>
      <output htmlFor="again-from">{clockText(atS)}</output>
      <input
        id="again-from"
        type="range"
        min={0}
        max={Math.floor(result.flight_s)}
        value={atS}
        aria-valuetext={clockText(atS)}
        onChange={(event) => setAtS(Number(event.currentTarget.value))}
      />
      <button type="button" className="strong" data-first onClick={() => flightCommands()?.fromInstant(atS)}>
        again from here
      </button>
      {startsOf(result.legs).map((leg) => (
        <button
          key={`${leg.leg}-${leg.from_s}`}
          type="button"
          onClick={() => flightCommands()?.fromInstant(leg.from_s)}
        >
          {leg.leg} {clockText(leg.from_s)}
        </button>
      ))}
    </div>
  );
};

/** Longer lists are opened by whoever wants them: what to look at first stands above. */
const SHORT = 3;

/** Whether the exercise was passed. */
const VerdictPart = ({ verdict, exercise }: ResultCard) =>
  verdict === null ? null : (
    <p className="verdict">
      <strong className={`band band-${verdict.passed ? 'green' : 'red'}`}>
        {exercise}: {verdict.passed ? 'passed' : 'not yet'}
      </strong>
    </p>
  );

/** What stood against it; where nothing did, what could be better all the same. */
const AgainstPart = ({ verdict, advice }: ResultCard) => {
  const against = verdict?.against ?? [];
  const words = against.length > 0 ? against : advice;
  if (words.length === 0) return null;
  const count = words.length === 1 ? 'One thing' : `${words.length} things`;
  return (
    <details className="against" open={words.length <= SHORT}>
      <summary>
        {count} {against.length > 0 ? 'stood against it' : 'to do better'}
      </summary>
      <ul>
        {words.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </details>
  );
};

/** The exercise for it, there, in that aeroplane and air. */
const trainThis = (exercise: string): void => {
  const flown = flightCommands()?.shown()?.scenario ?? null;
  chooseExercise(exercise, false, flown).then(() => {
    useStore.setState({ sheet: null });
    flightCommands()?.prepare();
  }, alreadyTold);
};

/** What a demonstration has shown; nobody is judged by it. */
const ShownPart = ({ shown }: { readonly shown: readonly string[] }) => (
  <section className="shown" aria-label="What was shown">
    <p>
      Flown by the model pilot: to be watched, no attempt of yours, and not in the logbook unless you keep it.
    </p>
    <ul>
      {shown.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  </section>
);

const KeepButton = () => {
  const [asked, setAsked] = useState(false);
  const keep = () => {
    setAsked(true);
    flightCommands()?.keepShown();
  };
  return (
    <button type="button" disabled={asked} onClick={keep}>
      keep this demonstration
    </button>
  );
};

/** What happened: the circuit drawn, leg by leg, gates, touchdown, stop, and what to look at first. */
export const ResultSheet = () => {
  const card = useStore((s) => s.result);
  const attempt = useStore((s) => s.attempt);
  if (!card) return null;
  const { result } = card;
  const close = () => useStore.setState({ sheet: null });
  const again = () => {
    close();
    if (flightCommands()?.again()) flightCommands()?.start();
  };
  return (
    <SheetOver
      title={`${card.shown === null ? '' : 'Demonstration. '}${outcomeTitle(result.outcome)} after ${clockText(result.flight_s)}`}
      onClose={close}
      className="sheet-result"
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keys must reach it (axe: scrollable-region-focusable) */}
      <section className="result-body" aria-label="What happened" tabIndex={0}>
        <p>{result.why}</p>
        {card.theirsFromS > 0 ? (
          <p>
            The model pilot flew until {clockText(card.theirsFromS)}; from there on it was yours, and only
            that is looked at.
          </p>
        ) : null}
        <VerdictPart {...card} />
        {card.shown === null ? (
          <p className="first-look">{card.firstLook}</p>
        ) : (
          <ShownPart shown={card.shown} />
        )}
        <AgainstPart {...card} />
        {card.leftOut.length === 0 ? null : (
          <details className="against" open={card.leftOut.length <= SHORT}>
            <summary>Left out beside the flying</summary>
            <ul>
              {card.leftOut.map((each) => (
                <li key={each}>{each}</li>
              ))}
            </ul>
          </details>
        )}
        <div className="drawings">
          <ResultPlan drawn={card.drawn} />
          <ResultProfile drawn={card.drawn} />
        </div>
        <div className="result-tables">
          <LegTable items={result.items} />
          <Gates report={result} />
        </div>
        <Items items={result.items} />
        <p className="soft">
          Flown with: {card.help}. Judged by: {card.judgedBy}. {CAUTION}
        </p>
      </section>
      <div className="result-foot">
        <AgainFrom result={result} />
        <div className="sheet-buttons">
          {card.shown !== null && attempt === '' ? (
            <KeepButton />
          ) : (
            <button
              type="button"
              className="strong"
              disabled={attempt === ''}
              onClick={() => goTo('debrief', attempt)}
            >
              debrief
            </button>
          )}
          {card.trains === null ? null : (
            <button type="button" onClick={() => trainThis(card.trains ?? '')}>
              train this
            </button>
          )}
          <button type="button" onClick={again}>
            the whole flight again
          </button>
          <button type="button" onClick={() => useStore.setState({ sheet: 'setup' })}>
            set up another
          </button>
          <button type="button" onClick={close}>
            look at the page
          </button>
        </div>
      </div>
    </SheetOver>
  );
};
