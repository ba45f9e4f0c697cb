import { PALETTES, paletteVariables, type Theme } from '../../views/palette.ts';
import { useStore } from '../store.ts';

const DARK = '(prefers-color-scheme: dark)';

/** The theme chosen, or the system's while nothing has been chosen. */
export const themeNow = (): Theme => {
  const { theme } = useStore.getState().settings;
  if (theme !== 'system') return theme;
  return matchMedia(DARK).matches ? 'night' : 'day';
};

const apply = (): void => {
  const theme = themeNow();
  const root = document.documentElement;
  root.dataset.theme = theme;
  root.style.colorScheme = theme === 'night' ? 'dark' : 'light';
  for (const [name, value] of paletteVariables(PALETTES[theme])) root.style.setProperty(name, value);
  if (useStore.getState().theme !== theme) useStore.setState({ theme });
};

/** Sets the colours as custom properties, now and whenever the choice or the system's wish changes. */
export const followTheme = (): void => {
  apply();
  matchMedia(DARK).addEventListener('change', apply);
  useStore.subscribe((now, before) => {
    if (now.settings.theme !== before.settings.theme) apply();
  });
};
