import { useEffect, useRef } from 'react';
import { type ActionId, ariaShortcut } from '../../../input/actions.ts';
import { useStore } from '../../store.ts';
import { ActionButton, HoldButton } from '../bar/buttons.tsx';
import { flightCommands } from '../run/commands.ts';
import { useInstruments } from '../scales/instruments.ts';
import { meters } from '../scales/meters.ts';
import { Arrow } from './arrow.tsx';

interface LeverProps {
  readonly lever: 'throttle' | 'trim';
  readonly name: string;
  readonly low: number;
  readonly more: ActionId;
  readonly less: ActionId;
}

const percentText = (lever: 'throttle' | 'trim', percent: number): string => {
  if (lever === 'throttle') return `${percent} %`;
  if (percent === 0) return 'middle';
  return `${Math.abs(percent)} % nose ${percent > 0 ? 'up' : 'down'}`;
};

/** A slider that follows the lever and moves it when dragged or keyed. */
const Lever = ({ lever, name, low, more, less }: LeverProps) => {
  const input = useRef<HTMLInputElement>(null);
  useEffect(
    () =>
      meters.addText((controls) => {
        const slider = input.current;
        if (!slider) return;
        const percent = Math.round(controls[lever] * 100);
        if (slider.dataset.dragged !== 'yes' && slider.value !== String(percent))
          slider.value = String(percent);
        slider.setAttribute('aria-valuetext', percentText(lever, percent));
      }),
    [lever],
  );
  return (
    <fieldset className={`lever lever-${lever}`} aria-label={name}>
      <span aria-hidden="true">{name}</span>
      <HoldButton action={less}>−</HoldButton>
      <input
        ref={input}
        type="range"
        min={low}
        max={100}
        step={1}
        defaultValue={0}
        aria-label={name}
        aria-keyshortcuts={`${ariaShortcut(more)} ${ariaShortcut(less)}`}
        onPointerDown={(event) => {
          event.currentTarget.dataset.dragged = 'yes';
        }}
        onPointerUp={(event) => {
          event.currentTarget.dataset.dragged = 'no';
        }}
        onInput={(event) => flightCommands()?.moveLever(lever, Number(event.currentTarget.value) / 100)}
      />
      <HoldButton action={more}>+</HoldButton>
    </fieldset>
  );
};

const FlapLever = () => {
  const stage = useStore((s) => s.flapStage);
  const instruments = useInstruments();
  const stages = instruments?.setting.aeroplane.flap.stages ?? [];
  return (
    <fieldset className="lever" aria-label="Flap lever">
      <span aria-hidden="true">Flap</span>
      <ActionButton action="flap-up" disabled={stage === 0}>
        −
      </ActionButton>
      <output className="lever-value" aria-label="Flap lever at">
        {stages[stage]?.deg ?? 0}°
      </output>
      <ActionButton action="flap-down" disabled={stage >= stages.length - 1}>
        +
      </ActionButton>
    </fieldset>
  );
};

const Stick = () => (
  <fieldset className="lever joined" aria-label="Stick">
    <HoldButton action="roll-left">
      <Arrow to="left" />
    </HoldButton>
    <HoldButton action="nose-down">
      <Arrow to="up" />
    </HoldButton>
    <HoldButton action="nose-up">
      <Arrow to="down" />
    </HoldButton>
    <HoldButton action="roll-right">
      <Arrow to="right" />
    </HoldButton>
  </fieldset>
);

/** All levers as labelled sliders and buttons: for fingers, for a mouse, and for programs. */
export const Levers = () => {
  const carbHeat = useStore((s) => s.carbHeat);
  const pump = useStore((s) => s.pump);
  const gearDown = useStore((s) => s.gearDown);
  const look = useStore((s) => s.look);
  const picture = useStore((s) => s.settings.picture);
  const instruments = useInstruments();
  const aeroplane = instruments?.setting.aeroplane;
  return (
    <section
      className={`levers ${aeroplane?.equipment.propellerLever ? 'levers-many' : aeroplane?.equipment.mixture ? 'levers-more' : ''}`}
      aria-label="Levers"
    >
      <Stick />
      <fieldset className="lever" aria-label="Feet">
        <span aria-hidden="true">Feet</span>
        <span className="joined">
          <HoldButton action="rudder-left">‹</HoldButton>
          <HoldButton action="rudder-right">›</HoldButton>
        </span>
      </fieldset>
      <Lever lever="throttle" name="Power" low={0} more="power-up" less="power-down" />
      <FlapLever />
      <Lever lever="trim" name="Trim" low={-100} more="trim-up" less="trim-down" />
      {aeroplane?.engine.carburettor !== false ? (
        <ActionButton action="carb-heat" pressed={carbHeat} label="Carb. heat: carburettor heat hot">
          carb. heat
        </ActionButton>
      ) : null}
      {aeroplane?.equipment.pump ? (
        <ActionButton action="pump" pressed={pump}>
          pump
        </ActionButton>
      ) : null}
      {aeroplane?.undercarriage.retractable ? (
        <ActionButton action="gear" pressed={gearDown} label="Gear: undercarriage down">
          gear
        </ActionButton>
      ) : null}
      {aeroplane?.equipment.propellerLever ? (
        <fieldset className="lever joined" aria-label="Propeller lever">
          <HoldButton action="propeller-coarse" label="rpm −: propeller coarser">
            rpm −
          </HoldButton>
          <HoldButton action="propeller-fine" label="+: propeller finer, more rpm">
            +
          </HoldButton>
        </fieldset>
      ) : null}
      {aeroplane?.equipment.mixture ? (
        <fieldset className="lever joined" aria-label="Mixture">
          <HoldButton action="mixture-lean" label="lean: mixture leaner">
            lean
          </HoldButton>
          <HoldButton action="mixture-rich" label="rich: mixture richer">
            rich
          </HoldButton>
        </fieldset>
      ) : null}
      <HoldButton action="brake">brakes</HoldButton>
      <HoldButton action="let-go">let go</HoldButton>
      {picture === 'cockpit-with-plan' ? <HoldButton action="show-plan">plan</HoldButton> : null}
      <fieldset className="lever joined" aria-label="Look">
        <ActionButton action="look-left">‹</ActionButton>
        <ActionButton action="look-ahead" pressed={look === 0}>
          ahead
        </ActionButton>
        <ActionButton action="look-leg" pressed={look === 'leg'} label="By leg: look where the leg asks">
          by leg
        </ActionButton>
        <ActionButton action="look-right">›</ActionButton>
      </fieldset>
    </section>
  );
};
