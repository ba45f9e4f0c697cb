import type { Brief, LegBrief } from '../../circuit/brief/types.ts';
import type { PathPoint } from '../../circuit/types.ts';
import type { AirStart, Weather } from '../../simulation/scenario.ts';
import { degFromRad, mFromNmi, radFromDeg } from '../../units/conversions.ts';
import { fixed, headingDigits } from '../../units/format.ts';
import { type ChartFrame, chartFrame, pointsText } from './chart-frame.ts';
import { driftText, feetText, headingText, knotsText, legName, secondsText } from './text.ts';

const AEROPLANE = 'M0 -14 L3 -4 L16 2 V6 L3 4 L2 12 L6 15 V17 H-6 V15 L-2 12 L-3 4 L-16 6 V2 L-3 -4 Z';

interface PartProps {
  readonly brief: Brief;
  readonly frame: ChartFrame;
}

/** How far along a leg its aeroplane stands: clear of the runway and of the gates. */
const ALONG: Readonly<Record<LegBrief['leg'], number>> = {
  upwind: 0.75,
  crosswind: 0.5,
  downwind: 0.5,
  base: 0.5,
  final: 0.3,
};

const placeOn = (frame: ChartFrame, brief: Brief, leg: LegBrief): readonly [number, number] => {
  const { from, to }: { from: PathPoint; to: PathPoint } = brief.plan.legs[leg.leg];
  const [ax, ay] = frame.at(from.eastM, from.northM);
  const [bx, by] = frame.at(to.eastM, to.northM);
  const t = ALONG[leg.leg];
  return [ax + (bx - ax) * t, ay + (by - ay) * t];
};

/** The aeroplane on a leg, nose where it is held, with the line of its heading and the line of its track. */
const Crab = ({ brief, frame, leg }: PartProps & { readonly leg: LegBrief }) => {
  const plan = brief.plan.legs[leg.leg];
  const [x, y] = placeOn(frame, brief, leg);
  return (
    <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <line
        className="chart-track"
        y2={-62}
        transform={`rotate(${frame.turnDeg(plan.trackRadT).toFixed(2)})`}
      />
      <g transform={`rotate(${frame.turnDeg(plan.headingRadT).toFixed(2)})`}>
        <line className="chart-heading" y2={-62} />
        <path className="chart-aeroplane" d={AEROPLANE} />
      </g>
    </g>
  );
};

type Anchor = 'start' | 'middle' | 'end';

/** Where the words of a leg stand, beside its middle. */
const placeOf = (frame: ChartFrame, leg: LegBrief): readonly [dx: number, dy: number, Anchor] => {
  const away = frame.outside;
  // Three lines: above the line they end at it, below they begin under it.
  const beyond = (side: number): number => (side < 0 ? -68 : 38);
  const places: Readonly<Record<LegBrief['leg'], readonly [number, number, Anchor]>> = {
    upwind: [0, beyond(-away), 'middle'],
    crosswind: [26, -22, 'start'],
    downwind: [0, beyond(away), 'middle'],
    base: [-26, -22, 'end'],
    final: [0, beyond(-away), 'middle'],
  };
  return places[leg.leg];
};

const LegWords = ({ brief, frame, leg }: PartProps & { readonly leg: LegBrief }) => {
  const [x, y] = placeOn(frame, brief, leg);
  const [dx, dy, anchor] = placeOf(frame, leg);
  return (
    <text className="chart-leg" x={x + dx} y={y + dy} textAnchor={anchor}>
      <tspan className="chart-name">{legName(leg.leg)}</tspan>
      <tspan className="chart-hold" dx={6}>
        {headingText(leg.headingRadM)}
      </tspan>
      <tspan x={x + dx} dy="1.2em">
        drift {driftText(leg.driftRad)}
      </tspan>
      <tspan x={x + dx} dy="1.2em">
        {knotsText(leg.groundspeedMps)} kt · {secondsText(leg.seconds)} s
      </tspan>
    </text>
  );
};

/** Threshold to the start of the base turn, today and in still air. */
const BaseTurnLine = ({ brief, frame }: PartProps) => {
  const { plan, baseTurn } = brief;
  const [x, y] = frame.at(plan.turns.base.from.eastM, plan.turns.base.from.northM);
  const [tx, ty] = frame.on(0, 0);
  const stillX = -plan.spacingM * Math.tan(baseTurn.stillAirAngleRad);
  const [sx, sy] = frame.on(stillX, plan.side * plan.spacingM);
  // Right of the line, which leans towards the runway: below the middle for a circuit above it, and the reverse.
  const labelX = (x + tx) / 2 + 34;
  const labelY = (y + ty) / 2 - 6;
  const moved = Math.abs(baseTurn.angleRad - baseTurn.stillAirAngleRad) > radFromDeg(1);
  return (
    <g>
      {moved ? <line className="chart-still" x1={tx} y1={ty} x2={sx} y2={sy} /> : null}
      <line className="chart-turn-line" x1={tx} y1={ty} x2={x} y2={y} />
      <circle className="chart-turn-point" cx={x} cy={y} r={5} />
      <text className="chart-small" x={labelX} y={labelY}>
        base turn {fixed(degFromRad(baseTurn.angleRad))}° behind the wing
      </text>
      {moved ? (
        <text className="chart-small" x={labelX} y={labelY + 20}>
          (still air {fixed(degFromRad(baseTurn.stillAirAngleRad))}°)
        </text>
      ) : null}
    </g>
  );
};

const Strip = ({ brief, frame }: PartProps) => {
  const { runway } = brief.plan;
  const half = Math.max(runway.widthM / 2, 5 / frame.unitsPerM);
  const [x, y] = frame.on(runway.surfaceStartM, -half);
  const [endX, endY] = frame.on(runway.surfaceEndM, half);
  const [thresholdX, middleY] = frame.on(0, 0);
  const [aimX] = frame.on(runway.aimM, 0);
  const lights = runway.lights;
  return (
    <g>
      <rect
        className={`chart-strip chart-${runway.surface}`}
        x={x}
        y={y}
        width={endX - x}
        height={endY - y}
      />
      <line className="chart-paint" x1={thresholdX} x2={thresholdX} y1={y} y2={endY} />
      <line className="chart-paint" x1={aimX} x2={aimX + 6} y1={middleY} y2={middleY} />
      <text className="chart-designator" x={(thresholdX + endX) / 2} y={middleY + 5} textAnchor="middle">
        {runway.designator}
      </text>
      {lights === null
        ? null
        : lights.unitsAcrossM.map((across, i) => {
            const [lx, ly] = frame.on(
              lights.alongM,
              lights.side * (half + (6 + 7 * (lights.unitsAcrossM.length - i)) / frame.unitsPerM),
            );
            const white = i < lights.unitsAcrossM.length / 2;
            return white ? (
              <circle key={across} className="chart-white" cx={lx} cy={ly} r={3} />
            ) : (
              <rect key={across} className="chart-red" x={lx - 3} y={ly - 3} width={6} height={6} />
            );
          })}
    </g>
  );
};

/** The sector in which the lights are seen, to the edge of the chart. */
const Beam = ({ brief, frame }: PartProps) => {
  const { lights } = brief.plan.runway;
  if (lights === null) return null;
  const [apexX, apexY] = frame.on(lights.alongM, lights.middleAcrossM);
  const reach = Math.min(apexX, lights.rangeM * frame.unitsPerM);
  const wide = reach * Math.tan(lights.sectorRad);
  return (
    <polygon
      className="chart-beam"
      points={pointsText([
        [apexX, apexY],
        [apexX - reach, apexY - wide],
        [apexX - reach, apexY + wide],
      ])}
    />
  );
};

const Gates = ({ brief, frame }: PartProps) => (
  <g>
    {brief.gates.map((gate) => {
      if (gate.beforeThresholdM === null) return null;
      const [x, y] = frame.on(-gate.beforeThresholdM, 0);
      const side = frame.outside;
      return (
        <g key={gate.heightM}>
          <line className="chart-gate" x1={x} x2={x} y1={y - 10} y2={y + 10} />
          <text className="chart-small" x={x} y={y + (side < 0 ? -16 : 27)} textAnchor="middle">
            {feetText(gate.heightM)} ft
          </text>
        </g>
      );
    })}
  </g>
);

const Wind = ({ brief, frame, weather }: PartProps & { readonly weather: Weather }) => {
  const { runway } = brief.plan;
  const [, farY] = frame.on(0, (brief.plan.side * brief.plan.spacingM) / 2);
  const { crosswind } = brief.plan.legs;
  const [endX] = frame.on(runway.surfaceEndM, 0);
  const [legX] = frame.at(crosswind.to.eastM, crosswind.to.northM);
  const x = Math.min(endX + 70, legX - 225);
  const toRadM = radFromDeg(weather.windFromDegM + 180);
  const gust = weather.gustKt === null ? '' : ` gusting ${fixed(weather.gustKt)}`;
  return (
    <g transform={`translate(${x.toFixed(1)} ${farY.toFixed(1)})`}>
      {weather.windKt > 0 ? (
        <path
          className="chart-wind"
          d="M0 34 V-34 M-9 -20 L0 -34 L9 -20"
          transform={`rotate(${frame.turnDeg(toRadM + runway.variationRad).toFixed(1)})`}
        />
      ) : null}
      <text className="chart-leg" x={46} y={-2}>
        <tspan className="chart-name">
          {weather.windKt > 0
            ? `${headingDigits(weather.windFromDegM)}° ${fixed(weather.windKt)} kt`
            : 'calm'}
        </tspan>
        <tspan x={46} dy="1.2em">
          {`${gust.trim()} at the surface`.trim()}
        </tspan>
        {weather.windKt === 0 && !brief.windAbove.typed ? null : (
          <tspan x={46} dy="1.2em">
            {brief.windAbove.words}
          </tspan>
        )}
      </text>
    </g>
  );
};

/** North and the scale, in the corner outside the circuit. */
const Corner = ({ brief, frame }: PartProps) => {
  const mile = mFromNmi(0.5) * frame.unitsPerM;
  const y = frame.outside < 0 ? frame.height - 14 : 26;
  const north = frame.turnDeg(brief.plan.runway.variationRad);
  return (
    <g>
      <line className="chart-scale" x1={20} x2={20 + mile} y1={y} y2={y} />
      <text className="chart-small" x={20} y={y - 7}>
        0.5 NM
      </text>
      <g transform={`translate(${frame.width - 34} ${frame.outside < 0 ? frame.height - 34 : 34})`}>
        <path
          className="chart-north"
          d="M0 18 V-18 M-5 -9 L0 -18 L5 -9"
          transform={`rotate(${north.toFixed(1)})`}
        />
        <text className="chart-small" x={-16} y={6} textAnchor="end">
          north, magnetic
        </text>
      </g>
    </g>
  );
};

interface BeginProps {
  readonly frame: ChartFrame;
  readonly start: AirStart;
  readonly leg: LegBrief['leg'];
}

/** Inside the circuit, where the words of the legs are not; from a balloon, over the runway, outside. */
const beginPlace = ({ frame, start, leg }: BeginProps): readonly [dx: number, dy: number, Anchor] => {
  const above = -14;
  const below = 26;
  const up = frame.outside < 0;
  if (leg === 'crosswind') return [-14, 5, 'end'];
  if (leg === 'base') return [14, 5, 'start'];
  if (leg === 'downwind') return [0, up ? below : above, 'middle'];
  const overRunway = frame.at(start.east_m, start.north_m)[0] > frame.on(0, 0)[0] - 60;
  if (overRunway) return [0, up ? below : above, 'middle'];
  return [10, up ? above : below, 'start'];
};

/** Where the flight begins in the air. Not how high: that may be what is to be seen. */
const Begin = (props: BeginProps) => {
  const [x, y] = props.frame.at(props.start.east_m, props.start.north_m);
  const [dx, dy, anchor] = beginPlace(props);
  return (
    <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <circle className="chart-begin" r={7} />
      <text className="chart-small chart-leg" x={dx} y={dy} textAnchor={anchor}>
        begins here
      </text>
    </g>
  );
};

interface ChartProps {
  readonly brief: Brief;
  readonly weather: Weather;
  readonly start: AirStart | null;
  /** The first leg that is flown. */
  readonly from: LegBrief['leg'];
}

const wordsFor = ({ brief, weather }: Pick<ChartProps, 'brief' | 'weather'>): string =>
  `The circuit of runway ${brief.plan.runway.designator} in a wind of ${weather.windKt} kt: ${brief.legs
    .map((leg) => `${leg.leg} heading ${headingText(leg.headingRadM)}, drift ${driftText(leg.driftRad)}`)
    .join('; ')}.`;

/** The circuit from above, drawn with the wind: what to hold on each leg and where to turn. */
export const CircuitChart = ({ brief, weather, start, from }: ChartProps) => {
  const frame = chartFrame(brief.plan);
  const part = { brief, frame };
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      role="img"
      aria-label={wordsFor({ brief, weather })}
    >
      <Beam {...part} />
      <polyline
        className="chart-path"
        points={pointsText(brief.plan.path.map((p) => frame.at(p.eastM, p.northM)))}
      />
      <BaseTurnLine {...part} />
      <Strip {...part} />
      {brief.glide === null ? <Gates {...part} /> : null}
      {brief.legs.map((leg) => (
        <Crab key={leg.leg} {...part} leg={leg} />
      ))}
      {brief.legs.map((leg) => (
        <LegWords key={leg.leg} {...part} leg={leg} />
      ))}
      {start === null ? null : <Begin frame={frame} start={start} leg={from} />}
      <Wind {...part} weather={weather} />
      <Corner {...part} />
    </svg>
  );
};
