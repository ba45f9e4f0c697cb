import { alongM, type Runway } from '../aerodrome/runway.ts';
import type { Fold } from '../session/source.ts';
import type { Snapshot } from '../simulation/snapshot.ts';
import { mFromFt } from '../units/conversions.ts';

/**
 * The runs of a flight as it was flown, along the runway: what the handbooks' tables give, from standing to the wheels
 * leaving the ground and to 50 ft, and from 50 ft and from the first touch to a stop. The take-off is the first of the
 * flight, the landing the last; plain data.
 */
export interface GroundRunsMemory {
  /** Where it stood before the take-off; null where it began rolling or in the air. */
  readonly stoodAlongM: number | null;
  /** Where the wheels last left the ground before it came to 50 ft. */
  liftOffAlongM: number | null;
  takeOffOver50AlongM: number | null;
  /** Of the landing that is going on: where it came down through 50 ft, and where it first touched. */
  landingFrom50AlongM: number | null;
  touchAlongM: number | null;
  stopAlongM: number | null;
  wasOnGround: boolean;
  lastAlongM: number;
  lastHeightM: number;
}

/** The obstacle that runs are given to and from, above the surface. */
const OVER_M = mFromFt(50);
/** Slower than this over the ground it stands. */
const STANDS_MPS = 0.5;

/** Between two steps, where the height went through 50 ft. */
const crossedAlongM = (m: GroundRunsMemory, alongNowM: number, heightM: number): number => {
  const share = (OVER_M - m.lastHeightM) / (heightM - m.lastHeightM);
  return m.lastAlongM + share * (alongNowM - m.lastAlongM);
};

const stands = (s: Readonly<Snapshot>): boolean => s.onGround && s.groundspeedMps < STANDS_MPS;

export const createGroundRunsFold = (runway: Runway): Fold<GroundRunsMemory> => ({
  begin: (s) => {
    const along = alongM(runway, s.eastM, s.northM);
    return {
      stoodAlongM: stands(s) ? along : null,
      liftOffAlongM: null,
      takeOffOver50AlongM: null,
      landingFrom50AlongM: null,
      touchAlongM: null,
      stopAlongM: null,
      wasOnGround: s.onGround,
      lastAlongM: along,
      lastHeightM: s.wheelClearanceM,
    };
  },
  step: (m, s) => {
    const along = alongM(runway, s.eastM, s.northM);
    const heightM = s.wheelClearanceM;
    if (m.takeOffOver50AlongM === null) takeOff(m, s, along);
    if (m.lastHeightM >= OVER_M && heightM < OVER_M) {
      m.landingFrom50AlongM = crossedAlongM(m, along, heightM);
      m.touchAlongM = null;
    } else if (m.lastHeightM < OVER_M && heightM >= OVER_M) {
      m.landingFrom50AlongM = null;
      m.touchAlongM = null;
    }
    if (s.onGround && !m.wasOnGround) m.touchAlongM ??= along;
    m.stopAlongM = stands(s) ? (m.stopAlongM ?? along) : null;
    m.wasOnGround = s.onGround;
    m.lastAlongM = along;
    m.lastHeightM = heightM;
  },
});

const takeOff = (m: GroundRunsMemory, s: Readonly<Snapshot>, along: number): void => {
  if (m.stoodAlongM === null) return;
  if (m.wasOnGround && !s.onGround) m.liftOffAlongM = along;
  if (m.lastHeightM < OVER_M && s.wheelClearanceM >= OVER_M)
    m.takeOffOver50AlongM = crossedAlongM(m, along, s.wheelClearanceM);
};

/** In metres, as the result file has them; null where the flight had none. */
export interface GroundRuns {
  readonly take_off_roll_m: number | null;
  readonly take_off_to_50ft_m: number | null;
  readonly landing_roll_m: number | null;
  readonly landing_from_50ft_m: number | null;
}

const between = (fromM: number | null, toM: number | null): number | null =>
  fromM === null || toM === null ? null : Math.round((toM - fromM) * 10) / 10;

export const groundRunsOf = (m: GroundRunsMemory): GroundRuns => {
  const flew = m.takeOffOver50AlongM !== null;
  return {
    take_off_roll_m: flew ? between(m.stoodAlongM, m.liftOffAlongM) : null,
    take_off_to_50ft_m: between(m.stoodAlongM, m.takeOffOver50AlongM),
    landing_roll_m: between(m.touchAlongM, m.stopAlongM),
    landing_from_50ft_m: m.touchAlongM === null ? null : between(m.landingFrom50AlongM, m.stopAlongM),
  };
};
