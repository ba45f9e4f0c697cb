import { type MouseEvent, useEffect, useRef } from 'react';
import { useStore } from '../store.ts';
import { Said, States } from './bar/states.tsx';
import { TopBar } from './bar/top-bar.tsx';
import { SequenceCard } from './card/sequence-card.tsx';
import { LightsPanel, PlanPanel, ProfilePanel, WindowPanel } from './drawing/views.tsx';
import { Levers } from './levers/levers.tsx';
import { Touch } from './levers/touch.tsx';
import { loadFlight } from './run/load.ts';
import { ScalesColumn } from './scales/scales-column.tsx';
import { SHEETS } from './sheets/sheets.tsx';

/**
 * After a mouse or a finger the focus goes back to the page, so that Space and the arrows fly again; whoever
 * moves by Tab keeps it (a click made by a key has no `detail`).
 */
const giveKeysBack = (event: MouseEvent): void => {
  if (event.detail > 0 && document.activeElement instanceof HTMLElement) document.activeElement.blur();
};

/** The flying page: panels over one canvas, levers below, sheets above. */
export const FlyPage = () => {
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useStore((s) => s.settings.picture);
  const lead = useStore((s) => s.settings.lead);
  const planHeld = useStore((s) => s.planHeld);
  const sheet = useStore((s) => s.sheet);
  useEffect(() => (canvas.current ? loadFlight(canvas.current) : undefined), []);
  const Over = sheet ? SHEETS[sheet] : null;
  const withPlan = picture === 'whiteboard' || (picture === 'cockpit-with-plan' && planHeld);
  return (
    <>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: it only gives the keys back after a mouse or a finger */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the same */}
      <div
        className="fly"
        data-picture={picture}
        data-lead={lead}
        data-plan={withPlan ? 'shown' : 'away'}
        onClick={giveKeysBack}
      >
        <canvas ref={canvas} className="stage" />
        <TopBar />
        <main className="panels">
          {withPlan ? <PlanPanel /> : null}
          <WindowPanel />
          <LightsPanel />
          <SequenceCard />
          <ScalesColumn />
          {picture === 'whiteboard' ? <ProfilePanel /> : null}
          <States />
          <Said />
          <Touch />
        </main>
        <Levers />
      </div>
      {Over ? <Over /> : null}
    </>
  );
};
