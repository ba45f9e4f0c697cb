/** Styles of type in the drawn views, CSS pixels. */
export const TYPE = {
  small: { sizePx: 11.5, weight: '400' },
  label: { sizePx: 13, weight: '400' },
  strong: { sizePx: 13, weight: '600' },
  large: { sizePx: 30, weight: '700' },
} as const;
export type TypeStyle = keyof typeof TYPE;
