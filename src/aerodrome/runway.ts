import { clamp, cos, sin } from '../maths/functions.ts';
import { trueFromMagnetic } from '../units/angles.ts';
import { mFromFt, mFromNmi, radFromDeg } from '../units/conversions.ts';
import type { Aerodrome, RunwayEnd, SlopeLights } from './schema.ts';

/** Slope lights of one landing end, placed. */
export interface RunwayLights {
  readonly kind: 'PAPI' | 'APAPI';
  /** The slope they show. */
  readonly angleRad: number;
  /** Of the centreline, + right of the landing direction. */
  readonly side: 1 | -1;
  /** Beyond the landing threshold. */
  readonly alongM: number;
  /** Ground under the units above the landing threshold. */
  readonly heightM: number;
  /** From the unit furthest from the runway to the nearest; + right of the centreline. */
  readonly unitsAcrossM: readonly number[];
  /** Set angle of each, the same order. */
  readonly unitsAngleRad: readonly number[];
  readonly middleAcrossM: number;
  readonly rangeM: number;
  /** Half width. */
  readonly sectorRad: number;
}

/**
 * One landing direction of a strip in SI. Positions: earth axes (east, north true) from this end's landing
 * threshold, heights above that threshold; along + in the landing direction, across + to its right.
 */
export interface Runway {
  readonly designator: string;
  readonly otherDesignator: string;
  /** 0 or 1: which end of the file. */
  readonly end: 0 | 1;
  readonly headingRadT: number;
  readonly headingRadM: number;
  readonly variationRad: number;
  readonly sinHeading: number;
  readonly cosHeading: number;
  readonly thresholdElevationM: number;
  /** Where the surface begins, along: minus the displacement. */
  readonly surfaceStartM: number;
  readonly surfaceEndM: number;
  /** Threshold to the far end of the surface. */
  readonly landingLengthM: number;
  /** The whole surface. */
  readonly takeOffLengthM: number;
  /** Take-off distance available: the surface and the clearway, counted to half the surface (ICAO Annex 14 vol. I, from memory). */
  readonly takeOffDistanceM: number;
  readonly widthM: number;
  readonly surface: 'tarmac' | 'grass';
  /** Rise per metre along this landing direction. */
  readonly slope: number;
  readonly aimM: number;
  readonly specifiedM: number;
  readonly lights: RunwayLights | null;
  /** +1 right-hand circuits, -1 left-hand. */
  readonly circuitSide: 1 | -1;
  /** Above the landing threshold. */
  readonly circuitHeightM: number;
  /** Position of the file's origin (the first end's landing threshold) along this runway. */
  readonly originAlongM: number;
}

/**
 * Siting (ICAO Annex 14 vol. I 5.3.5 and UFC 3-535-01): inner unit to runway edge 15 m, units 9 m apart;
 * APAPI 10 m and 6 m (from memory). Settings, arc minutes from the slope, outermost unit first.
 */
const INSTALLATIONS = {
  PAPI: { innerM: 15, spacingM: 9, settingsArcMin: [-30, -10, 10, 30] },
  APAPI: { innerM: 10, spacingM: 6, settingsArcMin: [-15, 15] },
} as const;

const lightsOf = (lights: SlopeLights, widthM: number, slope: number): RunwayLights => {
  const { innerM, spacingM, settingsArcMin } = INSTALLATIONS[lights.kind];
  const side = lights.side === 'right' ? 1 : -1;
  const angleRad = radFromDeg(lights.angleDeg);
  const last = settingsArcMin.length - 1;
  const unitsAcrossM = settingsArcMin.map((_, i) => side * (widthM / 2 + innerM + (last - i) * spacingM));
  return {
    kind: lights.kind,
    angleRad,
    side,
    alongM: lights.pastThresholdM,
    heightM: slope * lights.pastThresholdM,
    unitsAcrossM,
    unitsAngleRad: settingsArcMin.map((minutes) => angleRad + radFromDeg(minutes / 60)),
    middleAcrossM: side * (widthM / 2 + innerM + (last * spacingM) / 2),
    rangeM: mFromNmi(lights.rangeNmi),
    sectorRad: radFromDeg(lights.sectorDeg),
  };
};

/** The two designators as painted, the first end first. */
export const endNames = (aerodrome: Aerodrome): readonly [string, string] => [
  aerodrome.runway.ends[0].designator,
  aerodrome.runway.ends[1].designator,
];

/**
 * One landing direction, resolved. Throws an Error sentence naming both ends when `designator` is neither.
 */
export function runwayInUse(aerodrome: Aerodrome, designator: string): Runway {
  const [first, second] = aerodrome.runway.ends;
  const end = first.designator === designator ? 0 : second.designator === designator ? 1 : -1;
  if (end === -1)
    throw new Error(
      `${aerodrome.id}: runway must be ${first.designator} or ${second.designator}, was ${designator}`,
    );
  const here: RunwayEnd = end === 0 ? first : second;
  const there: RunwayEnd = end === 0 ? second : first;
  const { lengthM, widthM, surface, slopePercent } = aerodrome.runway;
  const variationRad = radFromDeg(aerodrome.variationDegE);
  // The second end flies the exact reciprocal of the first, so that both describe the same strip.
  const headingRadM = radFromDeg(end === 0 ? first.headingDegM : first.headingDegM + 180);
  const headingRadT = trueFromMagnetic(headingRadM, variationRad);
  const riseAlongFirst = slopePercent / 100;
  const slope = end === 0 ? riseAlongFirst : -riseAlongFirst;
  // From the first end's landing threshold to the second's, along the first's landing direction.
  const betweenThresholdsM = lengthM - first.displacedThresholdM - second.displacedThresholdM;
  const firstElevationM = mFromFt(aerodrome.elevationFt);
  const landingLengthM = lengthM - here.displacedThresholdM;
  return {
    designator: here.designator,
    otherDesignator: there.designator,
    end,
    headingRadT,
    headingRadM: trueFromMagnetic(headingRadM, 0),
    variationRad,
    sinHeading: sin(headingRadT),
    cosHeading: cos(headingRadT),
    thresholdElevationM: end === 0 ? firstElevationM : firstElevationM + riseAlongFirst * betweenThresholdsM,
    surfaceStartM: -here.displacedThresholdM,
    surfaceEndM: landingLengthM,
    landingLengthM,
    takeOffLengthM: lengthM,
    takeOffDistanceM: lengthM + Math.min(here.clearwayM ?? 0, lengthM / 2),
    widthM,
    surface,
    slope,
    aimM: here.aimPastThresholdM,
    specifiedM: here.aimPastThresholdM + here.specifiedPastAimM,
    lights: here.slopeLights === null ? null : lightsOf(here.slopeLights, widthM, slope),
    circuitSide: here.circuitSide === 'right' ? 1 : -1,
    circuitHeightM: mFromFt(aerodrome.circuitHeightFt),
    originAlongM: end === 0 ? 0 : betweenThresholdsM,
  };
}

/** Along the landing direction from the landing threshold. */
export const alongM = (runway: Runway, eastM: number, northM: number): number =>
  eastM * runway.sinHeading + northM * runway.cosHeading;

/** To the right of the centreline, seen along the landing direction. */
export const acrossM = (runway: Runway, eastM: number, northM: number): number =>
  eastM * runway.cosHeading - northM * runway.sinHeading;

export const eastOf = (runway: Runway, along: number, across: number): number =>
  along * runway.sinHeading + across * runway.cosHeading;

export const northOf = (runway: Runway, along: number, across: number): number =>
  along * runway.cosHeading - across * runway.sinHeading;

/** Earth position of a place given along and across. */
export const earthOf = (
  runway: Runway,
  along: number,
  across: number,
): { eastM: number; northM: number } => ({
  eastM: eastOf(runway, along, across),
  northM: northOf(runway, along, across),
});

/** A point of the file (metres from the first end's threshold) in the axes of this landing direction. */
export const fromFile = (
  runway: Runway,
  [eastM, northM]: readonly [number, number],
): { eastM: number; northM: number } => ({
  eastM: eastM + eastOf(runway, runway.originAlongM, 0),
  northM: northM + northOf(runway, runway.originAlongM, 0),
});

/** Height of the ground above the landing threshold: the strip's slope on the surface, level beyond its ends. */
export const groundHeightM = (runway: Runway, along: number): number =>
  runway.slope * clamp(along, runway.surfaceStartM, runway.surfaceEndM);

/** On the prepared surface, displaced part included. */
export const onSurface = (runway: Runway, along: number, across: number): boolean =>
  along >= runway.surfaceStartM && along <= runway.surfaceEndM && Math.abs(across) <= runway.widthM / 2;
