import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/base.css';
import './styles/fly.css';
import './styles/sheets.css';

import { Pages } from './pages.tsx';
import { followTheme } from './shown/theme.ts';

/** Puts the page into its element; nothing drawn with WebGL is loaded before this has been painted. */
export const mount = (element: HTMLElement): void => {
  followTheme();
  createRoot(element).render(
    <StrictMode>
      <Pages />
    </StrictMode>,
  );
};
