import { changeSettings, useStore } from '../../store.ts';
import { tellShown } from '../run/telling.ts';

/** The level to go back to. */
let before: 'talked-through' | 'reminded' = 'reminded';

/** One key: coach and announcements say nothing, or as much as before. */
export const toggleSilence = (): void => {
  const { coach, announce } = useStore.getState().settings;
  const loud = coach !== 'silent' || announce;
  if (coach !== 'silent') before = coach;
  const next = loud ? 'silent' : before;
  changeSettings({ coach: next, announce: !loud });
  tellShown('coach', next);
  useStore.setState({ notice: loud ? 'Nothing more is said.' : 'Coach and announcements speak again.' });
};
