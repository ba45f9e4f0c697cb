import type { Exercise } from '../../lesson/exercises/exercise.ts';
import { lookedAt } from '../exercises/looked-at.ts';

const Points = ({ title, points }: { readonly title: string; readonly points: readonly string[] }) => (
  <div>
    <h3>{title}</h3>
    <ul>
      {points.map((point) => (
        <li key={point}>{point}</li>
      ))}
    </ul>
  </div>
);

/**
 * What the exercise is about, in its own words. What it keeps for the flight (the moment something is called or
 * stops) is not told here either.
 */
export const ExercisePart = ({ exercise }: { readonly exercise: Exercise }) => (
  <section className="brief-exercise" aria-label="The exercise">
    <p className="brief-aim">{exercise.aim}</p>
    <div className="brief-points">
      <Points title="Say first" points={exercise.sayFirst} />
      <Points title="Caution" points={exercise.cautions} />
      <Points title="Not looked at" points={[exercise.notAssessed]} />
    </div>
    <details className="no-print">
      <summary>Looked at, leg by leg</summary>
      <ul>
        {lookedAt(exercise).map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </details>
    <p className="soft no-print">Source: {Object.values(exercise.sources).join('; ')}.</p>
  </section>
);
