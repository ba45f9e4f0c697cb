/**
 * Cockpit units to SI and back. Used only where text, files or keys come in or go out;
 * inside the model every quantity is SI.
 */
import {
  KELVIN_AT_0_DEGC,
  M_PER_FT,
  M_PER_NMI,
  MPS_PER_FPM,
  MPS_PER_KT,
  PA_PER_HPA,
  PA_PER_INHG,
  RAD_PER_DEG,
  S_PER_MIN,
} from './constants.ts';

export {
  G0_MPS2,
  KELVIN_AT_0_DEGC,
  M_PER_FT,
  M_PER_NMI,
  MPS_PER_FPM,
  MPS_PER_KT,
  PA_PER_HPA,
  RAD_PER_DEG,
  S_PER_MIN,
} from './constants.ts';

/** Metres from feet. */
export const mFromFt = (ft: number): number => ft * M_PER_FT;
/** Feet from metres. */
export const ftFromM = (m: number): number => m / M_PER_FT;

/** Metres a second from knots. */
export const mpsFromKt = (kt: number): number => kt * MPS_PER_KT;
/** Knots from metres a second. */
export const ktFromMps = (mps: number): number => mps / MPS_PER_KT;

/** Metres a second from feet a minute. */
export const mpsFromFpm = (fpm: number): number => fpm * MPS_PER_FPM;
/** Feet a minute from metres a second. */
export const fpmFromMps = (mps: number): number => mps / MPS_PER_FPM;

/** Radians from degrees. */
export const radFromDeg = (deg: number): number => deg * RAD_PER_DEG;
/** Degrees from radians. */
export const degFromRad = (rad: number): number => rad / RAD_PER_DEG;

/** Metres from nautical miles. */
export const mFromNmi = (nmi: number): number => nmi * M_PER_NMI;
/** Nautical miles from metres. */
export const nmiFromM = (m: number): number => m / M_PER_NMI;

/** Kelvin from degrees Celsius. */
export const kelvinFromDegC = (degC: number): number => degC + KELVIN_AT_0_DEGC;
/** Degrees Celsius from kelvin. */
export const degCFromKelvin = (kelvin: number): number => kelvin - KELVIN_AT_0_DEGC;

/** Pascals from hectopascals. */
export const paFromHpa = (hpa: number): number => hpa * PA_PER_HPA;
/** Hectopascals from pascals. */
export const hpaFromPa = (pa: number): number => pa / PA_PER_HPA;

/** Hectopascals from inches of mercury. */
export const inHgFromHpa = (hpa: number): number => paFromHpa(hpa) / PA_PER_INHG;
export const hpaFromInHg = (inHg: number): number => hpaFromPa(inHg * PA_PER_INHG);

/** Revolutions a minute from revolutions a second. */
export const rpmFromRevps = (revps: number): number => revps * S_PER_MIN;
/** Revolutions a second from revolutions a minute. */
export const revpsFromRpm = (rpm: number): number => rpm / S_PER_MIN;
