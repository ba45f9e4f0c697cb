let asked = false;

/** Asks the browser, once a visit, to keep our data when it needs room; called when there is something to lose. */
export const askToPersist = (): void => {
  if (asked || typeof navigator === 'undefined' || !navigator.storage?.persist) return;
  asked = true;
  navigator.storage
    .persisted()
    .then((already) => already || navigator.storage.persist())
    // Refused: the logbook works all the same.
    .catch(() => false);
};

/** How much is taken and how much there may be; null where the browser does not say. */
export const spaceHere = async (): Promise<{
  readonly usedBytes: number;
  readonly mostBytes: number;
} | null> => {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return usage === undefined || quota === undefined ? null : { usedBytes: usage, mostBytes: quota };
  } catch {
    return null;
  }
};
