/** The last entry of a list for which `holds`, or null. */
export const lastWhere = <T>(list: readonly T[], holds: (entry: T) => boolean): T | null => {
  for (let i = list.length - 1; i >= 0; i -= 1) {
    const entry = list[i] as T;
    if (holds(entry)) return entry;
  }
  return null;
};
