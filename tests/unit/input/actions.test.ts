// Keys by action, and keys of one's own. The names of keys: UI Events KeyboardEvent key Values (W3C); shortcuts as
// WAI-ARIA 1.2 writes them.
import { afterEach, describe, expect, it } from 'vitest';
import {
  ACTIONS,
  actionForKey,
  ariaShortcut,
  isFreeKey,
  keysOf,
  setKeys,
  withKey,
} from '../../../src/input/actions.ts';

afterEach(() => setKeys({}));

describe('the table of keys', () => {
  it('gives no key to two actions', () => {
    const keys = ACTIONS.flatMap((action) => action.keys.map(String));
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('takes no key from the browser or from a focused control', () => {
    for (const { keys } of ACTIONS) for (const key of keys) expect(isFreeKey(key)).toBe(true);
    for (const key of ['Tab', 'Enter', 'Escape', 'F5', 'Control']) expect(isFreeKey(key)).toBe(false);
  });
});

describe('a changed key', () => {
  it('asks for its action from then on, in either case, and the old one for nothing', () => {
    setKeys(withKey({}, 'brake', ';') ?? {});
    expect(actionForKey(';')).toBe('brake');
    expect(actionForKey('b')).toBeNull();
    expect(ariaShortcut('brake')).toBe(';');
    setKeys(withKey({}, 'brake', 'Delete') ?? {});
    expect(actionForKey('Delete')).toBe('brake');
  });

  it('that another action had changes places with it', () => {
    const changed = withKey({}, 'brake', 'F'.toLowerCase()) ?? {};
    setKeys(changed);
    expect(actionForKey('F')).toBe('brake');
    expect(keysOf('flap-down')).toEqual(['b']);
  });

  it('leaves an action with two keys the other one', () => {
    const changed = withKey({}, 'brake', ' ') ?? {};
    setKeys(changed);
    expect(keysOf('freeze')).toEqual(['0']);
    expect(actionForKey(' ')).toBe('brake');
  });

  it('may not be one that a page needs', () => {
    expect(withKey({}, 'brake', 'Tab')).toBeNull();
    expect(withKey({}, 'brake', 'F11')).toBeNull();
  });
});
