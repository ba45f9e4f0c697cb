import { type PointerEvent, useEffect, useRef, useState } from 'react';
import { useStore } from '../../store.ts';
import { flightCommands } from '../run/commands.ts';
import { meters } from '../scales/meters.ts';

const clamp = (x: number): number => Math.min(1, Math.max(-1, x));

/** Whether fingers are what this screen is worked with. */
const useTouch = (): boolean => {
  const touch = useStore((s) => s.settings.touch);
  const [coarse, setCoarse] = useState(() => matchMedia('(pointer: coarse)').matches);
  useEffect(() => {
    const query = matchMedia('(pointer: coarse)');
    const follow = () => setCoarse(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return touch === 'always' || (touch === 'by-screen' && coarse);
};

/** A stick under a finger: it springs back when the finger lifts. Towards the pilot, which is down, pulls. */
const TouchStick = () => {
  const pad = useRef<HTMLDivElement>(null);
  const knob = useRef<HTMLDivElement>(null);
  const put = (roll: number, pitch: number, held: boolean) => {
    flightCommands()?.holdStick(held ? { pitch, roll } : null);
    if (knob.current) knob.current.style.translate = `${roll * 55}px ${pitch * 55}px`;
  };
  const follow = (event: PointerEvent<HTMLDivElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    const roll = clamp((event.clientX - left - width / 2) / (width / 2));
    const pitch = clamp((event.clientY - top - height / 2) / (height / 2));
    put(roll, pitch, true);
  };
  const letGo = () => put(0, 0, false);
  return (
    <div
      ref={pad}
      className="touch-stick"
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        follow(event);
      }}
      onPointerMove={follow}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onLostPointerCapture={letGo}
    >
      <div ref={knob} className="touch-knob" />
    </div>
  );
};

/** The power lever, long enough for a thumb: up is forward. */
const TouchPower = () => {
  const knob = useRef<HTMLDivElement>(null);
  useEffect(
    () =>
      meters.addText((controls) => {
        if (knob.current) knob.current.style.bottom = `${controls.throttle * 84}%`;
      }),
    [],
  );
  const follow = (event: PointerEvent<HTMLDivElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const { bottom, height } = event.currentTarget.getBoundingClientRect();
    const to = Math.min(1, Math.max(0, (bottom - event.clientY - 0.08 * height) / (0.84 * height)));
    flightCommands()?.moveLever('throttle', to);
    if (knob.current) knob.current.style.bottom = `${to * 84}%`;
  };
  return (
    <div
      className="touch-power"
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        follow(event);
      }}
      onPointerMove={follow}
    >
      <div ref={knob} className="touch-knob" />
    </div>
  );
};

/**
 * Stick and power for two thumbs, over the lower corners. Everything they do the labelled buttons and sliders below
 * do too: for who cannot see them they are not there.
 */
export const Touch = () =>
  useTouch() ? (
    <div className="touch">
      <TouchPower />
      <TouchStick />
    </div>
  ) : null;
