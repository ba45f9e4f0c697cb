import { useState } from 'react';
import { STABILISED } from '../../circuit/stabilised.ts';
import type { FlownResult } from '../../formats/result.ts';
import { degFromRad, ktFromMps } from '../../units/conversions.ts';
import type { Tape } from './tape.ts';

interface Question {
  readonly asks: string;
  readonly answers: readonly string[];
}

/** The three taps. */
export const QUESTIONS: readonly Question[] = [
  { asks: 'On final I was', answers: ['high', 'on the slope', 'low'] },
  { asks: 'and my speed was', answers: ['fast', 'right', 'slow'] },
  { asks: 'I would', answers: ['go on again', 'have gone around'] },
];

interface OwnViewProps {
  readonly onDone: (answers: readonly string[]) => void;
}

/** Before anything is shown: how the pilot saw it, in three taps. */
export const OwnView = ({ onDone }: OwnViewProps) => {
  const [answers, setAnswers] = useState<readonly string[]>([]);
  const question = QUESTIONS[answers.length];
  if (question === undefined) return null;
  const tap = (answer: string) => {
    const next = [...answers, answer];
    if (next.length === QUESTIONS.length) onDone(next);
    else setAnswers(next);
  };
  return (
    <section className="own-view" aria-labelledby="title-own-view">
      <h2 id="title-own-view">First, how did you see it?</h2>
      <p className="own-view-so-far soft">
        {answers.map((answer, i) => `${QUESTIONS[i]?.asks} ${answer}`).join(', ')}
      </p>
      <fieldset>
        <legend>{question.asks} …</legend>
        {question.answers.map((answer) => (
          <button key={answer} type="button" onClick={() => tap(answer)}>
            {answer}
          </button>
        ))}
      </fieldset>
      <button type="button" className="own-view-skip" onClick={() => onDone([])}>
        show it without asking
      </button>
    </section>
  );
};

/** As the gates have it. */
const SLOPE = { below: degFromRad(STABILISED.slopeRad), above: degFromRad(STABILISED.slopeRad) };

const sideOf = (
  off: number,
  allowed: { readonly below: number; readonly above: number },
  words: readonly string[],
): string => (off > allowed.above ? words[0] : off < -allowed.below ? words[2] : words[1]) ?? '';

/** The same three, as the last gate had them; empty where there was none. */
export const asFlown = (result: FlownResult, tape: Tape): readonly string[] => {
  const gate = result.gates[result.gates.length - 1];
  if (gate === undefined) return [];
  const { approachRad, approachIasMps } = tape.plan;
  const due = result.go_arounds.some((g) => g.due_at_s !== null);
  return [
    sideOf(gate.slope_deg - degFromRad(approachRad), SLOPE, QUESTIONS[0]?.answers ?? []),
    sideOf(
      gate.ias_kt - ktFromMps(approachIasMps),
      tape.limits.allowed.approachSpeedKt,
      QUESTIONS[1]?.answers ?? [],
    ),
    (due ? QUESTIONS[2]?.answers[1] : QUESTIONS[2]?.answers[0]) ?? '',
  ];
};

/** What was said beside what was flown. */
export const OwnViewAgain = ({
  said,
  flown,
}: {
  readonly said: readonly string[];
  readonly flown: readonly string[];
}) => {
  if (said.length === 0) return null;
  return (
    <p className="own-view-again">
      You said: {said.join(', ')}.{' '}
      {flown.length === 0
        ? 'No gate was passed to hold it against.'
        : `At the last gate it was: ${flown.join(', ')}. ${said.every((word, i) => word === flown[i]) ? 'You saw it as it was.' : 'What told you so?'}`}
    </p>
  );
};
