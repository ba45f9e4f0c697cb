import type { ReactNode } from 'react';
import type { ViewName } from '../../../views/frame.ts';

interface PanelProps {
  readonly name: string;
  readonly title: string;
  readonly aside?: ReactNode;
  readonly children?: ReactNode;
  /** The view drawn in its body. */
  readonly view?: ViewName;
  /** What a view shows, for those who cannot see it. */
  readonly says?: string;
  /** The view draws the title itself; here it is only heard. */
  readonly titleDrawn?: boolean;
}

/** A framed part of the page: a title row and a body; the body of a view is a hole through to the canvas. */
export const Panel = ({ name, title, aside, children, view, says, titleDrawn }: PanelProps) => (
  <section className={`panel panel-${name}`} aria-labelledby={`title-${name}`}>
    <div className={titleDrawn ? 'only-heard' : 'panel-head'}>
      <h2 id={`title-${name}`}>{title}</h2>
      {aside}
    </div>
    {view ? (
      <div className="view" data-view={view} role="img" aria-label={says ?? title}>
        {children}
      </div>
    ) : (
      children
    )}
  </section>
);
