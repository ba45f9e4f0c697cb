/**
 * Deliberate mistakes, each flown on six days by the independent student, and what an instructor would say first.
 * What is expected was written from the mistake, not from what the program says. A flight counts whose mistake did
 * spoil something: something is red, amber or worse that the same student's flight without it has not. Where the
 * student flies badly without the mistake too, the worst is somebody else's, and the flight is left out.
 */
import type { CircuitPlan } from '../../src/circuit/types.ts';
import type { FlownResult } from '../../src/formats/result.ts';
import type { ControlSource } from '../../src/session/source.ts';
import type { Model } from '../../src/simulation/model.ts';
import { standardDay } from '../../src/simulation/performance/standard-day.ts';
import type { Snapshot } from '../../src/simulation/snapshot.ts';
import { wrapPi } from '../../src/units/angles.ts';
import { mpsFromKt, radFromDeg } from '../../src/units/conversions.ts';
import { aerodromeNamed } from './aerodromes.ts';
import type { Mistakes } from './student/faults.ts';
import { flyWith, type StudentDay, type StudentFlight } from './student/flights.ts';
import { type Person, personNamed } from './student/person.ts';
import { createStudent } from './student/student.ts';

export interface Mistake {
  readonly name: string;
  /** Where the flight begins; at the line-up where none is named. */
  readonly leg?: FromLeg;
  readonly mistakes: Mistakes;
  /** What the first line must speak of. */
  readonly says: RegExp;
  /** What else the day has. */
  readonly day?: Partial<StudentDay>;
  readonly turnsBack?: true;
}

const ON = { goesOnWhatever: true } as const;

export const MISTAKES: readonly Mistake[] = [
  {
    name: 'base late',
    leg: 'downwind',
    mistakes: { baseLateS: 16, ...ON },
    says: /base\b.*\blate|late.*\bbase/i,
  },
  {
    name: 'base early',
    leg: 'downwind',
    mistakes: { baseLateS: -16, ...ON },
    says: /base\b.*\bearly|early.*\bbase/i,
  },
  {
    name: 'descent late',
    leg: 'downwind',
    mistakes: { descentLateS: 30, ...ON },
    says: /descent|way down/i,
  },
  {
    name: 'high on downwind',
    leg: 'downwind',
    mistakes: { downwindHighFt: 230, ...ON },
    says: /downwind.*\b(?:high|above)|\b(?:high|above).*downwind|downwind: height/i,
  },
  {
    name: 'too little power, low under four reds',
    leg: 'base',
    mistakes: { finalPowerRpm: -600, leavesFinalAlone: true, ...ON },
    says: /short of|no runway|power.*(?:low|reds?)|(?:low|reds?).*power/i,
  },
  {
    name: 'fast on final',
    leg: 'base',
    mistakes: { finalFastKt: 16, ...ON },
    says: /final.*fast|fast.*final/i,
  },
  {
    name: 'slow on final',
    leg: 'base',
    mistakes: { finalFastKt: -13, ...ON },
    says: /slow|stall/i,
  },
  {
    name: 'over-banked final turn',
    leg: 'base',
    mistakes: { finalLateS: 5, steepestFinalDeg: 60, ...ON },
    says: /bank/i,
  },
  { name: 'no flap', leg: 'downwind', mistakes: { flapFewer: 3, ...ON }, says: /flap/i },
  {
    name: 'rounded out high',
    leg: 'final',
    mistakes: { levelsHighFt: 18, landsWhatever: true },
    says: /round(?:ed)?[ -]out.*high|levelled.*(?:high|above|at \d+)|high.*round/i,
  },
  {
    name: 'rounded out late',
    leg: 'final',
    mistakes: { roundOutHighFt: -14, pullShare: 0.6 },
    says: /round(?:ed)?[ -]out.*(?:late|low)|late.*round|hardly round/i,
  },
  {
    name: 'snatched round-out',
    leg: 'final',
    mistakes: { snatchesDeg: 4, landsWhatever: true },
    says: /quick|snatch|balloon/i,
  },
  {
    name: 'pushed after a balloon',
    leg: 'final',
    mistakes: { snatchesDeg: 5, pushesAfterBalloon: true, landsWhatever: true },
    says: /push|balloon/i,
  },
  {
    name: 'floated with power on',
    leg: 'final',
    mistakes: { keepsPowerInFlare: true, addsPowerInFlareRpm: 350, landsWhatever: true },
    says: /float|power.*(?:round-out|on)/i,
  },
  {
    name: 'drifted at the touch',
    leg: 'final',
    mistakes: { noWingDown: true },
    says: /drift/i,
  },
  {
    name: 'crab at the touch',
    leg: 'final',
    mistakes: { leavesCrab: true },
    says: /crab|straighten|nose (?:still )?to the (?:left|right)|alignment/i,
  },
  {
    name: 'nose wheel first',
    leg: 'final',
    mistakes: { landsFlat: true },
    says: /nose ?-?wheel|nose leg|flat/i,
  },
  { name: 'stood on the brakes', leg: 'final', mistakes: { locksBrakes: true }, says: /brake/i },
  {
    name: 'forgot every check',
    leg: 'downwind',
    mistakes: {},
    says: /check/i,
    day: {
      procedures: {
        radio: 'untowered',
        words: 'icao',
        subscaleHpa: Math.round(standardDay(aerodromeNamed('curlew-sands').elevationFt).qnhHpa),
        traffic: [],
      },
    },
  },
  {
    name: 'turned back after engine failure',
    mistakes: {},
    turnsBack: true,
    says: /turn(?:ed|ing)? back/i,
    day: { failures: [{ what: 'engine-stop', atS: 5, amount: 0.5, aboveFt: 330 }] },
  },
  {
    name: 'stayed below a failed gate',
    leg: 'base',
    mistakes: { driftsOn: 'final', ...ON },
    says: /went on|go-around was due/i,
  },
];

/** A careful student with a gamepad, so that what goes wrong is the mistake's. */
const CAREFUL: Person = {
  ...personNamed('by gamepad'),
  name: 'careful',
  glanceS: 0.3,
  reactionS: 0.25,
  correctS: 1.6,
  powerStepRpm: 50,
  wander: { speedKt: 0.7, heightFt: 8, headingDeg: 0.7, slopeDeg: 0.06, acrossShare: 0.02, flareFt: 1 },
  lateS: 0.1,
  scatterS: 0.3,
};

type FromLeg = 'downwind' | 'base' | 'final';
interface MistakeDay {
  readonly air: StudentDay;
  /** The careful student's luck, chosen so that the flight without the mistake has nothing red. */
  readonly luck: Readonly<Record<FromLeg, number>>;
}

/** Days 1 to 3 and 7 to 11 to tune by, 4 to 6 to report, 12 to 15 never seen before the last report. This student puts the wheels down where it aims, so the point lies there. */
export const MISTAKE_DAYS: readonly MistakeDay[] = [
  { air: { windDeg: 40, windKt: 6, seed: 11 }, luck: { downwind: 5, base: 2, final: 5 } },
  { air: { windDeg: 60, windKt: 11, seed: 12 }, luck: { downwind: 9, base: 6, final: 1 } },
  { air: { windDeg: -65, windKt: 9, seed: 13 }, luck: { downwind: 12, base: 5, final: 12 } },
  {
    air: { windDeg: 30, windKt: 10, turbulence: 'light', seed: 24 },
    luck: { downwind: 7, base: 5, final: 7 },
  },
  {
    air: { windDeg: -75, windKt: 9, aeroplane: 'dotterel', seed: 15 },
    luck: { downwind: 4, base: 7, final: 5 },
  },
  {
    air: { windDeg: 55, windKt: 12, aeroplane: 'whimbrel', seed: 16 },
    luck: { downwind: 10, base: 4, final: 10 },
  },
  // Further days to tune by
  {
    air: { windDeg: 20, windKt: 9, turbulence: 'light', seed: 41 },
    luck: { downwind: 8, base: 8, final: 1 },
  },
  {
    air: { windDeg: -40, windKt: 8, turbulence: 'light', seed: 42 },
    luck: { downwind: 1, base: 11, final: 1 },
  },
  {
    air: { windDeg: 70, windKt: 8, aeroplane: 'dotterel', seed: 43 },
    luck: { downwind: 1, base: 1, final: 2 },
  },
  {
    air: { windDeg: -50, windKt: 11, aeroplane: 'whimbrel', seed: 44 },
    luck: { downwind: 2, base: 2, final: 1 },
  },
  {
    air: { windDeg: 60, windKt: 10, aeroplane: 'dotterel', turbulence: 'light', seed: 45 },
    luck: { downwind: 1, base: 1, final: 2 },
  },
  // Chosen when all was tuned, and flown once
  { air: { windDeg: -30, windKt: 10, seed: 61 }, luck: { downwind: 1, base: 3, final: 1 } },
  { air: { windDeg: 80, windKt: 8, seed: 62 }, luck: { downwind: 1, base: 1, final: 1 } },
  {
    air: { windDeg: 45, windKt: 7, turbulence: 'light', seed: 63 },
    luck: { downwind: 1, base: 2, final: 8 },
  },
  {
    air: { windDeg: -60, windKt: 8, aeroplane: 'dotterel', seed: 64 },
    luck: { downwind: 1, base: 1, final: 1 },
  },
];

const towards = (x: number, goal: number, by: number): number => Math.max(x - by, Math.min(x + by, goal));

/** Without an engine it banks steeply for the runway behind, the nose a little below the horizon. */
const turningBack = (
  model: Model,
  plan: CircuitPlan,
  student: ControlSource<unknown>,
): ControlSource<unknown> => ({
  ...student,
  next: (s: Readonly<Snapshot>, memory, controls) => {
    student.next(s, memory, controls);
    if (!s.engineDead || s.onGround) return;
    const backRad = wrapPi(model.runway.headingRadT + Math.PI);
    const left = wrapPi(backRad - s.headingRadT);
    const way = Math.abs(left) > 2.6 ? plan.side : Math.sign(left);
    const bankRad = Math.abs(left) < 0.15 ? 0 : way * radFromDeg(Math.min(45, 20 + Math.abs(left) * 30));
    const wantPitch = s.iasMps < mpsFromKt(60) ? radFromDeg(-6) : radFromDeg(-2);
    const flare = s.wheelClearanceM < 6 ? radFromDeg(5) : wantPitch;
    controls.aileron = Math.max(-0.6, Math.min(0.6, 1.6 * (bankRad - s.bankRad) - 0.4 * s.rollRateRadps));
    const pull = controls.elevator + 0.05 * (flare - s.pitchRad) - 0.02 * s.pitchRateRadps;
    controls.elevator = towards(controls.elevator, Math.max(-0.6, Math.min(0.6, pull)), 0.02);
  },
});

export const flyMistake = (mistake: Mistake, dayIndex: number, made: boolean): StudentFlight => {
  const day = MISTAKE_DAYS[dayIndex];
  if (day === undefined)
    throw new Error(`mistakes: there are ${MISTAKE_DAYS.length} days, asked for ${dayIndex}`);
  const asked: StudentDay = {
    ...day.air,
    pointPastAimM: 0,
    ...(mistake.leg !== undefined && { leg: mistake.leg }),
    ...(made && mistake.day),
  };
  return flyWith(asked, (model, plan) => {
    const mistakes = made ? mistake.mistakes : {};
    const luck = day.luck[mistake.leg ?? 'downwind'];
    const student = createStudent(model, plan, CAREFUL, mistakes, luck) as ControlSource<unknown>;
    return made && mistake.turnsBack === true ? turningBack(model, plan, student) : student;
  });
};

/** What is wrong with a flight, by names that can be compared. */
const troubles = ({ outcome, safety, items, go_arounds }: FlownResult): ReadonlyMap<string, number> => {
  const found = new Map<string, number>();
  if (outcome !== 'stopped') found.set(`ended: ${outcome}`, 3);
  for (const { what } of safety) found.set(what.replace(/[\d.]+/g, '#'), 3);
  for (const { at_s, why } of go_arounds) if (at_s === null) found.set(`due: ${why.split(':')[0]}`, 3);
  for (const { id, band } of items)
    if (band === 'red' || band === 'amber') found.set(id, band === 'red' ? 2 : 1);
  return found;
};

/** Why a flight does not count; null where it does. */
export const leftOutBecause = (flown: FlownResult, twin: FlownResult): string | null => {
  const [with_, without] = [troubles(flown), troubles(twin)];
  const worst = Math.max(0, ...without.values());
  if (worst >= 2) return 'flown badly without it too';
  const more = [...with_].some(([name, size]) => size > (without.get(name) ?? 0));
  return more ? null : 'it spoiled nothing';
};
