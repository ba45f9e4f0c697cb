import { columnIndicatedAltitudeM } from '../../atmosphere/air.ts';
import { mFromFt } from '../../units/conversions.ts';
import type { Setting } from '../setting.ts';

/** What the altimeter, set to QNH, reads at a height above the landing threshold. */
export const altitudeAtM = (setting: Setting, heightM: number): number =>
  columnIndicatedAltitudeM(setting.air, setting.runway.thresholdElevationM + heightM);

/** An altimeter that errs by less than this is taken at its word. */
const WORTH_SAYING_M = mFromFt(20);

/** Whether the day makes the altimeter err enough at that height to be told. */
export const altimeterErrs = (setting: Setting, heightM: number): boolean =>
  Math.abs(altitudeAtM(setting, heightM) - setting.runway.thresholdElevationM - heightM) >= WORTH_SAYING_M;

/**
 * The altitude of a height that is asked for by name (a gate, the crosswind turn): the plain sum with the elevation,
 * as pilots reckon it, unless the altimeter errs enough to be told.
 */
export const namedAltitudeM = (setting: Setting, heightM: number): number =>
  altimeterErrs(setting, heightM)
    ? altitudeAtM(setting, heightM)
    : setting.runway.thresholdElevationM + heightM;
