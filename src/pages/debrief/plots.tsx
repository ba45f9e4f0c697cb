import { memo, type PointerEvent, useMemo, useRef } from 'react';
import type { Mark } from '../../formats/attempt.ts';
import { clockText, fixed, NO_VALUE } from '../../units/format.ts';
import { type Cursor, useCursor } from './cursor.ts';
import { pathOf } from './pieces.ts';
import { type Replayed, type Sample, sampleAt } from './replayed.ts';

/** One strip: what it shows, with how many decimals, and the least room its scale takes. */
interface Strip {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly of: (s: Sample) => number;
  readonly least: readonly [number, number];
}

const STRIPS: readonly Strip[] = [
  { name: 'altitude', unit: 'ft', decimals: 0, of: (s) => s.altitudeFt, least: [0, 500] },
  { name: 'airspeed', unit: 'kt', decimals: 0, of: (s) => s.iasKt, least: [40, 90] },
  { name: 'bank', unit: '°', decimals: 0, of: (s) => s.bankDeg, least: [-30, 30] },
  { name: 'power', unit: 'rpm', decimals: 0, of: (s) => s.powerRpm, least: [600, 2400] },
  { name: 'held pressure', unit: '', decimals: 1, of: (s) => s.heldDegKpa, least: [-2, 2] },
  { name: 'off the slope', unit: '°', decimals: 1, of: (s) => s.slopeOffDeg, least: [-1, 1] },
  { name: 'off the centreline', unit: 'm', decimals: 0, of: (s) => s.centrelineM, least: [-30, 30] },
  { name: 'flap', unit: '°', decimals: 0, of: (s) => s.flapDeg, least: [0, 30] },
];

const WIDTH = 640;
const LEFT = 118;
const RIGHT = WIDTH - 6;
const STRIP = 40;
const MARKS = 22;
const AXIS = 18;
const HEIGHT = STRIPS.length * STRIP + MARKS + AXIS;

interface PlotsProps {
  readonly replays: readonly Replayed[];
  readonly marks: readonly Mark[];
  readonly cursor: Cursor;
}

const rangeOf = (strip: Strip, replays: readonly Replayed[]): readonly [number, number] => {
  let [low, high] = strip.least;
  for (const replayed of replays) {
    for (const sample of replayed.samples) {
      const value = strip.of(sample);
      if (Number.isNaN(value)) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  return [low, high];
};

const MARK_SHAPES: Readonly<Record<Mark['kind'], string>> = {
  check: 'M-4 0 L-1 4 L5 -5',
  call: 'M-4 -4 H4 V2 H0 L-3 5 V2 H-4 Z',
  look: 'M-5 0 Q0 -6 5 0 Q0 6 -5 0 M-1.5 0 A1.5 1.5 0 1 0 1.5 0 A1.5 1.5 0 1 0 -1.5 0',
  coach: 'M0 -5 V1 M0 4 V5',
  note: 'M-3 -4 H3 V4 H-3 Z',
};

const Still = memo(({ replays, marks }: Omit<PlotsProps, 'cursor'>) => {
  const [replayed] = replays as [Replayed];
  const endS = Math.max(1, ...replays.map((each) => each.endS));
  const x = (timeS: number): number => LEFT + (timeS / endS) * (RIGHT - LEFT);
  const every = [15, 30, 60, 120, 300, 600].find((s) => endS / s <= 9) ?? 1200;
  const ticks = Array.from({ length: Math.floor(endS / every) + 1 }, (_, i) => i * every);
  const bottom = STRIPS.length * STRIP + MARKS;
  return (
    <g>
      {ticks.map((timeS) => (
        <g key={timeS}>
          <line className="debrief-hair" x1={x(timeS)} x2={x(timeS)} y1={0} y2={bottom} />
          <text className="debrief-small" x={x(timeS)} y={HEIGHT - 4} textAnchor="middle">
            {clockText(timeS)}
          </text>
        </g>
      ))}
      {STRIPS.map((strip, i) => {
        const [low, high] = rangeOf(strip, replays);
        const top = i * STRIP + 4;
        const y = (value: number): number => top + (1 - (value - low) / (high - low)) * (STRIP - 8);
        return (
          <g key={strip.name}>
            <line className="debrief-rule" x1={0} x2={RIGHT} y1={(i + 1) * STRIP} y2={(i + 1) * STRIP} />
            {low < 0 && high > 0 ? (
              <line className="debrief-hair" x1={LEFT} x2={RIGHT} y1={y(0)} y2={y(0)} />
            ) : null}
            {[...replays].reverse().map((each) => (
              <path
                key={each === replayed ? 'own' : 'other'}
                className={each === replayed ? 'plot-own' : 'plot-other'}
                d={pathOf(
                  each.samples,
                  (s) => x(s.timeS),
                  (s) => y(strip.of(s)),
                )}
              />
            ))}
          </g>
        );
      })}
      <text className="debrief-small" x={4} y={STRIPS.length * STRIP + 15}>
        checks, calls, looks
      </text>
      {marks.map((mark, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: marks of one flight never change places
          key={i}
          className={`mark mark-${mark.kind}`}
          d={MARK_SHAPES[mark.kind]}
          transform={`translate(${x(mark.atS).toFixed(1)} ${STRIPS.length * STRIP + MARKS / 2})`}
        >
          <title>{`${clockText(mark.atS)} ${mark.kind}: ${mark.text}`}</title>
        </path>
      ))}
    </g>
  );
});

const valueText = (strip: Strip, value: number): string =>
  Number.isNaN(value) ? NO_VALUE : `${fixed(value, strip.decimals)}${strip.unit === '°' ? '°' : ''}`;

/** Everything over time, one strip each, with the cursor through all of them; a press or a drag moves it. */
export const Plots = ({ replays, marks, cursor }: PlotsProps) => {
  const timeS = useCursor(cursor);
  const drawing = useRef<SVGSVGElement>(null);
  const [replayed, other] = replays as [Replayed, Replayed?];
  const endS = useMemo(() => Math.max(1, ...replays.map((each) => each.endS)), [replays]);
  const now = sampleAt(replayed, timeS);
  const then = other ? sampleAt(other, timeS) : null;
  const x = LEFT + (timeS / endS) * (RIGHT - LEFT);
  const move = (event: PointerEvent) => {
    const box = drawing.current?.getBoundingClientRect();
    if (!box || (event.type === 'pointermove' && event.buttons === 0)) return;
    const at = ((event.clientX - box.left) / box.width) * WIDTH;
    cursor.set(((at - LEFT) / (RIGHT - LEFT)) * endS);
  };
  return (
    <svg
      ref={drawing}
      className="plots"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Over time, at ${clockText(timeS)}: ${STRIPS.map((strip) => `${strip.name} ${valueText(strip, strip.of(now))} ${strip.unit}`).join(', ')}`}
      onPointerDown={move}
      onPointerMove={move}
    >
      <Still replays={replays} marks={marks} />
      {STRIPS.map((strip, i) => (
        <g key={strip.name}>
          <text className="plot-name" x={4} y={i * STRIP + 15}>
            {strip.name} <tspan className="debrief-small">{strip.unit === '°' ? '' : strip.unit}</tspan>
          </text>
          <text className="plot-value" x={4} y={i * STRIP + 33}>
            {valueText(strip, strip.of(now))}
            {then ? (
              <tspan className="plot-then" dx={8}>
                {valueText(strip, strip.of(then))}
              </tspan>
            ) : null}
          </text>
        </g>
      ))}
      <line className="plot-cursor" x1={x} x2={x} y1={0} y2={HEIGHT - AXIS} />
    </svg>
  );
};
