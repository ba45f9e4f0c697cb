import type { ActionId } from '../../../input/actions.ts';
import { useStore } from '../../store.ts';
import { cardFor } from '../card/card-data.ts';
import { type Look, lookFurther } from '../drawing/look.ts';
import { toggleSilence } from '../said/silence.ts';
import { besideNow } from '../said/speech.ts';
import { instrumentsNow } from '../scales/instruments.ts';
import type { Rate } from './clock.ts';
import { flightCommands } from './commands.ts';
import { shownHasProcedures, tellShown } from './telling.ts';

/** What an action that does not move the aeroplane's controls does. */
export interface FlightActs {
  freeze(): void;
  rate(to: Rate): void;
  stepBack(): void;
  takeOver(): void;
  /** Where the window looks now, degrees right of the nose. */
  lookingDeg(): number;
}

const onPress = (act: () => void) => (down: boolean) => {
  if (down) act();
};

/** The next line of the card of this kind that is not ticked yet. */
const tickNext = (kinds: readonly string[]) => () => {
  const card = instrumentsNow()?.card;
  const { emergency, legId, ticked } = useStore.getState();
  const shown = emergency || legId;
  if (!card) return;
  const line = cardFor(shown, card).lines.find(
    (l) => kinds.includes(l.kind) && !ticked.has(`${shown}/${l.id}`),
  );
  if (line) flightCommands()?.tick(`${shown}/${line.id}`);
};

export const actionsOf = (acts: FlightActs): Partial<Record<ActionId, (down: boolean) => void>> => {
  /** Where the head is to be, which it may still be turning to. */
  const lookWanted = (): number => {
    const { look: wanted } = useStore.getState();
    return wanted === 'leg' ? acts.lookingDeg() : wanted;
  };
  const look = (to: () => Look) =>
    onPress(() => {
      const next = to();
      useStore.setState({ look: next });
      tellShown('look', String(next));
    });
  return {
    freeze: onPress(acts.freeze),
    'rate-half': onPress(() => acts.rate(0.5)),
    'rate-1': onPress(() => acts.rate(1)),
    'rate-2': onPress(() => acts.rate(2)),
    'rate-4': onPress(() => acts.rate(4)),
    'step-back': onPress(acts.stepBack),
    'take-over': onPress(acts.takeOver),
    'look-left': look(() => lookFurther(lookWanted(), -1)),
    'look-right': look(() => lookFurther(lookWanted(), 1)),
    'look-ahead': look(() => 0),
    'look-leg': look(() => 'leg'),
    'show-plan': (down) =>
      useStore.setState((s) => ({
        planHeld: down,
        planLooks: down && s.settings.picture === 'cockpit-with-plan' ? s.planLooks + 1 : s.planLooks,
      })),
    'tick-check': onPress(() => (shownHasProcedures() ? tellShown('tick', '') : tickNext(['check'])())),
    'make-call': onPress(() => (shownHasProcedures() ? besideNow()?.openCall() : tickNext(['call'])())),
    'say-1': onPress(() => besideNow()?.sayOption(0)),
    'say-2': onPress(() => besideNow()?.sayOption(1)),
    'say-3': onPress(() => besideNow()?.sayOption(2)),
    'subscale-down': onPress(() => besideNow()?.turnSubscale(-1)),
    'subscale-up': onPress(() => besideNow()?.turnSubscale(1)),
    announce: onPress(toggleSilence),
    help: onPress(() => useStore.setState((s) => ({ sheet: s.sheet === 'help' ? null : 'help' }))),
  };
};
