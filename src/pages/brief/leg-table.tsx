import { Fragment } from 'react';
import type { Brief, LegBrief, StretchBrief } from '../../circuit/brief/types.ts';
import type { SpeedsCard } from '../../formats/own-file.ts';
import { degFromRad } from '../../units/conversions.ts';
import { fixed, thousands } from '../../units/format.ts';
import {
  driftText,
  feetText,
  flapText,
  headingText,
  knotsText,
  legName,
  powerText,
  secondsText,
  sinkText,
} from './text.ts';

const WAYS = {
  climbing: 'climb',
  level: 'level',
  descending: 'down',
  'landing flap': 'then',
  gliding: 'glide',
} as const;

/** Neither how long nor to what height. */
const UNTIMED: ReadonlySet<StretchBrief['way']> = new Set(['landing flap', 'gliding']);

const cardRpm = (card: SpeedsCard | null, leg: LegBrief['leg']): number | null =>
  card !== null && (leg === 'downwind' || leg === 'base' || leg === 'final') ? card.rpm[leg] : null;

/** The altitude a stretch ends at; on final the one it begins at. */
const reaches = (leg: LegBrief, stretch: StretchBrief): string => {
  if (UNTIMED.has(stretch.way)) return '';
  return leg.leg === 'final' ? `from ${feetText(stretch.fromAltitudeM)}` : feetText(stretch.toAltitudeM);
};

const Rows = ({ leg, card }: { readonly leg: LegBrief; readonly card: SpeedsCard | null }) => {
  const rows = leg.stretches.length;
  const said = cardRpm(card, leg.leg);
  return (
    <>
      {leg.stretches.map((stretch, i) => (
        <tr key={stretch.way + String(stretch.fromHeightM)}>
          {i === 0 ? (
            <>
              <th scope="rowgroup" rowSpan={rows}>
                {legName(leg.leg)}
              </th>
              <td rowSpan={rows} className="number strong">
                {headingText(leg.headingRadM)}
              </td>
              <td rowSpan={rows}>
                {driftText(leg.driftRad)}
                {leg.oneInSixty === null ? null : <span className="sixty">{leg.oneInSixty}</span>}
              </td>
              <td rowSpan={rows} className="number">
                {knotsText(leg.groundspeedMps)}
              </td>
              <td rowSpan={rows}>
                {leg.turnSeconds > 0
                  ? `${fixed(degFromRad(leg.turnBankRad))}°, ${secondsText(leg.turnSeconds)} s`
                  : ''}
              </td>
            </>
          ) : null}
          <td>{WAYS[stretch.way]}</td>
          <td className="number">{UNTIMED.has(stretch.way) ? '' : secondsText(stretch.seconds)}</td>
          <td className="number">{reaches(leg, stretch)}</td>
          <td className="number strong">{knotsText(stretch.iasMps)}</td>
          <td>{flapText(stretch.flapDeg)}</td>
          <td className="number">
            {powerText(stretch)}
            {said === null || stretch.fullPower || stretch.way === 'gliding'
              ? ''
              : ` · card ${thousands(said)}`}
          </td>
          <td className="number">{sinkText(stretch.verticalSpeedMps)}</td>
        </tr>
      ))}
    </>
  );
};

interface TableProps {
  readonly brief: Brief;
  readonly card: SpeedsCard | null;
  /** Legs before this one are flown only by going round again. */
  readonly from: LegBrief['leg'];
}

/** Every leg in figures. */
export const LegTable = ({ brief, card, from }: TableProps) => (
  <table className="legs">
    <caption className="only-heard">Every leg: heading to hold, seconds, height, speed, power</caption>
    <thead>
      <tr>
        <th scope="col">Leg</th>
        <th scope="col" className="number">
          Hold, °M
        </th>
        <th scope="col" title="one in sixty: 60 × knots across ÷ true airspeed">
          Drift, one in sixty
        </th>
        <th scope="col" className="number">
          Over ground, kt
        </th>
        <th scope="col">Turn onto it</th>
        <th scope="col">
          <span className="only-heard">Way</span>
        </th>
        <th scope="col" className="number">
          Seconds
        </th>
        <th scope="col" className="number">
          To, ft QNH
        </th>
        <th scope="col" className="number">
          Speed, kt
        </th>
        <th scope="col">Flap</th>
        <th scope="col" className="number">
          Power, rpm
        </th>
        <th scope="col" className="number">
          ft/min
        </th>
      </tr>
    </thead>
    {brief.legs.map((leg, i) => (
      <tbody
        key={leg.leg}
        className={i < brief.legs.findIndex((each) => each.leg === from) ? 'not-begun' : ''}
      >
        <Rows leg={leg} card={card} />
      </tbody>
    ))}
  </table>
);

/** Checks, calls and lookout, leg by leg. */
export const LegWordsTable = ({ brief }: { readonly brief: Brief }) => (
  <dl className="leg-words">
    {brief.legs.map((leg) => (
      <Fragment key={leg.leg}>
        <dt>{legName(leg.leg)}</dt>
        <dd>
          {leg.words.checks.join('; ')}.
          {leg.words.calls.length > 0 ? (
            <span className="call"> Call {leg.words.calls.join(', ')}.</span>
          ) : null}
          <span className="soft"> Look {leg.words.look}.</span>
        </dd>
      </Fragment>
    ))}
  </dl>
);
