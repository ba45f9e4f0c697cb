import { alongM } from '../../aerodrome/runway.ts';
import type { Brief } from '../../circuit/brief/types.ts';
import { mFromFt, mFromNmi, nmiFromM } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { pointsText } from './chart-frame.ts';
import { feetText } from './text.ts';

const WIDTH = 420;
const HEIGHT = 220;
const GROUND_Y = HEIGHT - 24;
const LEFT = 8;
const RIGHT = WIDTH - 8;
/** Room above the highest thing drawn. */
const HEADROOM = 1.1;

interface Scale {
  readonly x: (along: number) => number;
  readonly y: (heightM: number) => number;
  readonly leftM: number;
  readonly topM: number;
}

const scaleOf = (brief: Brief): Scale => {
  const { plan } = brief;
  const rollOut = alongM(plan.runway, plan.legs.final.from.eastM, plan.legs.final.from.northM);
  const leftM = Math.min(1.12 * rollOut, -mFromNmi(0.7));
  const rightM = plan.runway.specifiedM + 200;
  const topM = HEADROOM * Math.max(mFromFt(520), plan.rollOutOnFinalHeightM);
  return {
    x: (along) => LEFT + ((along - leftM) / (rightM - leftM)) * (RIGHT - LEFT),
    y: (heightM) => GROUND_Y - (heightM / topM) * (GROUND_Y - 8),
    leftM,
    topM,
  };
};

/** The sectors of the lights, each from the units back to the left edge. */
const Sectors = ({ brief, scale }: { readonly brief: Brief; readonly scale: Scale }) => {
  const { lights } = brief.plan.runway;
  if (lights === null) return null;
  const angles = [...lights.unitsAngleRad].sort((a, b) => a - b);
  const units = angles.length;
  const reachM = lights.alongM - scale.leftM;
  const edge = (angleRad: number): readonly [number, number] => {
    const heightM = lights.heightM + reachM * Math.tan(angleRad);
    return heightM <= scale.topM
      ? [scale.x(scale.leftM), scale.y(heightM)]
      : [scale.x(lights.alongM - (scale.topM - lights.heightM) / Math.tan(angleRad)), scale.y(scale.topM)];
  };
  const apex = [scale.x(lights.alongM), scale.y(lights.heightM)] as const;
  const low = edge(angles[units / 2 - 1] as number);
  const high = edge(angles[units / 2] as number);
  const bounds = [0, ...angles, (angles[units - 1] as number) + 0.02];
  return (
    <g>
      <polygon className="final-on-slope" points={pointsText([apex, low, high])} />
      {angles.map((angle) => {
        const [x, y] = edge(angle);
        return <line key={angle} className="final-edge" x1={apex[0]} y1={apex[1]} x2={x} y2={y} />;
      })}
      {bounds.slice(0, -1).map((from, i) => {
        const to = bounds[i + 1] as number;
        const middle = i === 0 ? to - 0.012 : (from + to) / 2;
        const heightM = lights.heightM + 0.93 * reachM * Math.tan(middle);
        const tall = Math.abs(reachM * (Math.tan(to) - Math.tan(from))) * ((GROUND_Y - 8) / scale.topM);
        if (heightM > scale.topM || tall < 11) return null;
        return (
          <text
            key={from}
            className="final-letters"
            x={scale.x(lights.alongM - 0.93 * reachM)}
            y={scale.y(heightM) + 4}
            textAnchor="middle"
          >
            {'W'.repeat(i) + 'R'.repeat(units - i)}
          </text>
        );
      })}
    </g>
  );
};

/** The planned final from the side: the path of the eye, the sectors of the lights, the gates. */
export const FinalChart = ({ brief }: { readonly brief: Brief }) => {
  const { plan } = brief;
  const scale = scaleOf(brief);
  const along = (p: { eastM: number; northM: number }) => alongM(plan.runway, p.eastM, p.northM);
  const path = plan.path.filter((p) => p.leg === 'final' && along(p) >= scale.leftM);
  const runwayY = GROUND_Y + 3;
  const miles = [0.5, 1, 1.5, 2, 2.5].filter((nmi) => -mFromNmi(nmi) > scale.leftM);
  return (
    <svg
      className="chart final-chart"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`The planned final from the side: complete at ${feetText(plan.rollOutOnFinalHeightM)} ft, ${brief.gates.map((g) => `${feetText(g.heightM)} ft ${g.sentence}`).join('; ')}.`}
    >
      <Sectors brief={brief} scale={scale} />
      {brief.gates.map((gate) => (
        <g key={gate.heightM}>
          <line
            className="final-gate"
            x1={LEFT}
            x2={RIGHT}
            y1={scale.y(gate.heightM)}
            y2={scale.y(gate.heightM)}
          />
          <text className="final-small" x={RIGHT} y={scale.y(gate.heightM) - 4} textAnchor="end">
            {feetText(gate.heightM)} ft
            {gate.beforeThresholdM === null ? '' : ` · ${fixed(nmiFromM(gate.beforeThresholdM), 2)} NM`}
          </text>
        </g>
      ))}
      <line className="final-ground" x1={LEFT} x2={RIGHT} y1={GROUND_Y} y2={GROUND_Y} />
      <line className="final-runway" x1={scale.x(0)} x2={RIGHT} y1={runwayY} y2={runwayY} />
      <polyline
        className="chart-path"
        points={pointsText(path.map((p) => [scale.x(along(p)), scale.y(p.heightM)]))}
      />
      {miles.map((nmi) => (
        <text
          key={nmi}
          className="final-small"
          x={scale.x(-mFromNmi(nmi))}
          y={HEIGHT - 6}
          textAnchor="middle"
        >
          {nmi} NM
        </text>
      ))}
      <text className="final-small" x={scale.x(0)} y={HEIGHT - 6} textAnchor="middle">
        threshold
      </text>
    </svg>
  );
};
