import { isaTemperatureK, pressureAltitudeFromPa } from '../../atmosphere/isa.ts';
import { degCFromKelvin, ftFromM, kelvinFromDegC, mpsFromKt } from '../../units/conversions.ts';
import { windOnRunway } from '../runway-choice.ts';
import type { Setting } from '../setting.ts';
import type { RunBrief, RunsBrief } from './types.ts';

/**
 * The usual factors on the distances over 50 ft, one table and not a blend of several: per 1,000 ft +10/+5 %, per 10 degrees
 * above standard +10/+5 %, dry short grass +20 %, slope 2 % up +10/-10 %, 1 % down -5/+5 %, tailwind of 10 %
 * of the lift-off speed +20/+20 %. Source: a published table akin to the UK CAA's safety leaflet
 * (tests/reference/ground.ts). No headwind is counted. Factors multiply; then x 1.33 and x 1.43 (from memory;
 * 1.43 is also the Class B landing factor). For landing on
 * dry grass that table says 20 %, the Class B rules and the leaflet itself (from memory) 15 %: the rules are followed.
 */
const PER_1000_FT = { takeOff: 0.1, landing: 0.05 };
const PER_10_DEGC = { takeOff: 0.1, landing: 0.05 };
const DRY_GRASS = { takeOff: 0.2, landing: 0.15 };
const PER_PERCENT_UP = { takeOff: 0.05, landing: -0.05 };
const PER_TENTH_OF_LIFT_OFF = { takeOff: 0.2, landing: 0.2 };
export const MARGIN = { takeOff: 1.33, landing: 1.43 } as const;

const RUNS_SOURCE = 'factors: a published table akin to the UK CAA safety leaflet; no headwind counted';

type Kind = 'takeOff' | 'landing';

function factorsOf(setting: Setting, kind: Kind): RunBrief['factors'] {
  const { runway, air, weather, aeroplane } = setting;
  const pressureAltitudeM = pressureAltitudeFromPa(air.elevationPressurePa);
  const warmerC = weather.temperatureC - degCFromKelvin(isaTemperatureK(pressureAltitudeM));
  const liftOffMps = mpsFromKt(aeroplane.speeds.rotateKt);
  const tailMps = Math.max(0, -windOnRunway(runway, weather).headwindMps);
  const slopePercent = runway.slope * 100;
  const thousandsFt = Math.max(0, ftFromM(pressureAltitudeM)) / 1000;
  const rows = [
    { name: 'pressure altitude', factor: 1 + PER_1000_FT[kind] * thousandsFt },
    { name: 'warmth', factor: 1 + PER_10_DEGC[kind] * (Math.max(0, warmerC) / 10) },
    { name: 'dry short grass', factor: runway.surface === 'grass' ? 1 + DRY_GRASS[kind] : 1 },
    { name: 'slope', factor: 1 + PER_PERCENT_UP[kind] * slopePercent },
    { name: 'tailwind', factor: 1 + PER_TENTH_OF_LIFT_OFF[kind] * ((10 * tailMps) / liftOffMps) },
  ];
  return rows.filter((row) => Math.abs(row.factor - 1) > 0.004);
}

/** To the next five metres, up: what is multiplied is what is shown. */
const roundedUp = (metres: number): number => 5 * Math.ceil(metres / 5);
const inHundredths = (factor: number): number => Math.round(factor * 100) / 100;

const FIGURES = {
  takeOff: (s: Setting) => [s.takeOffRunM, s.takeOffTo50FtM, s.standard.takeOffTo50FtM] as const,
  landing: (s: Setting) => [s.landingRunM, s.landingFrom50FtM, s.standard.landingFrom50FtM] as const,
};

function runBrief(setting: Setting, kind: Kind, availableM: number): RunBrief {
  const [groundRunM, over50FtM, standard] = FIGURES[kind](setting);
  const modelM = roundedUp(over50FtM);
  const standardM = roundedUp(standard);
  const factors = factorsOf(setting, kind).map((row) => ({ ...row, factor: inHundredths(row.factor) }));
  const byFactorsM = Math.round(factors.reduce((m, { factor }) => m * factor, standardM));
  const margin = MARGIN[kind];
  const withMarginM = Math.round(margin * Math.max(modelM, byFactorsM));
  return {
    groundRunM: roundedUp(groundRunM),
    modelM,
    standardM,
    factors,
    byFactorsM,
    margin,
    withMarginM,
    availableM,
    fits: withMarginM <= availableM,
  };
}

/** Take-off from the start of the surface to 50 ft; landing from 50 ft over the threshold. */
export const runsBrief = (setting: Setting): RunsBrief => ({
  takeOff: runBrief(setting, 'takeOff', setting.runway.takeOffDistanceM),
  landing: runBrief(setting, 'landing', setting.runway.landingLengthM),
  source: RUNS_SOURCE,
});

/** Degrees warmer than standard at the aerodrome. */
export const warmerThanStandardC = (setting: Setting): number =>
  kelvinFromDegC(setting.weather.temperatureC) -
  isaTemperatureK(pressureAltitudeFromPa(setting.air.elevationPressurePa));
