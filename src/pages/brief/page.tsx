import { useDeferredValue, useMemo } from 'react';
import '../styles/print.css';
import '../styles/brief.css';
import { windText } from '../../formats/wind-text.ts';
import { fixed, thousands } from '../../units/format.ts';
import { loadExercises } from '../exercises-room.ts';
import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { useOwnPlaces } from '../own/own-places.ts';
import { alreadyTold } from '../parts/fetch-part.ts';
import { goTo } from '../route.ts';
import { ThemeButton } from '../shown/theme-button.tsx';
import { changeSettings, useStore } from '../store.ts';
import { briefOfSettings, type PreparedBrief } from './brief-of-settings.ts';
import { CircuitChart } from './circuit-chart.tsx';
import { DayFields } from './day-fields.tsx';
import { ExercisePart } from './exercise-part.tsx';
import { FinalChart } from './final-chart.tsx';
import { LegTable, LegWordsTable } from './leg-table.tsx';
import { feetText } from './text.ts';
import {
  ApproachPart,
  ConflictPart,
  GatesPart,
  GoAroundPart,
  LightsPart,
  RunsPart,
  RunwayPart,
  StopsPart,
} from './words.tsx';

/** The circuit of the set-up is briefed from the line-up, an exercise from where it begins. */
const flyThis = (): void => {
  changeSettings({ start: 'line-up' });
  useStore.setState({ sheet: null });
  loadExercises().then(() => goTo('fly'), alreadyTold);
};

const Head = ({ prepared }: { readonly prepared: PreparedBrief | null }) => {
  return (
    <header className="brief-head">
      <div>
        <h1>
          {prepared ? `${prepared.request.aerodrome.title}, runway ${prepared.request.runway}` : 'Brief'}
          {prepared?.exercise ? <span className="brief-title">: {prepared.exercise.title}</span> : null}
        </h1>
        {prepared ? <Conditions prepared={prepared} /> : null}
        {prepared?.brief.runway.inUse.overLimits.map((sentence) => (
          <p key={sentence} className="warn no-print">
            {sentence}
          </p>
        ))}
      </div>
      <nav className="brief-doors no-print" aria-label="Pages">
        <button type="button" className="strong" disabled={prepared === null} onClick={flyThis}>
          fly this
        </button>
        <button type="button" disabled={prepared === null} onClick={() => print()}>
          print
        </button>
        <a href="#exercises">exercises</a>
        <a href="#own">my runway, my numbers</a>
        <ThemeButton />
        <a href="#fly">to the flight</a>
      </nav>
    </header>
  );
};

const Conditions = ({ prepared }: { readonly prepared: PreparedBrief }) => {
  const { brief, request, card, ownAerodrome } = prepared;
  const { weather, aeroplane, aerodrome } = request;
  const entered = [ownAerodrome ? 'aerodrome' : '', card === null ? '' : 'card'].filter((x) => x !== '');
  return (
    <p className="soft">
      {[
        `${prepared.exercise === null ? 'normal circuit, ' : ''}${brief.plan.side === 1 ? 'right' : 'left'}-hand, ${feetText(brief.air.circuitAltitudeM)} ft on QNH`,
        `${aeroplane.title}, ${thousands(aeroplane.massKg.flown)} kg`,
        `wind ${windText(weather)}, ${brief.windAbove.words}, ${fixed(weather.temperatureC)} °C, QNH ${fixed(weather.qnhHpa)}`,
        `heights above the aerodrome unless on QNH, elevation ${thousands(aerodrome.elevationFt)} ft, density altitude ${feetText(brief.air.densityAltitudeM)} ft`,
        entered.length > 0 ? `${entered.join(' and ')} entered by you` : '',
      ]
        .filter((each) => each !== '')
        .join(' · ')}
    </p>
  );
};

/** In a balloon it begins over the runway, which is no leg. */
const beginsWords = ({ from, exercise, pastTurn }: PreparedBrief): string => {
  if (exercise?.start.at === 'balloon') return 'It begins over the runway';
  return pastTurn ? `It begins on ${from}, past the turn` : `It begins on ${from}`;
};

const Sheet = ({ prepared }: { readonly prepared: PreparedBrief }) => {
  const { brief, request, card, exercise, start, from, pastTurn } = prepared;
  const { weather } = request;
  const part = { brief };
  const sloped = brief.glide === null;
  return (
    <>
      {exercise === null ? null : <ExercisePart exercise={exercise} />}
      <section className="brief-chart" aria-label="The circuit in this wind">
        <CircuitChart brief={brief} weather={weather} start={start} from={from} />
      </section>
      <section className="brief-table" aria-label="Every leg in figures">
        <LegTable brief={brief} card={card} from={from} />
        {from === 'upwind' ? null : (
          <p className="soft">
            {beginsWords(prepared)}; the legs above it are for going round again.
            {pastTurn ? ' Seconds and descents are those of the plan, which you are past.' : ''}
          </p>
        )}
        {brief.air.sentence === null ? null : <p className="soft">{brief.air.sentence}</p>}
      </section>
      <div className="brief-words">
        <RunwayPart {...part} gusts={weather.gustKt !== null} />
        <ApproachPart {...part} pastTurn={pastTurn} />
        {sloped ? (
          <>
            <ConflictPart {...part} exercise={exercise} />
            <section className="part part-final" aria-label="The final from the side">
              <FinalChart brief={brief} />
            </section>
            <LightsPart {...part} />
            <GatesPart {...part} />
          </>
        ) : null}
        <section className="part part-checks" aria-labelledby="part-checks">
          <h2 id="part-checks">Checks, calls, lookout</h2>
          <LegWordsTable brief={brief} />
        </section>
        <StopsPart {...part} />
        <GoAroundPart {...part} />
        <RunsPart {...part} unbraked={exercise?.technique === 'soft-field'} />
      </div>
    </>
  );
};

/** What is said before the lesson, from the very model that will fly; one printed sheet. */
export const BriefPage = () => {
  // Typing goes on while a new brief is planned.
  const settings = useDeferredValue(useStore((s) => s.settings));
  const own = useOwnPlaces();
  const made = useMemo(() => {
    // The own places are read inside; a change of theirs makes another brief.
    void own;
    try {
      return { prepared: briefOfSettings(settings), wrong: '' };
    } catch (error) {
      return { prepared: null, wrong: error instanceof Error ? error.message : String(error) };
    }
  }, [settings, own]);
  return (
    <main className={made.prepared?.exercise ? 'brief brief-trains' : 'brief'}>
      <Head prepared={made.prepared} />
      <DayFields />
      {made.prepared ? (
        <Sheet prepared={made.prepared} />
      ) : (
        <p className="wrong" role="alert">
          No circuit can be briefed: {made.wrong}.
        </p>
      )}
      <footer className="brief-foot">{CAUTION}</footer>
    </main>
  );
};
