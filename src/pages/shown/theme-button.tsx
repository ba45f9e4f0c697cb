import { changeSettings, useStore } from '../store.ts';

/** Between day and night colours; named by the one it leads to. */
export const ThemeButton = () => {
  const theme = useStore((s) => s.theme);
  const other = theme === 'night' ? 'day' : 'night';
  return (
    <button
      type="button"
      aria-label={other === 'day' ? 'Day colours' : 'Night colours'}
      onClick={() => changeSettings({ theme: other })}
    >
      {other}
    </button>
  );
};
