import type { ReactNode } from 'react';
import { GATES_SOURCE, stabilisedWords } from '../../circuit/brief/gates.ts';
import type { Brief, EndBrief, RunwayBrief } from '../../circuit/brief/types.ts';
import type { RunBrief } from '../../circuit/distances/types.ts';
import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { fixed, thousands } from '../../units/format.ts';
import { changeSettings, useStore } from '../store.ts';
import { choiceOf, choiceWords, feetText, knotsText } from './text.ts';

interface PartProps {
  readonly brief: Brief;
}

const Part = ({
  title,
  children,
  id,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly id: string;
}) => (
  <section className={`part part-${id}`} aria-labelledby={`part-${id}`}>
    <h2 id={`part-${id}`}>{title}</h2>
    {children}
  </section>
);

const signedKt = (mps: number, plus: string, minus: string): string => {
  const kt = knotsText(Math.abs(mps));
  return kt === '0' ? '0' : `${kt} ${mps > 0 ? plus : minus}`;
};

const EndRow = ({
  end,
  used,
  gusts,
}: {
  readonly end: EndBrief;
  readonly used: boolean;
  readonly gusts: boolean;
}) => (
  <tr className={used ? 'used' : ''}>
    <th scope="row">
      {end.designator}
      {used ? <span className="only-heard"> in use</span> : null}
    </th>
    <td>{signedKt(end.wind.headwindMps, 'head', 'tail')}</td>
    <td>{signedKt(end.wind.crosswindMps, 'right', 'left')}</td>
    {gusts ? (
      <td>
        {signedKt(end.wind.gustHeadwindMps, 'head', 'tail')},{' '}
        {signedKt(end.wind.gustCrosswindMps, 'right', 'left')}
      </td>
    ) : null}
    <td className={end.overLimits.length > 0 ? 'over' : 'within'}>
      {end.overLimits.length > 0 ? 'over the limit' : 'within'}
    </td>
  </tr>
);

export const RunwayPart = ({ brief, gusts }: PartProps & { readonly gusts: boolean }) => {
  const { runway }: { runway: RunwayBrief } = brief;
  const ends =
    runway.inUse.designator < runway.other.designator
      ? [runway.inUse, runway.other]
      : [runway.other, runway.inUse];
  return (
    <Part id="runway" title="Runway and wind">
      <p>{runway.sentence}</p>
      <p className="no-print">{brief.windAbove.sentence}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">End</th>
            <th scope="col">Along, kt</th>
            <th scope="col">Across, kt</th>
            {gusts ? <th scope="col">Gusts</th> : null}
            <th scope="col">
              Limits {knotsText(runway.crosswindLimitMps)} across, {knotsText(runway.tailwindLimitMps)} tail
            </th>
          </tr>
        </thead>
        <tbody>
          {ends.map((end) => (
            <EndRow key={end.designator} end={end} used={end === runway.inUse} gusts={gusts} />
          ))}
        </tbody>
      </table>
      {runway.inUse.overLimits.map((sentence) => (
        <p key={sentence} className="warn">
          {sentence}
        </p>
      ))}
    </Part>
  );
};

export const ApproachPart = ({ brief, pastTurn }: PartProps & { readonly pastTurn: boolean }) => (
  <Part id="approach" title="Base turn and approach">
    {pastTurn ? (
      <p>Where the plan turns base is behind you when it begins.</p>
    ) : (
      brief.baseTurn.sentences.map((sentence) => <p key={sentence}>{sentence}</p>)
    )}
    {brief.glide === null ? (
      <>
        <p title={brief.approach.source}>{brief.approach.sentence}</p>
        <p>{brief.approach.landingFlap}</p>
      </>
    ) : (
      <p>{brief.glide}</p>
    )}
    {brief.notes.map((note) => (
      <p key={note} className="warn">
        {note}
      </p>
    ))}
  </Part>
);

const WAY_NAMES = { wider: 'wider', steeper: 'steeper', lower: 'lower', longer: 'longer' } as const;

/** An exercise that brings its circuit, or is flown somewhere of its own, leaves none to choose; said in a sentence. */
const circuitOf = (exercise: Exercise | null): string | null => {
  if (exercise?.circuit !== undefined)
    return `This exercise asks for its own circuit: ${choiceWords(exercise.circuit)}.`;
  return exercise?.aerodrome === undefined ? null : 'This exercise is flown in the circuit of its aerodrome.';
};

/** What the circuit cannot have together, and the four ways out, each a button where the circuit may be chosen. */
export const ConflictPart = ({ brief, exercise }: PartProps & { readonly exercise: Exercise | null }) => {
  const settled = circuitOf(exercise);
  const asked = useStore((s) => s.settings.circuit);
  const chosen = settled === null ? asked : null;
  const { conflict } = brief;
  if (conflict === null && chosen === null) return null;
  return (
    <Part id="conflict" title={conflict === null ? 'The circuit as chosen' : 'What cannot be had together'}>
      {conflict === null ? null : <p className="warn">{conflict.sentence}</p>}
      {chosen === null ? null : (
        <p>
          Chosen: {choiceWords(chosen)}.{' '}
          <button type="button" className="no-print" onClick={() => changeSettings({ circuit: null })}>
            as the aerodrome has it
          </button>
        </p>
      )}
      {settled === null ? null : <p>{settled}</p>}
      {conflict === null || settled !== null ? null : (
        <ul className="ways">
          {conflict.waysOut.map((way) => (
            <li key={way.id}>
              <button
                type="button"
                className="no-print"
                disabled={way.options === null}
                aria-describedby={`way-${way.id}`}
                onClick={() => way.options && changeSettings({ circuit: choiceOf(way.options) })}
              >
                {WAY_NAMES[way.id]}
              </button>
              <span id={`way-${way.id}`}>{way.sentence}</span>
            </li>
          ))}
        </ul>
      )}
    </Part>
  );
};

export const LightsPart = ({ brief }: PartProps) => (
  <Part id="lights" title={brief.lights?.title ?? 'No slope lights'}>
    {brief.lights === null ? (
      <p>Judge the slope by the shape of the runway and the aim point standing still.</p>
    ) : (
      <>
        <ul>
          {brief.lights.shown.map((shown) => (
            <li key={shown.letters + String(shown.fromHeightM)}>
              <b className="letters">{shown.letters}</b> {shown.words}, {feetText(shown.fromHeightM)} to{' '}
              {feetText(shown.toHeightM)} ft
            </li>
          ))}
        </ul>
        <p>{brief.lights.where}</p>
      </>
    )}
  </Part>
);

export const GatesPart = ({ brief }: PartProps) => (
  <Part id="gates" title="Gates">
    <ul>
      {brief.gates.map((gate) => (
        <li key={gate.heightM}>
          <b>{feetText(gate.heightM)} ft</b> ({feetText(gate.altitudeM)} on QNH): {gate.sentence}.
        </li>
      ))}
    </ul>
    <p>{stabilisedWords(brief.plan)}</p>
    <p className="soft no-print">{GATES_SOURCE}.</p>
  </Part>
);

const metres = (m: number): string => (Number.isFinite(m) ? thousands(m) : 'more than any runway,');

const Run = ({
  name,
  onGround,
  run,
}: {
  readonly name: string;
  readonly onGround: string;
  readonly run: RunBrief;
}) => {
  const factors = run.factors.map(({ name: what, factor }) => ` × ${fixed(factor, 2)} ${what}`).join('');
  return (
    <li>
      <b>{name}</b>: {metres(run.modelM)} m by the model today ({metres(run.groundRunM)} {onGround}); by
      factors {thousands(run.standardM)}
      {factors === '' ? '' : `${factors} = ${metres(run.byFactorsM)}`} m. The longer × {run.margin} ={' '}
      <b>{metres(run.withMarginM)}</b> of {thousands(run.availableM)} m
      {run.fits ? '.' : <span className="over">: not enough.</span>}
    </li>
  );
};

export const RunsPart = ({ brief, unbraked }: PartProps & { readonly unbraked: boolean }) => (
  <Part id="runs" title="Distances over 50 ft">
    <ul>
      <Run name="Take-off to 50 ft" onGround="on the ground" run={brief.runs.takeOff} />
      <Run name="Landing from 50 ft" onGround="rolling" run={brief.runs.landing} />
    </ul>
    {unbraked ? <p>The landing counts on brakes; without them, as here, it is longer.</p> : null}
    <p className="soft no-print">{brief.runs.source}.</p>
  </Part>
);

const List = ({ words }: { readonly words: readonly string[] }) => (
  <ol className="steps">
    {words.map((each) => (
      <li key={each}>{each}</li>
    ))}
  </ol>
);

export const StopsPart = ({ brief }: PartProps) => (
  <Part id="stops" title="If it stops">
    <List words={brief.engineFailure} />
  </Part>
);

export const GoAroundPart = ({ brief }: PartProps) => (
  <Part id="around" title="Going around">
    <List words={brief.goAround} />
  </Part>
);
