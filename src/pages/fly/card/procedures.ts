import { lessonMemory } from '../../../flight/flight.ts';
import type { Lesson } from '../../../lesson/lesson.ts';
import type { LessonMemory } from '../../../lesson/memory.ts';
import { callPlace, nextCall } from '../../../lesson/procedures/call-places.ts';
import { doingWords } from '../../../lesson/procedures/check-items.ts';
import { checkItemWords, itemsOf, titleOf } from '../../../lesson/procedures/check-lists.ts';
import type { ProcedureMemory } from '../../../lesson/procedures/memory.ts';
import { openAnswer } from '../../../lesson/procedures/watch-calls.ts';
import { currentList, isComplete } from '../../../lesson/procedures/watch-checks.ts';
import {
  answerSaid,
  answerWordings,
  callWordings,
  IF_IT_STOPS,
  shuffled,
  type Wordings,
} from '../../../lesson/procedures/wordings.ts';
import { useStore } from '../../store.ts';
import { lookAt } from '../drawing/look.ts';
import type { ReadyFlight } from '../run/ready.ts';
import { flightShown, tellShown } from '../run/telling.ts';
import type { Announcer } from '../said/announcer.ts';
import { NOTHING, type Prompt, type Shown, type ShownCheck, useProcedures } from './shown-procedures.ts';

const checkNow = (p: ProcedureMemory, lesson: Lesson): ShownCheck | null => {
  const fact = currentList(p);
  if (fact === null) return null;
  const items = itemsOf(fact.list, lesson.aeroplane).map((item, i) => {
    const state = fact.items[i];
    return {
      id: item.id,
      text: checkItemWords(item, lesson),
      how: item.how,
      doing: doingWords(item.name),
      done: (state?.doneS ?? null) !== null,
      wrong: (state?.wrong ?? 0) > 0,
      note: state?.note ?? '',
    };
  });
  return { title: titleOf(fact.list), items, done: items.filter(({ done }) => done).length };
};

const promptOf = (
  lesson: Lesson,
  what: string,
  title: string,
  wordings: Wordings,
  circuit: number,
): Prompt => ({
  what,
  title,
  options: shuffled(lesson, `${title}/${circuit}`).map((choice) => ({
    text: wordings[choice] ?? '',
    choice,
  })),
});

const promptNow = (p: ProcedureMemory, m: LessonMemory, lesson: Lesson, calling: boolean): Prompt | null => {
  const { circuit } = m.legs;
  const answer = openAnswer(p);
  const back = answer === null ? null : answerWordings(answer.answer, lesson);
  if (answer !== null && back !== null) return promptOf(lesson, 'back', 'Read back', back, circuit);
  const check = currentList(p);
  const next = check?.items.find(({ doneS }) => doneS === null);
  if (next?.id === 'if-it-stops')
    return promptOf(lesson, next.id, 'If the engine stops', IF_IT_STOPS, circuit);
  if (!calling) return null;
  const call = nextCall(m, lesson);
  return promptOf(lesson, call, `Call: ${call.replaceAll('-', ' ')}`, callWordings(call, lesson), circuit);
};

const saying = (what: string, m: LessonMemory): string => `${what}/${m.legs.circuit}`;

/** A correction stays to be read for so long, from when it was made. */
const READ_S = 12;

/** Talked through, the call is offered where it is due. */
const offers = ({ lesson, radio }: ReadyFlight, m: LessonMemory, p: ProcedureMemory): boolean => {
  if (useStore.getState().settings.coach !== 'talked-through') return false;
  const call = nextCall(m, lesson);
  const check = currentList(p);
  // First the check, then the call
  if (call === 'ready' && check !== null && !isComplete(check)) return false;
  const said = p.calls.some(
    (fact) => fact.call === call && fact.circuit === m.legs.circuit && fact.saidS !== null,
  );
  if (said) radio.justSaid = '';
  return callPlace(call, m, lesson) === 'here' && !said && radio.justSaid !== saying(call, m);
};

/** What was said stays to be read for so long. */
const SPOKEN_S = 9;

/** What the model pilot says now, in its words: a call, a read-back, the plan for an engine that stops. */
const spokenNow = (p: ProcedureMemory, lesson: Lesson, timeS: number): string => {
  if (useStore.getState().pilot !== 'model') return '';
  const planS = p.lists.flatMap(({ items }) => items).find(({ id }) => id === 'if-it-stops')?.doneS ?? null;
  const said = [
    ...p.calls.map(({ call, saidS }) => ({ atS: saidS, words: () => callWordings(call, lesson) })),
    ...p.answers.map(({ answer, readS }) => ({ atS: readS, words: () => answerWordings(answer, lesson) })),
    { atS: planS, words: () => IF_IT_STOPS },
  ];
  const last = said.reduce((latest, each) => ((each.atS ?? -1) > (latest.atS ?? -1) ? each : latest));
  return last.atS === null || timeS - last.atS > SPOKEN_S ? '' : (last.words()?.[0] ?? '');
};

/** The model pilot's head turns where it looks, and back to where the leg asks. */
const LOOKS_S = 1.6;
let turned = false;
const showLook = (p: ProcedureMemory, timeS: number): void => {
  const last = p.looks[p.looks.length - 1];
  const watches = useStore.getState().pilot === 'model';
  const looks = watches && last !== undefined && timeS - last.atS < LOOKS_S;
  if (looks) useStore.setState({ look: lookAt(last.deg) });
  else if (turned) useStore.setState({ look: 'leg' });
  turned = looks;
};

let before = '';

/** Four times a simulated second: what of checks and calls is to be shown. */
export const showProcedures = (flight: ReadyFlight, announcer: Announcer): void => {
  const { lesson } = flight;
  const m = lessonMemory(flight);
  const p = m.procedures ?? null;
  if (p === null) {
    if (useProcedures.getState().on) useProcedures.setState(NOTHING);
    return;
  }
  const was = useProcedures.getState();
  const last = p.answers[p.answers.length - 1];
  const next: Omit<Shown, 'coach' | 'correction'> = {
    on: true,
    check: checkNow(p, lesson),
    heard: last === undefined ? '' : answerSaid(last.answer, lesson),
    spoken: spokenNow(p, lesson, lesson.where.timeS),
    calling: was.calling,
    prompt: promptNow(p, m, lesson, was.calling || offers(flight, m, p)),
    subscaleHpa: p.subscaleHpa,
    qnhHpa: lesson.procedures?.qnhHpa ?? 0,
  };
  showLook(p, lesson.where.timeS);
  if (was.correction !== '' && lesson.where.timeS - flight.radio.correctedS > READ_S)
    useProcedures.setState({ correction: '' });
  const text = JSON.stringify(next);
  if (text === before && was.on) return;
  before = text;
  if (next.spoken !== '' && next.spoken !== was.spoken) announcer.say(next.spoken);
  if (next.heard !== '' && next.heard !== was.heard) announcer.say(next.heard);
  useProcedures.setState(next);
};

/** Opens the wordings of the next call, or puts them away. */
export const openCall = (): void => {
  const flight = flightShown();
  if (flight === null) return;
  const m = lessonMemory(flight);
  const p = m.procedures;
  if (p === null) return;
  const calling = !useProcedures.getState().calling;
  const shown = calling || offers(flight, m, p);
  useProcedures.setState({ calling, prompt: promptNow(p, m, flight.lesson, shown), correction: '' });
};

/** Says the wording that stands in this place. */
export const sayOption = (place: number): void => {
  const { prompt } = useProcedures.getState();
  const option = prompt?.options[place];
  if (prompt === null || option === undefined) return;
  tellShown('say', `${prompt.what}/${option.choice}`);
  const flight = flightShown();
  if (flight !== null) {
    flight.radio.justSaid = saying(prompt.what, lessonMemory(flight));
    flight.radio.correctedS = flight.lesson.where.timeS;
  }
  const right = prompt.options.find(({ choice }) => choice === 0)?.text ?? '';
  const silent = useStore.getState().settings.coach === 'silent';
  useProcedures.setState({
    prompt: null,
    calling: false,
    correction: option.choice === 0 || silent ? '' : `Rather: “${right}”`,
  });
};

/** Turns the subscale of the altimeter. */
export const turnSubscale = (by: number): void => {
  const { on, subscaleHpa } = useProcedures.getState();
  if (!on) return;
  const to = Math.min(1090, Math.max(850, subscaleHpa + by));
  tellShown('subscale', String(to));
  useProcedures.setState({ subscaleHpa: to });
};
