/**
 * Everything the hands and the voice can ask for, with the key that asks for it. The one table behind the
 * keyboard, the help sheet and every `aria-keyshortcuts`. No key needs Ctrl, Alt or a function key; Tab, Enter
 * and Space keep their meaning on a focused control.
 *
 * The keys are letters one can remember (F flap, R raise it; H heat; B brakes; T trim, G its partner below) or
 * the digit that is the rate (0 stands still, 1 normal, 5 for a half).
 */
export type ActionKind = 'held' | 'pressed';

export type ActionGroup = 'Flying' | 'Levers' | 'Looking out' | 'Time' | 'Lesson';

export interface Action {
  readonly id: string;
  readonly label: string;
  readonly group: ActionGroup;
  readonly kind: ActionKind;
  /** `KeyboardEvent.key` values, letters in lower case; the first is the one that is shown. */
  readonly keys: readonly string[];
}

export const ACTIONS = [
  { id: 'nose-up', label: 'Pull: nose up', group: 'Flying', kind: 'held', keys: ['ArrowDown'] },
  { id: 'nose-down', label: 'Push: nose down', group: 'Flying', kind: 'held', keys: ['ArrowUp'] },
  { id: 'roll-left', label: 'Bank left', group: 'Flying', kind: 'held', keys: ['ArrowLeft'] },
  { id: 'roll-right', label: 'Bank right', group: 'Flying', kind: 'held', keys: ['ArrowRight'] },
  { id: 'rudder-left', label: 'Left foot', group: 'Flying', kind: 'held', keys: ['z'] },
  { id: 'rudder-right', label: 'Right foot', group: 'Flying', kind: 'held', keys: ['x'] },
  { id: 'let-go', label: 'Let go (while held)', group: 'Flying', kind: 'held', keys: ['l'] },
  { id: 'power-up', label: 'More power', group: 'Levers', kind: 'held', keys: ['w'] },
  { id: 'power-down', label: 'Less power', group: 'Levers', kind: 'held', keys: ['s'] },
  { id: 'flap-down', label: 'Flap, one stage more', group: 'Levers', kind: 'pressed', keys: ['f'] },
  { id: 'flap-up', label: 'Raise flap, one stage', group: 'Levers', kind: 'pressed', keys: ['r'] },
  { id: 'trim-up', label: 'Trim nose up', group: 'Levers', kind: 'held', keys: ['t'] },
  { id: 'trim-down', label: 'Trim nose down', group: 'Levers', kind: 'held', keys: ['g'] },
  { id: 'brake', label: 'Brakes (while held)', group: 'Levers', kind: 'held', keys: ['b'] },
  { id: 'carb-heat', label: 'Carburettor heat', group: 'Levers', kind: 'pressed', keys: ['h'] },
  { id: 'pump', label: 'Fuel pump', group: 'Levers', kind: 'pressed', keys: ['i'] },
  { id: 'gear', label: 'Undercarriage up, or down', group: 'Levers', kind: 'pressed', keys: ['u'] },
  { id: 'propeller-fine', label: 'Propeller finer, more rpm', group: 'Levers', kind: 'held', keys: ['k'] },
  {
    id: 'propeller-coarse',
    label: 'Propeller coarser, less rpm',
    group: 'Levers',
    kind: 'held',
    keys: ['j'],
  },
  { id: 'mixture-rich', label: 'Mixture richer', group: 'Levers', kind: 'held', keys: ['y'] },
  { id: 'mixture-lean', label: 'Mixture leaner', group: 'Levers', kind: 'held', keys: ['n'] },
  { id: 'look-left', label: 'Look further left', group: 'Looking out', kind: 'pressed', keys: ['q'] },
  { id: 'look-right', label: 'Look further right', group: 'Looking out', kind: 'pressed', keys: ['e'] },
  { id: 'look-ahead', label: 'Look ahead', group: 'Looking out', kind: 'pressed', keys: ['a'] },
  { id: 'look-leg', label: 'Look where the leg asks', group: 'Looking out', kind: 'pressed', keys: ['d'] },
  { id: 'show-plan', label: 'Show the plan (while held)', group: 'Looking out', kind: 'held', keys: ['p'] },
  { id: 'freeze', label: 'Freeze, or go on', group: 'Time', kind: 'pressed', keys: ['0', ' '] },
  { id: 'rate-half', label: 'Half rate', group: 'Time', kind: 'pressed', keys: ['5'] },
  { id: 'rate-1', label: 'Normal rate', group: 'Time', kind: 'pressed', keys: ['1'] },
  { id: 'rate-2', label: 'Double rate', group: 'Time', kind: 'pressed', keys: ['2'] },
  { id: 'rate-4', label: 'Four-fold rate', group: 'Time', kind: 'pressed', keys: ['4'] },
  { id: 'step-back', label: 'Back 10 seconds', group: 'Time', kind: 'pressed', keys: ['Backspace'] },
  { id: 'take-over', label: 'Take over, or hand over', group: 'Lesson', kind: 'pressed', keys: ['o'] },
  { id: 'tick-check', label: 'Tick the next check', group: 'Lesson', kind: 'pressed', keys: ['c'] },
  { id: 'make-call', label: 'Make the call', group: 'Lesson', kind: 'pressed', keys: ['v'] },
  { id: 'announce', label: 'Announcements off, or on', group: 'Lesson', kind: 'pressed', keys: ['m'] },
  { id: 'help', label: 'The keys', group: 'Lesson', kind: 'pressed', keys: ['?'] },
] as const satisfies readonly Action[];

export type ActionId = (typeof ACTIONS)[number]['id'];

export const ACTION_GROUPS: readonly ActionGroup[] = ['Flying', 'Levers', 'Looking out', 'Time', 'Lesson'];

const BY_ID = new Map<string, Action>(ACTIONS.map((action) => [action.id, action]));
const BY_KEY = new Map<string, ActionId>(
  ACTIONS.flatMap((action) => action.keys.map((key) => [key as string, action.id] as const)),
);

export const actionOf = (id: ActionId): Action => BY_ID.get(id) as Action;

/** The action that a `KeyboardEvent.key` asks for, or null; letters count in either case. */
export const actionForKey = (key: string): ActionId | null =>
  BY_KEY.get(key.length === 1 ? key.toLowerCase() : key) ?? null;

const SHOWN: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  ' ': 'Space',
};

/** A key as it is printed on the key. */
export const keyCap = (key: string): string => SHOWN[key] ?? (key.length === 1 ? key.toUpperCase() : key);

/** The value for `aria-keyshortcuts` (WAI-ARIA 1.2: space separated alternatives; the space bar is `Space`). */
export const ariaShortcut = (id: ActionId): string =>
  actionOf(id)
    .keys.map((key) => (key === ' ' ? 'Space' : key.length === 1 ? key.toUpperCase() : key))
    .join(' ');
