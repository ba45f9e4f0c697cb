import { memo, useMemo, useState } from 'react';
import { GATES_FT, STABILISED } from '../../circuit/stabilised.ts';
import { degFromRad, ftFromM, mFromFt, mFromNmi, nmiFromM } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { useCursor } from './cursor.ts';
import { pathOf, piecesOf } from './pieces.ts';
import type { DrawingProps } from './plan-drawing.tsx';
import { type Replayed, type Sample, sampleAt } from './replayed.ts';

const WIDTH = 640;
const HEIGHT = 208;
const GROUND = HEIGHT - 24;
const LEFT = 44;
const RIGHT = WIDTH - 10;
const TOP = 12;

type Part = 'whole circuit' | 'final';
const PARTS: readonly Part[] = ['whole circuit', 'final'];

interface Frame {
  readonly part: Part;
  readonly at: (s: Sample) => number;
  readonly x: (m: number) => number;
  readonly y: (heightM: number) => number;
  readonly shown: (s: Sample) => boolean;
  readonly leftM: number;
  readonly rightM: number;
  readonly highM: number;
}

const FINAL_M = mFromNmi(1.8);
const ROLL_M = 900;

const frameOf = (replays: readonly Replayed[], part: Part): Frame => {
  const { plan } = replays[0] as Replayed;
  const final = part === 'final';
  const at = (s: Sample): number => (final ? s.alongM : s.distanceM);
  const shown = (s: Sample): boolean =>
    !final || (s.alongM > -FINAL_M && s.alongM < ROLL_M && FINAL_LEGS.has(s.leg));
  const points = replays.flatMap((replayed) => replayed.samples.filter(shown));
  const leftM = final ? -FINAL_M : 0;
  const rightM = final ? ROLL_M : (plan.path[plan.path.length - 1]?.distanceM ?? 1);
  const highM = Math.max(final ? mFromFt(600) : plan.heightM, ...points.map((s) => s.heightM)) * 1.06;
  const unitsX = (RIGHT - LEFT) / (rightM - leftM);
  const unitsY = (GROUND - TOP) / highM;
  return {
    part,
    at,
    shown,
    leftM,
    rightM,
    highM,
    x: (m) => LEFT + (m - leftM) * unitsX,
    y: (heightM) => GROUND - heightM * unitsY,
  };
};

const FINAL_LEGS: ReadonlySet<string> = new Set([
  'base',
  'turn-to-final',
  'final',
  'hold-off',
  'landing-roll',
  'stopped',
]);

/** Heights every 200 ft or so, and the planned path or the slope. */
const Paper = ({ replayed, frame }: { readonly replayed: Replayed; readonly frame: Frame }) => {
  const { plan, model } = replayed;
  const { runway } = model;
  const every = frame.highM > mFromFt(1300) ? 500 : 200;
  const lines = [];
  for (let ft = every; mFromFt(ft) < frame.highM; ft += every) lines.push(ft);
  const slope = (rad: number): string => {
    const from = frame.leftM;
    return `M${frame.x(runway.aimM)} ${frame.y(0)}L${frame.x(from)} ${frame.y(Math.tan(rad) * (runway.aimM - from))}`;
  };
  return (
    <g>
      {lines.map((ft) => (
        <g key={ft}>
          <line
            className="debrief-hair"
            x1={LEFT}
            x2={RIGHT}
            y1={frame.y(mFromFt(ft))}
            y2={frame.y(mFromFt(ft))}
          />
          <text className="debrief-small" x={LEFT - 5} y={frame.y(mFromFt(ft)) + 4} textAnchor="end">
            {ft}
          </text>
        </g>
      ))}
      <text className="debrief-small" x={LEFT - 5} y={GROUND + 4} textAnchor="end">
        0 ft
      </text>
      {frame.part === 'final' ? (
        <>
          <clipPath id="profile-room">
            <rect x={LEFT} y={TOP} width={RIGHT - LEFT} height={GROUND - TOP} />
          </clipPath>
          <g clipPath="url(#profile-room)">
            <path className="debrief-slope" d={slope(plan.approachRad)} />
            {[-STABILISED.slopeRad, STABILISED.slopeRad].map((rad) => (
              <path key={rad} className="debrief-limit" d={slope(plan.approachRad + rad)} />
            ))}
          </g>
          {GATES_FT.map((ft) => {
            const gateX = frame.x(runway.aimM - mFromFt(ft) / Math.tan(plan.approachRad));
            return gateX < LEFT ? null : (
              <g key={ft}>
                <line
                  className="debrief-gate"
                  x1={gateX}
                  x2={gateX}
                  y1={frame.y(mFromFt(ft)) - 9}
                  y2={frame.y(mFromFt(ft)) + 9}
                />
                <text className="debrief-small" x={gateX} y={frame.y(mFromFt(ft)) - 13} textAnchor="middle">
                  {ft} ft
                </text>
              </g>
            );
          })}
          {[0.5, 1, 1.5].map((nmi) => (
            <text
              key={nmi}
              className="debrief-small"
              x={frame.x(-mFromNmi(nmi))}
              y={HEIGHT - 7}
              textAnchor="middle"
            >
              {nmi} NM
            </text>
          ))}
          <text className="debrief-small" x={frame.x(0)} y={HEIGHT - 7} textAnchor="middle">
            threshold
          </text>
        </>
      ) : (
        <path
          className="line-planned"
          d={plan.path
            .map(
              (p, i) =>
                `${i === 0 ? 'M' : 'L'}${frame.x(p.distanceM).toFixed(1)} ${frame.y(p.heightM).toFixed(1)}`,
            )
            .join('')}
        />
      )}
      <line className="line-ground" x1={LEFT} x2={RIGHT} y1={GROUND} y2={GROUND} />
    </g>
  );
};

const Still = memo(({ replays, frame }: { readonly replays: readonly Replayed[]; readonly frame: Frame }) => {
  const [replayed, other] = replays as [Replayed, Replayed?];
  const px = (s: Sample): number => (frame.shown(s) ? frame.x(frame.at(s)) : Number.NaN);
  const py = (s: Sample): number => frame.y(s.heightM);
  // Unrolled anew at each circuit: no line back across the sheet.
  const line = (samples: readonly Sample[]): string => {
    let before = Number.NEGATIVE_INFINITY;
    return pathOf(
      samples,
      (s) => {
        const at = px(s);
        const back = at < before - 60;
        before = at;
        return back ? Number.NaN : at;
      },
      py,
    );
  };
  return (
    <g>
      <Paper replayed={replayed} frame={frame} />
      {other ? <path className="line-other" d={line(other.samples)} /> : null}
      {piecesOf(replayed.samples).map((piece) => (
        <path key={piece.samples[0]?.timeS} className={`trail trail-${piece.band}`} d={line(piece.samples)} />
      ))}
    </g>
  );
});

const SIDE = 'M-11 1 L-9 -5 L-7 -1 L8 -1 Q11 0 8 2 L-9 2 Z';

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
  const sample = sampleAt(replayed, timeS);
  if (!frame.shown(sample)) return null;
  const s = replayed.at(timeS, replayed.scratch);
  return (
    <path
      className={className}
      d={SIDE}
      transform={`translate(${frame.x(frame.at(sample)).toFixed(1)} ${frame.y(s.heightM).toFixed(1)}) rotate(${(-degFromRad(s.pitchRad)).toFixed(1)})`}
    />
  );
};

const wordsAt = (replayed: Replayed, timeS: number): string => {
  const s = sampleAt(replayed, timeS);
  const far = s.alongM < 0 ? `, ${fixed(nmiFromM(-s.alongM), 1)} NM before the threshold` : '';
  return `Profile: height as planned and as flown; at the cursor ${fixed(ftFromM(s.heightM))} ft${far}`;
};

/** The circuit from the side, unrolled by distance, or its final against the slope. */
export const ProfileDrawing = ({ replays, cursor }: DrawingProps) => {
  const timeS = useCursor(cursor);
  const [part, setPart] = useState<Part>('whole circuit');
  const frame = useMemo(() => frameOf(replays, part), [replays, part]);
  const [replayed, other] = replays as [Replayed, Replayed?];
  return (
    <>
      <div className="debrief-head-row">
        <h2>Profile</h2>
        <span className="joined small no-print">
          {PARTS.map((each) => (
            <button key={each} type="button" aria-pressed={part === each} onClick={() => setPart(each)}>
              {each}
            </button>
          ))}
        </span>
      </div>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={wordsAt(replayed, timeS)}>
        <Still replays={replays} frame={frame} />
        {other ? <Aeroplane replayed={other} frame={frame} timeS={timeS} className="glyph-other" /> : null}
        <Aeroplane replayed={replayed} frame={frame} timeS={timeS} className="glyph-own" />
      </svg>
    </>
  );
};
