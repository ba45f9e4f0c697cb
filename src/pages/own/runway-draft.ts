import { parseAerodrome } from '../../aerodrome/parse.ts';
import type { Aerodrome, RunwayEnd } from '../../aerodrome/schema.ts';
import {
  designatorField,
  lengthField,
  nameField,
  numberField,
  optionalLength,
  optionalNumber,
  ownId,
  type Reader,
  wrongIn,
} from './fields.ts';

/** What is typed about one landing direction. */
export interface EndDraft {
  readonly side: 'left' | 'right';
  readonly displaced: string;
  readonly lights: 'none' | 'PAPI' | 'APAPI';
  readonly lightsAngle: string;
  readonly lightsSide: 'left' | 'right';
  readonly lightsPast: string;
  readonly aim: string;
}

/** What is typed about one's own runway: text, as it stands in the fields. */
export interface RunwayDraft {
  readonly title: string;
  readonly designator: string;
  readonly heading: string;
  readonly length: string;
  readonly width: string;
  readonly surface: 'tarmac' | 'grass';
  readonly elevation: string;
  readonly slope: string;
  readonly variation: string;
  readonly circuitHeight: string;
  readonly terrain: Aerodrome['terrain'];
  readonly spacing: string;
  readonly approach: string;
  readonly descentFrom: 'abeam' | 'base-turn';
  readonly crosswindTurn: string;
  readonly finalTurnDone: string;
  readonly teaching: Aerodrome['circuit']['teaching'];
  readonly ends: readonly [EndDraft, EndDraft];
  /** Woods, houses and fields of a file that was taken in: kept as they are. */
  readonly features: Aerodrome['features'];
}

const END: EndDraft = {
  side: 'left',
  displaced: '0',
  lights: 'none',
  lightsAngle: '3',
  lightsSide: 'left',
  lightsPast: '',
  aim: '',
};

/** An empty form, with what is usual filled in. */
export const NEW_RUNWAY: RunwayDraft = {
  title: '',
  designator: '',
  heading: '',
  length: '',
  width: '18',
  surface: 'tarmac',
  elevation: '',
  slope: '0',
  variation: '0',
  circuitHeight: '1000',
  terrain: 'open',
  spacing: '1.0',
  approach: '3',
  descentFrom: 'abeam',
  crosswindTurn: '700',
  finalTurnDone: '',
  teaching: 'power-for-sink',
  ends: [END, END],
  features: [],
};

export const RUNWAY_READERS = {
  title: nameField('name'),
  designator: designatorField,
  heading: optionalNumber('heading', 1, 360),
  length: lengthField('length', 200, 5000),
  width: lengthField('width', 5, 100),
  elevation: numberField('elevation, ft,', -1300, 15000),
  slope: numberField('slope, percent up along the first end,', -5, 5),
  variation: numberField('variation, degrees east,', -90, 90),
  circuitHeight: numberField('circuit height, ft,', 300, 3000),
  spacing: numberField('downwind spacing, NM,', 0.3, 3),
  approach: numberField('approach angle', 2, 10),
  crosswindTurn: numberField('crosswind turn height, ft,', 200, 3000),
  finalTurnDone: optionalNumber('height of the completed final turn, ft,', 100, 1500),
} satisfies { readonly [K in keyof RunwayDraft]?: Reader<unknown> };

export const END_READERS = {
  displaced: lengthField('displaced threshold', 0, 2000),
  lightsAngle: numberField('angle of the lights', 1.5, 10),
  lightsPast: optionalLength('distance of the lights past the threshold', 30, 800),
  aim: optionalLength('aim point past the threshold', 10, 800),
} satisfies { readonly [K in keyof EndDraft]?: Reader<unknown> };

/** `04L` is `22R` from the other side. */
export const otherDesignator = (designator: string): string => {
  const number = Number(designator.slice(0, 2));
  const letter = { L: 'R', R: 'L', C: 'C' }[designator.slice(2)] ?? '';
  return `${String(number > 18 ? number - 18 : number + 18).padStart(2, '0')}${letter}`;
};

/**
 * Aim point from the threshold by the distance available for landing where none is given (ICAO Annex 14
 * volume I, 5.2.5, from memory: below 800 m 150 m, below 1,200 m 250 m, below 2,400 m 300 m, else 400 m).
 */
export const usualAimM = (landingM: number): number =>
  [
    { belowM: 800, aimM: 150 },
    { belowM: 1200, aimM: 250 },
    { belowM: 2400, aimM: 300 },
  ].find(({ belowM }) => landingM < belowM)?.aimM ?? 400;

/** Specified touchdown point beyond the aim point: 120 m, less where the strip is short. */
const USUAL_PAST_AIM_M = 120;
/** By day, at the least (Transport Canada AIM AGA 7.6, quoted; four units about 5 miles, FAA AIM 2-1-2). */
const LIGHTS_RANGE_NMI = { PAPI: 4, APAPI: 2.5 } as const;
const PAPI_SECTOR_DEG = 10;

const endOf = (draft: EndDraft, designator: string, headingDegM: number, lengthM: number): RunwayEnd => {
  const displacedThresholdM = END_READERS.displaced(draft.displaced);
  const landingM = lengthM - displacedThresholdM;
  const lightsPastM = END_READERS.lightsPast(draft.lightsPast);
  const usualM = Math.min(usualAimM(landingM), Math.round(landingM / 2));
  const aimPastThresholdM =
    END_READERS.aim(draft.aim) ?? (draft.lights === 'none' ? usualM : (lightsPastM ?? usualM));
  return {
    designator,
    headingDegM,
    displacedThresholdM,
    circuitSide: draft.side,
    slopeLights:
      draft.lights === 'none'
        ? null
        : {
            kind: draft.lights,
            angleDeg: END_READERS.lightsAngle(draft.lightsAngle),
            side: draft.lightsSide,
            pastThresholdM: lightsPastM ?? usualM,
            rangeNmi: LIGHTS_RANGE_NMI[draft.lights],
            sectorDeg: PAPI_SECTOR_DEG,
          },
    aimPastThresholdM,
    specifiedPastAimM: Math.max(
      0,
      Math.min(USUAL_PAST_AIM_M, Math.round((landingM - aimPastThresholdM) / 4)),
    ),
  };
};

/** The aerodrome that the form describes. Throws an Error sentence at the first field that cannot be used. */
export const aerodromeOfDraft = (draft: RunwayDraft): Aerodrome => {
  const r = RUNWAY_READERS;
  const title = r.title(draft.title);
  const designator = r.designator(draft.designator);
  const painted = Number(designator.slice(0, 2)) * 10;
  const heading = r.heading(draft.heading) ?? painted;
  const off = Math.abs(((heading - painted + 540) % 360) - 180);
  if (off > 5)
    throw new Error(`heading must be within 5 degrees of runway ${designator}, was "${draft.heading}"`);
  const lengthM = r.length(draft.length);
  const other = heading > 180 ? heading - 180 : heading + 180;
  const finalTurnDone = r.finalTurnDone(draft.finalTurnDone);
  const aerodrome = {
    id: ownId(title),
    title,
    description: 'Entered by you.',
    elevationFt: r.elevation(draft.elevation),
    variationDegE: r.variation(draft.variation),
    circuitHeightFt: r.circuitHeight(draft.circuitHeight),
    runway: {
      lengthM,
      widthM: r.width(draft.width),
      surface: draft.surface,
      slopePercent: r.slope(draft.slope),
      ends: [
        endOf(draft.ends[0], designator, heading, lengthM),
        endOf(draft.ends[1], otherDesignator(designator), other, lengthM),
      ],
    },
    terrain: draft.terrain,
    circuit: {
      spacingNmi: r.spacing(draft.spacing),
      descentFrom: draft.descentFrom,
      approachDeg: r.approach(draft.approach),
      crosswindTurnFt: r.crosswindTurn(draft.crosswindTurn),
      ...(finalTurnDone !== null && { finalTurnDoneFt: finalTurnDone }),
      teaching: draft.teaching,
      source: 'entered by you',
    },
    features: draft.features,
    sources: { place: 'entered by you' },
  };
  return parseAerodrome(aerodrome, title);
};

const endDraft = (end: RunwayEnd): EndDraft => ({
  side: end.circuitSide,
  displaced: String(end.displacedThresholdM),
  lights: end.slopeLights?.kind ?? 'none',
  lightsAngle: String(end.slopeLights?.angleDeg ?? 3),
  lightsSide: end.slopeLights?.side ?? 'left',
  lightsPast: end.slopeLights === null ? '' : String(end.slopeLights.pastThresholdM),
  aim: String(end.aimPastThresholdM),
});

/** The form of an aerodrome that was entered before. */
export const draftOfAerodrome = (a: Aerodrome): RunwayDraft => ({
  title: a.title,
  designator: a.runway.ends[0].designator,
  heading: String(a.runway.ends[0].headingDegM),
  length: String(a.runway.lengthM),
  width: String(a.runway.widthM),
  surface: a.runway.surface,
  elevation: String(a.elevationFt),
  slope: String(a.runway.slopePercent),
  variation: String(a.variationDegE),
  circuitHeight: String(a.circuitHeightFt),
  terrain: a.terrain,
  spacing: String(a.circuit.spacingNmi),
  approach: String(a.circuit.approachDeg),
  descentFrom: a.circuit.descentFrom,
  crosswindTurn: String(a.circuit.crosswindTurnFt),
  finalTurnDone: a.circuit.finalTurnDoneFt === undefined ? '' : String(a.circuit.finalTurnDoneFt),
  teaching: a.circuit.teaching,
  ends: [endDraft(a.runway.ends[0]), endDraft(a.runway.ends[1])],
  features: a.features,
});

/** Sentences by field, of the runway and of either end. */
export const runwayWrongs = (draft: RunwayDraft) => ({
  runway: wrongIn(draft, RUNWAY_READERS),
  ends: draft.ends.map((end) => wrongIn(end, END_READERS)) as readonly Partial<
    Record<keyof EndDraft, string>
  >[],
});
