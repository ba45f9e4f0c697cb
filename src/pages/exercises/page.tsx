import { useState } from 'react';
import '../styles/logbook.css';
import '../styles/exercises.css';
import { EXERCISES } from '../../exercises.ts';
import type { AttemptRow } from '../../lesson/attempts/attempt.ts';
import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { allowsOwnDay } from '../../lesson/exercises/own-day.ts';
import { inParts } from '../../lesson/exercises/syllabus.ts';
import { CAUTION } from '../fly/sheets/start-sheet.tsx';
import { useLogbook } from '../logbook/use-logbook.ts';
import { alreadyTold } from '../parts/fetch-part.ts';
import { goTo } from '../route.ts';
import { ThemeButton } from '../shown/theme-button.tsx';
import { dayText } from '../shown/when.ts';
import { useStore } from '../store.ts';
import { chooseExercise, train } from '../train.ts';
import { airWords } from './air-words.ts';
import { lookedAt } from './looked-at.ts';
import { bestAndLast, resultWords } from './results.ts';

const Words = ({ title, words }: { readonly title: string; readonly words: readonly string[] }) =>
  words.length === 0 ? null : (
    <section>
      <h3>{title}</h3>
      <ul>
        {words.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </section>
  );

/** The brief of one exercise: aim, what to say first, cautions, what is and is not looked at, whose procedure. */
const ExerciseCard = ({
  exercise,
  rows,
}: {
  readonly exercise: Exercise;
  readonly rows: readonly AttemptRow[];
}) => {
  const { best, last } = bestAndLast(rows, exercise);
  const wind = useStore((s) => s.settings.wind);
  return (
    <section className="exercise-card" aria-labelledby="exercise-title">
      <h2 id="exercise-title">{exercise.title}</h2>
      <p>{exercise.aim}</p>
      <p className="soft">{airWords(exercise)}</p>
      <p className="exercise-doors">
        <button type="button" className="strong" onClick={() => train(exercise.id)}>
          fly this
        </button>
        {allowsOwnDay(exercise) ? (
          <button type="button" onClick={() => train(exercise.id, true)}>
            fly it in my weather: {wind}
          </button>
        ) : null}
        <button
          type="button"
          onClick={() => chooseExercise(exercise.id).then(() => goTo('brief'), alreadyTold)}
        >
          brief
        </button>
      </p>
      <Words title="Say first" words={exercise.sayFirst} />
      <Words title="It trains" words={exercise.trains} />
      <Words title="Caution" words={exercise.cautions} />
      <Words title="Looked at" words={lookedAt(exercise)} />
      <section>
        <h3>Not looked at</h3>
        <p>{exercise.notAssessed}</p>
      </section>
      <section>
        <h3>So far</h3>
        {last === null ? (
          <p>Not flown yet.</p>
        ) : (
          <p>
            Last, {dayText(last.when)}: {resultWords(last)}.{' '}
            {best === null || best.id === last.id
              ? 'That is the best so far.'
              : `Best, ${dayText(best.when)}: ${resultWords(best)}.`}
          </p>
        )}
      </section>
      <p className="soft">Source: {Object.values(exercise.sources).join('; ')}.</p>
    </section>
  );
};

/** Every exercise, what each trains and how it went; the aeroplane and the aerodrome are those of the set-up. */
export const ExercisesPage = () => {
  const now = useLogbook();
  const [chosenId, setChosen] = useState('normal-circuit');
  const rows = now?.rows ?? [];
  const chosen = EXERCISES.find(({ id }) => id === chosenId) ?? EXERCISES[0];
  return (
    <main className="logbook">
      <header className="log-top">
        <h1>Exercises</h1>
        <nav className="log-doors" aria-label="Other pages">
          <a className="button" href="#fly">
            fly
          </a>
          <a className="button" href="#brief">
            brief
          </a>
          <a className="button" href="#logbook">
            logbook
          </a>
          <ThemeButton />
        </nav>
      </header>
      <div className="exercise-columns">
        <div className="exercise-list">
          {inParts(EXERCISES).map((part) => (
            <section key={part.title} aria-label={part.title}>
              <h2>{part.title}</h2>
              <ul>
                {part.exercises.map((exercise) => {
                  const { last } = bestAndLast(rows, exercise);
                  return (
                    <li key={exercise.id}>
                      <button
                        type="button"
                        aria-pressed={exercise.id === chosen?.id}
                        onClick={() => setChosen(exercise.id)}
                      >
                        <strong>{exercise.title}</strong>
                        <span>{exercise.trains.join(' · ')}</span>
                        {last === null ? null : <span className="soft">last: {resultWords(last)}</span>}
                      </button>
                    </li>
                  );
                })}
              </ul>
            </section>
          ))}
        </div>
        {chosen ? <ExerciseCard exercise={chosen} rows={rows} /> : null}
      </div>
      <footer className="log-foot">{CAUTION}</footer>
    </main>
  );
};
