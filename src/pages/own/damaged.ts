import { create } from 'zustand';

/** Something kept in this browser that could not be read: set aside as it was, until the user has seen it. */
export interface Damaged {
  /** Where it lies now. */
  readonly key: string;
  /** Where it lay. */
  readonly from: string;
  /** An Error sentence. */
  readonly why: string;
  readonly text: string;
}

const PLACE = 'lapwing/damaged/';

/** Whether a key of the browser's storage is where things are set aside. */
export const isAside = (key: string): boolean => key.startsWith(PLACE);

const readDamaged = (): readonly Damaged[] => {
  const found: Damaged[] = [];
  try {
    for (const key of Object.keys(localStorage).sort()) {
      if (!isAside(key)) continue;
      const [from = '', why = '', ...text] = (localStorage.getItem(key) ?? '').split('\n');
      found.push({ key, from, why, text: text.join('\n') });
    }
  } catch {
    // Storage is refused: nothing was kept, so nothing is damaged.
  }
  return found;
};

/** What there was no room to move lies where it lay. */
const stuck = new Map<string, Damaged>();

export const useDamaged = create<{ readonly all: readonly Damaged[] }>()(() => ({ all: readDamaged() }));

/** What is set aside now, by whichever tab. */
export const showDamaged = (): void => useDamaged.setState({ all: [...readDamaged(), ...stuck.values()] });

/** Moves a text out of its place; false where there is no room, and it stays where it is. Told in either case. */
export const setAside = (from: string, text: string, why: string): boolean => {
  try {
    const written = `${from}\n${why.replaceAll('\n', ' ')}\n${text}`;
    let n = 1;
    // Another tab may have set the same aside
    while ((localStorage.getItem(`${PLACE}${n}`) ?? written) !== written) n += 1;
    localStorage.setItem(`${PLACE}${n}`, written);
    if (localStorage.getItem(from) === text) localStorage.removeItem(from);
    stuck.delete(from);
    showDamaged();
    return true;
  } catch {
    stuck.set(from, { key: from, from, why, text });
    showDamaged();
    return false;
  }
};

export const forgetDamaged = (key: string): void => {
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
  stuck.delete(key);
  showDamaged();
};
