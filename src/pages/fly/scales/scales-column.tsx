import { useEffect, useRef } from 'react';
import type { Scale, ScaleSetting } from '../../../views/scales/scale.ts';
import { useStore } from '../../store.ts';
import { useProcedures } from '../card/shown-procedures.ts';
import { type Instruments, useInstruments } from './instruments.ts';
import { fractionOf, meters } from './meters.ts';

const percent = (value: number, scale: Scale, setting: ScaleSetting): string =>
  `${(fractionOf(value, scale.low(setting), scale.high(setting)) * 100).toFixed(2)}%`;

/** What stands beside a scale whose own name is too long for the column; the full name is still what is heard. */
const BESIDE: Readonly<Record<string, string>> = {
  altitude: 'Altitude',
  'vertical-speed': 'Vert. speed',
  distance: 'To threshold',
  offset: 'Off centreline',
};

/** The drawn part of a scale that stands still: arcs, ticks and marks. */
const Ribbon = ({ scale, setting }: { readonly scale: Scale; readonly setting: ScaleSetting }) => (
  <div className="ribbon">
    {scale.arcs(setting).map((arc) => {
      const left = fractionOf(arc.from, scale.low(setting), scale.high(setting));
      const right = fractionOf(arc.to, scale.low(setting), scale.high(setting));
      const style = {
        left: `${left * 100}%`,
        width: `${(right - left) * 100}%`,
        background: `var(--${arc.colour.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)})`,
      };
      return <i key={arc.means} className={`arc arc-${arc.row}`} style={style} title={arc.means} />;
    })}
    {scale.ticks(setting).map((tick) => (
      <i key={tick.at} className="tick" style={{ left: percent(tick.at, scale, setting) }}>
        {tick.text}
      </i>
    ))}
    {scale.marks(setting).map((mark) => (
      <i
        key={mark.means}
        className="mark"
        title={mark.means}
        style={{
          left: percent(mark.at, scale, setting),
          background: `var(--${mark.colour.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)})`,
        }}
      />
    ))}
  </div>
);

/** What the altimeter is set to: not the QNH where it was left elsewhere. */
const useSubscale = ({ weather }: ScaleSetting): string => {
  const hpa = useProcedures((s) => (s.on ? s.subscaleHpa : null));
  return (hpa ?? weather.qnhHpa).toFixed(0);
};

const Meter = ({ scale, setting }: { readonly scale: Scale; readonly setting: ScaleSetting }) => {
  const meter = useRef<HTMLDivElement>(null);
  const text = useRef<HTMLSpanElement>(null);
  const pointer = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!meter.current || !text.current) return;
    return meters.add({ scale, meter: meter.current, text: text.current, pointer: pointer.current });
  }, [scale]);
  const low = scale.low(setting);
  const high = scale.high(setting);
  const setTo = useSubscale(setting);
  const title = scale.id === 'altitude' ? `Altitude, set to ${setTo} hPa` : scale.title(setting);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a <meter> cannot hold the ribbon, its pointer and its text
    <div
      ref={meter}
      className={scale.ribbon ? 'scale' : 'scale scale-plain'}
      role="meter"
      data-meter={scale.id}
      aria-label={title}
      aria-valuemin={low}
      aria-valuemax={high > low ? high : undefined}
      aria-valuenow={low}
      aria-valuetext={`no ${scale.name} yet`}
    >
      <span className="scale-name" title={title}>
        {BESIDE[scale.id] ?? title}
        {scale.id === 'altitude' ? <span className="subscale-shown"> {setTo}</span> : null}
      </span>
      <span className="scale-text" ref={text}>
        --
      </span>
      {scale.ribbon ? (
        <>
          <div className="pointer" ref={pointer} />
          <Ribbon scale={scale} setting={setting} />
        </>
      ) : null}
    </div>
  );
};

const shownIn = (instruments: Instruments, whiteboard: boolean, ribbon: boolean): readonly Scale[] =>
  instruments.scales.filter((scale) => scale.ribbon === ribbon && (whiteboard || scale.inCockpit));

/** Every value beside the views, as ribbons and as meters; the cockpit picture keeps what a cockpit has. */
export const ScalesColumn = () => {
  const whiteboard = useStore((s) => s.settings.picture === 'whiteboard');
  const instruments = useInstruments();
  return (
    <section className="panel panel-scales" aria-labelledby="title-scales">
      <h2 id="title-scales" className="only-heard">
        Scales
      </h2>
      {instruments ? (
        <>
          {shownIn(instruments, whiteboard, true).map((scale) => (
            <Meter key={scale.id} scale={scale} setting={instruments.setting} />
          ))}
          <div className="plain-scales">
            {shownIn(instruments, whiteboard, false).map((scale) => (
              <Meter key={scale.id} scale={scale} setting={instruments.setting} />
            ))}
          </div>
        </>
      ) : (
        <p className="soft empty">The scales come alive with the aeroplane.</p>
      )}
    </section>
  );
};
