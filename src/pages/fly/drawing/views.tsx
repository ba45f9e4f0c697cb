import { changeSettings, useStore } from '../../store.ts';
import { useInstruments } from '../scales/instruments.ts';
import { LegMarksSoFar } from './leg-marks.tsx';
import { Panel } from './panel.tsx';

const PLAN_MODES = ['runway-up', 'north-up', 'track-up'] as const;

export const PlanPanel = () => {
  const mode = useStore((s) => s.settings.planMode);
  return (
    <Panel
      name="plan"
      title="Plan"
      view="plan"
      says="Plan of the circuit with runway, legs, wind and the path flown; heading, track and position stand in the scales"
      aside={
        <span className="joined small">
          {PLAN_MODES.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={mode === each}
              onClick={() => changeSettings({ planMode: each })}
            >
              {each.replace('-', ' ')}
            </button>
          ))}
        </span>
      }
    />
  );
};

export const ProfilePanel = () => (
  <Panel
    name="profile"
    title="Profile"
    aside={<LegMarksSoFar />}
    view="profile"
    says="Height against distance flown, on base and final against distance to the threshold with the sectors of the slope lights"
  />
);

export const WindowPanel = () => {
  const looking = useStore((s) => s.looking);
  return (
    <Panel
      name="window"
      title="Window"
      view="window"
      says={`What the pilot sees, looking ${looking}`}
      aside={<span className="soft">{looking}</span>}
    />
  );
};

export const LightsPanel = () => {
  const letters = useStore((s) => s.lights);
  const instruments = useInstruments();
  const drawn = useStore((s) => s.graphics !== 'none');
  const lights = instruments?.setting.runway.lights ?? null;
  const kind = lights ? `${lights.kind} ${instruments?.lightsAngle ?? ''}` : 'none here';
  return (
    <Panel
      name="lights"
      title="Slope lights"
      view="lights"
      titleDrawn={drawn}
      says={lights ? `Slope lights, outermost first: ${letters}` : 'No slope lights on this runway'}
      aside={
        <p>
          {kind} <span data-text="slope-lights">{letters}</span>
        </p>
      }
    />
  );
};
