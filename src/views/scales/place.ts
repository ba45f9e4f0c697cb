import { acrossM, alongM } from '../../aerodrome/runway.ts';
import { headingDeg } from '../../units/angles.ts';
import { nmiFromM } from '../../units/conversions.ts';
import { fixed, headingDigits } from '../../units/format.ts';
import { plainMeter, sided } from './common.ts';

/** Over the ground, magnetic. */
export const track = plainMeter({
  id: 'track',
  name: 'Track',
  unit: '°',
  value: (snapshot, { runway }) => headingDeg(snapshot.trackRadT - runway.variationRad),
  text: (deg) => `${headingDigits(deg)}°`,
});

/** Along the runway's direction: before the threshold is positive, past it negative. */
export const distanceToThreshold = plainMeter({
  id: 'distance',
  name: 'Distance to the threshold',
  unit: 'NM',
  value: (snapshot, { runway }) => nmiFromM(-alongM(runway, snapshot.eastM, snapshot.northM)),
  text: (nmi) => {
    const amount = fixed(Math.abs(nmi), 2);
    return Number(amount) === 0 || nmi > 0 ? `${amount} NM` : `${amount} NM past`;
  },
});

/** Right of the centreline, seen along the landing direction, is positive. */
export const centrelineOffset = plainMeter({
  id: 'offset',
  name: 'Offset from the centreline',
  unit: 'm',
  value: (snapshot, { runway }) => acrossM(runway, snapshot.eastM, snapshot.northM),
  text: (m) => sided(m, fixed(Math.abs(m)), ' m', 'none'),
});
