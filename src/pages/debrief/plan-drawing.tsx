import { memo, useMemo } from 'react';
import { acrossM, alongM } from '../../aerodrome/runway.ts';
import { degFromRad, mFromNmi } from '../../units/conversions.ts';
import { type Cursor, useCursor } from './cursor.ts';
import { pathOf, piecesOf } from './pieces.ts';
import { type Replayed, type Sample, sampleAt } from './replayed.ts';

const WIDTH = 420;
const HEIGHT = 330;
const MARGIN = 22;

interface Frame {
  readonly x: (across: number) => number;
  readonly y: (along: number) => number;
  readonly unitsPerM: number;
}

const frameOf = (replays: readonly Replayed[]): Frame => {
  const { plan, model } = replays[0] as Replayed;
  const points = [
    ...plan.path.map((p) => [
      acrossM(model.runway, p.eastM, p.northM),
      alongM(model.runway, p.eastM, p.northM),
    ]),
    ...replays.flatMap((replayed) => replayed.samples.map((s) => [s.acrossM, s.alongM])),
  ] as [number, number][];
  let [left, right, low, high] = [0, 0, 0, 0];
  for (const [across, along] of points) {
    left = Math.min(left, across);
    right = Math.max(right, across);
    low = Math.min(low, along);
    high = Math.max(high, along);
  }
  const unitsPerM = Math.min((WIDTH - 2 * MARGIN) / (right - left), (HEIGHT - 2 * MARGIN) / (high - low));
  return {
    x: (across) => WIDTH / 2 + (across - (left + right) / 2) * unitsPerM,
    y: (along) => HEIGHT / 2 - (along - (low + high) / 2) * unitsPerM,
    unitsPerM,
  };
};

const x = (frame: Frame) => (s: Sample) => frame.x(s.acrossM);
const y = (frame: Frame) => (s: Sample) => frame.y(s.alongM);

/** What does not move: circuit as planned, runway, wind, the paths flown. */
const Still = memo(({ replays, frame }: { readonly replays: readonly Replayed[]; readonly frame: Frame }) => {
  const [replayed, other] = replays as [Replayed, Replayed?];
  const { plan, model } = replayed;
  const { runway, scenario } = model;
  const { weather } = scenario;
  const planned = plan.path
    .map(
      (p) =>
        `${frame.x(acrossM(runway, p.eastM, p.northM)).toFixed(1)},${frame.y(alongM(runway, p.eastM, p.northM)).toFixed(1)}`,
    )
    .join(' ');
  const half = Math.max(runway.widthM / 2, 3 / frame.unitsPerM);
  const windDeg = weather.windFromDegM + 180 + degFromRad(runway.variationRad - runway.headingRadT);
  const mile = mFromNmi(0.5) * frame.unitsPerM;
  const windX = plan.side === -1 ? WIDTH - 40 : 40;
  return (
    <g>
      <polyline className="line-planned" points={planned} />
      <rect
        className="debrief-runway"
        x={frame.x(-half)}
        y={frame.y(runway.surfaceEndM)}
        width={2 * half * frame.unitsPerM}
        height={(runway.surfaceEndM - runway.surfaceStartM) * frame.unitsPerM}
      />
      {other ? <path className="line-other" d={pathOf(other.samples, x(frame), y(frame))} /> : null}
      {piecesOf(replayed.samples).map((piece) => (
        <path
          key={piece.samples[0]?.timeS}
          className={`trail trail-${piece.band}`}
          d={pathOf(piece.samples, x(frame), y(frame))}
        />
      ))}
      {weather.windKt > 0 ? (
        <g transform={`translate(${windX} 44)`}>
          <path
            className="debrief-wind"
            d="M0 20 V-20 M-6 -10 L0 -20 L6 -10"
            transform={`rotate(${windDeg.toFixed(1)})`}
          />
          <text className="debrief-small" y={40} textAnchor="middle">
            {weather.windKt} kt
          </text>
        </g>
      ) : null}
      <line className="debrief-scale" x1={14} x2={14 + mile} y1={HEIGHT - 12} y2={HEIGHT - 12} />
      <text className="debrief-small" x={18 + mile} y={HEIGHT - 8}>
        0.5 NM
      </text>
    </g>
  );
});

const AEROPLANE = 'M0 -9 L2 -3 L10 1 V3 L2 2 L1 7 L4 9 V10 H-4 V9 L-1 7 L-2 2 L-10 3 V1 L-2 -3 Z';

const Aeroplane = ({
  replayed,
  frame,
  timeS,
  className,
}: {
  readonly replayed: Replayed;
  readonly frame: Frame;
  readonly timeS: number;
  readonly className: string;
}) => {
  const s = replayed.at(timeS, replayed.scratch);
  const { runway } = replayed.model;
  const px = frame.x(acrossM(runway, s.eastM, s.northM));
  const py = frame.y(alongM(runway, s.eastM, s.northM));
  const turn = degFromRad(s.headingRadT - runway.headingRadT);
  return (
    <path
      className={className}
      d={AEROPLANE}
      transform={`translate(${px.toFixed(1)} ${py.toFixed(1)}) rotate(${turn.toFixed(1)})`}
    />
  );
};

export interface DrawingProps {
  /** The flight, and the one it is compared with. */
  readonly replays: readonly Replayed[];
  readonly cursor: Cursor;
}

/** The circuit from above, runway up: as planned, as flown, and where the aeroplane is at the cursor. */
export const PlanDrawing = ({ replays, cursor }: DrawingProps) => {
  const timeS = useCursor(cursor);
  const frame = useMemo(() => frameOf(replays), [replays]);
  const [replayed, other] = replays as [Replayed, Replayed?];
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Plan: the circuit as planned and as flown; at the cursor on ${sampleAt(replayed, timeS).leg.replaceAll('-', ' ')}`}
    >
      <Still replays={replays} frame={frame} />
      {other ? <Aeroplane replayed={other} frame={frame} timeS={timeS} className="glyph-other" /> : null}
      <Aeroplane replayed={replayed} frame={frame} timeS={timeS} className="glyph-own" />
    </svg>
  );
};
