/**
 * How the model pilot lands, over many days: measured from the Snapshots and levers alone, as somebody in the other
 * seat would note it; only the reason for a go-around is the pilot's own word.
 */
import { acrossM, alongM } from '../../src/aerodrome/runway.ts';
import { createPilot, refusal } from '../../src/pilot/pilot.ts';
import type { Model } from '../../src/simulation/model.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { degFromRad, fpmFromMps, ftFromM, ktFromMps } from '../../src/units/conversions.ts';
import { aerodromeFiles } from './aerodromes.ts';
import { aeroplaneFiles } from './aeroplanes.ts';
import { type Day, dayScenario } from './circuit-flight.ts';
import { beginFlight, flyStep } from './flight.ts';

const id = (file: string): string => file.replace('.json', '');
const AEROPLANES = aeroplaneFiles().map(id);
const AERODROMES = aerodromeFiles().map(id);
const ENDS: Readonly<Record<string, readonly [string, string]>> = {
  'curlew-sands': ['04', '22'],
  'dunlin-ridge': ['27', '09'],
  'plover-meadow': ['31', '13'],
  'ptarmigan-flat': ['16', '34'],
};
/** From the landing direction, and how strong. */
const WINDS_KT = [[0], [5], [10], [15], [15, 24]] as const;
const FROM_DEG = [0, 25, -40, 60, -75] as const;

/** Three hundred days: every aeroplane at every aerodrome in every wind; ends, turbulence and luck by turns. */
export const gridDays = (): Day[] => {
  const days: Day[] = [];
  AEROPLANES.forEach((aeroplane, a) => {
    AERODROMES.forEach((aerodrome, d) => {
      WINDS_KT.forEach(([windKt, gustKt], w) => {
        FROM_DEG.forEach((windDeg, f) => {
          const turn = a + d + w + f;
          days.push({
            aeroplane,
            aerodrome,
            runway: ENDS[aerodrome]?.[turn % 2] ?? '',
            windDeg,
            windKt,
            ...(gustKt !== undefined && { gustKt }),
            turbulence: (w + f) % 2 === 0 ? 'none' : 'light',
            seed: 1 + days.length,
          });
        });
      });
    });
  });
  return days;
};

export type Outcome = 'refused' | 'stopped' | 'ran-off' | 'crashed' | 'time-up';

/** When a flap lever went down on the way to land. */
export interface FlapMove {
  readonly stage: number;
  readonly heightFt: number;
  readonly bankDeg: number;
  readonly iasKt: number;
  readonly limitKt: number;
  /** Of the wheels above the slope to the aim point, in degrees seen from there; NaN but on final. */
  readonly aboveSlopeDeg: number;
}

export interface Contact {
  readonly sinkFpm: number;
  readonly beyondPointM: number;
  readonly iasKt: number;
  readonly throttle: number;
  readonly centrelineM: number;
  readonly driftKt: number;
  readonly crabDeg: number;
  /** After a hop of a foot or more; else the first of a landing. */
  readonly bounce: boolean;
}

export interface GridFlight {
  readonly day: Day;
  readonly outcome: Outcome;
  readonly why: string;
  readonly goArounds: readonly string[];
  readonly contacts: readonly Contact[];
  /** Of the last landing. */
  readonly fastOverThresholdKt: number;
  readonly throttleRoundedOut: number;
  readonly noseAfterS: number;
  /** The most that the nose comes down in half a second, as a rate. */
  readonly noseRateDegps: number;
  readonly brakeBeforeNose: boolean;
  readonly flaps: readonly FlapMove[];
  readonly remainingM: number;
}

const TWENTY_FT_M = 6.1;
const HOP_M = 0.3;
const ROUNDED_OUT_M = 1;
const ROUNDED_OUT_MPS = 0.5;
const LONGEST_S = 30 * 60;
const HALF_A_SECOND = 30;
/** The needle as an eye reads it over the threshold. */
const READING_S = 1;

const watchDay = (model: Model, aimSlope: number, approachKt: number) => {
  const { runway } = model;
  const stages = model.shape.aeroplane.flap.stages;
  const seen = {
    contacts: [] as Contact[],
    flaps: [] as FlapMove[],
    fastOverThresholdKt: Number.NaN,
    throttleRoundedOut: Number.NaN,
    noseAfterS: Number.NaN,
    noseRateDegps: 0,
    brakeBeforeNose: false,
    ranOff: false,
  };
  let iasKt = 0;
  let high = false;
  let landing = false;
  let hopM = 0;
  let wasOnGround = true;
  let wasX = 0;
  let wasParting = 0;
  let stage = 0;
  let touchedS = Number.NaN;
  let pitchesDeg: number[] = [];
  const look = (s: Readonly<Snapshot>): void => {
    const x = alongM(runway, s.eastM, s.northM);
    const y = acrossM(runway, s.eastM, s.northM);
    iasKt += (ktFromMps(s.iasMps) - iasKt) / (60 * READING_S);
    if (s.wheelClearanceM > TWENTY_FT_M) {
      if (landing || !high) {
        seen.throttleRoundedOut = Number.NaN;
        seen.fastOverThresholdKt = Number.NaN;
      }
      high = true;
      landing = false;
    }
    if (!s.onGround) hopM = Math.max(hopM, s.wheelClearanceM);
    const inbound = Math.abs(wrapPi(s.trackRadT - runway.headingRadT)) < 0.5;
    if (inbound && wasX < 0 && x >= 0 && !s.onGround && high) seen.fastOverThresholdKt = iasKt - approachKt;
    const parting = s.verticalSpeedMps - runway.slope * s.groundspeedMps;
    const low = inbound && x > -200 && s.wheelClearanceM < TWENTY_FT_M;
    const over = s.wheelClearanceM < ROUNDED_OUT_M || parting > -ROUNDED_OUT_MPS;
    if (high && !landing && low && over && Number.isNaN(seen.throttleRoundedOut))
      seen.throttleRoundedOut = s.throttle;
    if (s.onGround && !wasOnGround && high && (!landing || hopM > HOP_M)) {
      if (!landing) {
        touchedS = s.timeS;
        seen.noseAfterS = Number.NaN;
        seen.noseRateDegps = 0;
        seen.brakeBeforeNose = false;
        pitchesDeg = [];
      }
      seen.contacts.push({
        sinkFpm: -fpmFromMps(wasParting),
        beyondPointM: x - runway.specifiedM,
        iasKt: ktFromMps(s.iasMps),
        throttle: s.throttle,
        centrelineM: Math.abs(y),
        driftKt: Math.abs(ktFromMps(s.groundspeedMps * Math.sin(s.trackRadT - runway.headingRadT))),
        crabDeg: Math.abs(degFromRad(wrapPi(s.headingRadT - runway.headingRadT))),
        bounce: landing,
      });
      landing = true;
    }
    if (s.onGround) hopM = 0;
    if (landing && Number.isNaN(seen.noseAfterS)) {
      pitchesDeg.push(degFromRad(s.pitchRad));
      const before = pitchesDeg[pitchesDeg.length - 1 - HALF_A_SECOND] ?? Number.NaN;
      const rate = (before - degFromRad(s.pitchRad)) / 0.5;
      if (rate > seen.noseRateDegps) seen.noseRateDegps = rate;
      if (s.brake > 0.05) seen.brakeBeforeNose = true;
      if (s.noseWheelOnGround) seen.noseAfterS = s.timeS - touchedS;
    }
    if (landing && s.onGround && !s.onRunway) seen.ranOff = true;
    if (s.flapStage > stage && s.wheelClearanceM > 1)
      seen.flaps.push({
        stage: s.flapStage,
        heightFt: ftFromM(s.heightM),
        bankDeg: Math.abs(degFromRad(s.bankRad)),
        iasKt: ktFromMps(s.iasMps),
        limitKt: stages[s.flapStage]?.limitKt ?? 0,
        aboveSlopeDeg:
          inbound && x < 0
            ? degFromRad(
                Math.atan2(s.heightM - runway.slope * runway.aimM, runway.aimM - x) - Math.atan(aimSlope),
              )
            : Number.NaN,
      });
    stage = s.flapStage;
    wasOnGround = s.onGround;
    wasParting = parting;
    wasX = x;
  };
  return { seen, look };
};

/** Flies one day from its start to a stop. */
export const flyGridDay = (day: Day): GridFlight => {
  const { scenario, model, plan } = dayScenario(day);
  const refused = refusal(model, plan);
  const aimSlope = Math.tan(plan.approachRad);
  const { seen, look } = watchDay(model, aimSlope, ktFromMps(plan.approachIasMps));
  const goArounds: string[] = [];
  const of = (outcome: Outcome, why: string, remainingM: number): GridFlight => ({
    day,
    outcome,
    why,
    goArounds,
    remainingM,
    ...seen,
  });
  if (refused !== null) return of('refused', refused, Number.NaN);
  const pilot = createPilot(model, plan);
  const flight = beginFlight(scenario);
  const memory = pilot.begin(flight.seen, flight.controls);
  const { runway } = model;
  const remainingM = (): number => runway.surfaceEndM - alongM(runway, flight.seen.eastM, flight.seen.northM);
  for (let i = 0; i < LONGEST_S * 60; i += 1) {
    flyStep(flight, (s, controls) => pilot.next(s, memory, controls));
    look(flight.seen);
    if (memory.goArounds > goArounds.length) {
      goArounds.push(`${memory.goAroundWhy}${seen.contacts.length > 0 ? ' (after a touch)' : ''}`);
    }
    if (flight.seen.ended !== null) return of('crashed', flight.seen.endedWhy, remainingM());
    const off = seen.ranOff && flight.seen.onGround;
    if (flight.seen.parked && seen.contacts.length > 0)
      return off
        ? of('ran-off', `stopped off the runway, ${remainingM().toFixed(0)} m before its end`, remainingM())
        : of('stopped', '', remainingM());
    if (off && remainingM() < -100) return of('ran-off', 'rolled off the runway', remainingM());
  }
  return of('time-up', 'half an hour was not enough', remainingM());
};
