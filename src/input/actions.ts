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
  { id: 'say-1', label: 'Say the first wording', group: 'Lesson', kind: 'pressed', keys: ['7'] },
  { id: 'say-2', label: 'Say the second', group: 'Lesson', kind: 'pressed', keys: ['8'] },
  { id: 'say-3', label: 'Say the third', group: 'Lesson', kind: 'pressed', keys: ['9'] },
  { id: 'subscale-down', label: 'Altimeter, 1 hPa less', group: 'Lesson', kind: 'pressed', keys: [','] },
  { id: 'subscale-up', label: 'Altimeter, 1 hPa more', group: 'Lesson', kind: 'pressed', keys: ['.'] },
  {
    id: 'announce',
    label: 'Coach and announcements silent, or not',
    group: 'Lesson',
    kind: 'pressed',
    keys: ['m'],
  },
  { id: 'help', label: 'The keys', group: 'Lesson', kind: 'pressed', keys: ['?'] },
] as const satisfies readonly Action[];

export type ActionId = (typeof ACTIONS)[number]['id'];

export const ACTION_GROUPS: readonly ActionGroup[] = ['Flying', 'Levers', 'Looking out', 'Time', 'Lesson'];

const BY_ID = new Map<string, Action>(ACTIONS.map((action) => [action.id, action]));

export const actionOf = (id: ActionId): Action => BY_ID.get(id) as Action;

/** Keys that stand otherwise than in the table, by action. */
export type ChangedKeys = Readonly<Record<string, readonly string[]>>;

const keysWith = (changed: ChangedKeys): ReadonlyMap<ActionId, readonly string[]> =>
  new Map(ACTIONS.map(({ id, keys }) => [id, changed[id] ?? keys]));

const actionsWith = (all: ReadonlyMap<ActionId, readonly string[]>): ReadonlyMap<string, ActionId> =>
  new Map([...all].flatMap(([id, keys]) => keys.map((key) => [key, id] as const)));

let keysNow = keysWith({});
let actionsNow = actionsWith(keysNow);

/** From now on these keys ask for these actions; what is not named is as the table has it. */
export const setKeys = (changed: ChangedKeys): void => {
  keysNow = keysWith(changed);
  actionsNow = actionsWith(keysNow);
};

/** The keys of an action now; the first is the one that is shown. */
export const keysOf = (id: ActionId): readonly string[] => keysNow.get(id) ?? [];

/** As the table writes keys: letters in lower case. */
export const keyName = (key: string): string => (key.length === 1 ? key.toLowerCase() : key);

/** The action that a `KeyboardEvent.key` asks for, or null; letters count in either case. */
export const actionForKey = (key: string): ActionId | null => actionsNow.get(keyName(key)) ?? null;

/** Keys that must keep their meaning in a page. */
const NOT_FREE: ReadonlySet<string> = new Set([
  'Tab',
  'Enter',
  'Escape',
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'ContextMenu',
  'Dead',
  'Process',
  'Unidentified',
]);

/** Whether a key may be given to an action; function keys stay the browser's. */
export const isFreeKey = (key: string): boolean => !NOT_FREE.has(key) && !/^F\d+$/.test(key);

/**
 * Gives `key` to an action; the action that had it takes the first key that was given up. Null for a key that must
 * keep its meaning.
 */
export const withKey = (changed: ChangedKeys, id: ActionId, key: string): ChangedKeys | null => {
  if (!isFreeKey(key)) return null;
  const name = keyName(key);
  const all = keysWith(changed);
  const before = all.get(id) ?? [];
  const had = actionsWith(all).get(name);
  if (had === id) return changed;
  if (had === undefined) return { ...changed, [id]: [name] };
  const theirs = (all.get(had) ?? []).filter((each) => each !== name);
  const given = before[0];
  return { ...changed, [id]: [name], [had]: given === undefined || theirs.length > 0 ? theirs : [given] };
};

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
  keysOf(id)
    .map((key) => (key === ' ' ? 'Space' : key.length === 1 ? key.toUpperCase() : key))
    .join(' ');
