import { type ActionId, setKeys, withKey } from '../../../input/actions.ts';
import { changeSettings, useStore } from '../../store.ts';

setKeys(useStore.getState().settings.keys);
useStore.subscribe((now, before) => {
  if (now.settings.keys !== before.settings.keys) setKeys(now.settings.keys);
});

/** Gives a key to an action and keeps it; false for a key that must keep its meaning in the page. */
export const giveKey = (action: ActionId, key: string): boolean => {
  const keys = withKey(useStore.getState().settings.keys, action, key);
  if (keys === null) return false;
  changeSettings({ keys: { ...keys } as Record<string, string[]> });
  return true;
};

/** All keys as the table has them. */
export const resetKeys = (): void => changeSettings({ keys: {} });
