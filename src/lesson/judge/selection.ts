/** Whether a list of names picks this row; a name that ends in `*` stands for all that begin so. */
export const selects = (names: readonly string[], rule: string): boolean =>
  names.some((name) => (name.endsWith('*') ? rule.startsWith(name.slice(0, -1)) : name === rule));
