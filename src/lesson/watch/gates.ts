import { lightLetters, seeLights } from '../../aerodrome/slope-lights.ts';
import {
  centrelineAllowedM,
  GATES_FT,
  GATES_M,
  LONG_FINAL_M,
  mostSinkMps,
  STABILISED,
} from '../../circuit/stabilised.ts';
import { atan2 } from '../../maths/functions.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { degFromRad, fpmFromMps, ktFromMps, mFromFt } from '../../units/conversions.ts';
import { fixed } from '../../units/format.ts';
import { closeFact } from '../close-fact.ts';
import type { ToleranceSet } from '../judge/tolerances.ts';
import type { Lesson } from '../lesson.ts';
import type { GateFault, LessonMemory } from '../memory.ts';
import type { LegName } from '../names.ts';
import { askGoAround } from './dues.ts';

const IDLE = 0.03; // our choice: a lever all but closed

const DESCENDING: ReadonlySet<LegName> = new Set(['base', 'turn-to-final', 'final']);

const SLOW_TO_SETTLE: ReadonlySet<string> = new Set(['slip', 'glide']);

/** Elevation of the wheels seen from the aim point. */
export const slopeFromAimRad = (lesson: Lesson, alongM: number, heightM: number): number => {
  const { aimM, slope } = lesson.runway;
  return atan2(heightM - slope * aimM, aimM - alongM);
};

const kt = (mps: number): string => fixed(ktFromMps(mps));
const fpm = (mps: number): string => fixed(fpmFromMps(mps));

/** One thing that is not as it should be, by its kind and as a sentence. */
interface FaultNow {
  readonly kind: GateFault;
  readonly words: string;
}

/** Everything that is not as it should be; none: stabilised. */
const kindsNow = (
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  limits: ToleranceSet,
): FaultNow[] => {
  const { plan, aeroplane, runway, where } = lesson;
  const faults: FaultNow[] = [];
  const note = (kind: GateFault, words: string): number => faults.push({ kind, words });
  if (m.legs.leg !== 'final') note('turning', `not on final yet: ${m.legs.leg.replaceAll('-', ' ')}`);
  const slopeRad = slopeFromAimRad(lesson, where.alongM, where.heightM);
  const offSlopeRad = slopeRad - plan.approachRad;
  // Without power the slope is what the glide gives, and flap comes when the runway is sure
  const gliding = lesson.task.technique === 'glide' || m.engine !== null;
  if (!gliding && Math.abs(offSlopeRad) > STABILISED.slopeRad) {
    const word = offSlopeRad > 0 ? 'high' : 'low';
    const flown = fixed(degFromRad(slopeRad), 1);
    note(
      word,
      `${word}: ${flown} deg to the aim point, wanted ${fixed(degFromRad(plan.approachRad), 1)} deg`,
    );
  }
  const allowedM = centrelineAllowedM(plan, runway.aimM - where.alongM);
  if (Math.abs(where.acrossM) > allowedM) {
    const side = where.acrossM > 0 ? 'right' : 'left';
    note(
      'centreline',
      `${fixed(Math.abs(where.acrossM))} m ${side} of the centreline, allowed ${fixed(allowedM)} m`,
    );
  }
  const offKt = ktFromMps(m.smoothIasMps - plan.approachIasMps);
  const { below, above } = limits.allowed.approachSpeedKt;
  if (offKt > above || offKt < -below) {
    const word = offKt > 0 ? 'fast' : 'slow';
    note(
      word,
      `${fixed(Math.abs(offKt))} kt ${word}: ${kt(m.smoothIasMps)} kt, wanted ${kt(plan.approachIasMps)} kt`,
    );
  }
  if (Math.abs(m.smoothBankRad) > STABILISED.bankRad) {
    note(
      'bank',
      `banked ${fixed(degFromRad(Math.abs(m.smoothBankRad)))} deg, allowed ${fixed(degFromRad(STABILISED.bankRad))} deg`,
    );
  }
  const sink = -s.indicatedVerticalSpeedMps;
  const sinkAllowed = mostSinkMps(plan);
  if (!gliding && sink > sinkAllowed)
    note('sink', `sinking ${fpm(sink)} ft/min, allowed ${fpm(sinkAllowed)} ft/min`);
  const stage = aeroplane.plan.finalStage;
  if (!gliding && s.flapStage < stage) note('flap', `flap stage ${s.flapStage}, wanted ${stage}`);
  if (aeroplane.undercarriage.retractable && s.gear < 1) note('gear', 'wheels not down');
  const onPower = !gliding && lesson.task.technique !== 'slip';
  if (onPower && where.throttle < IDLE && s.engineRevps > 0) note('idle', 'power at idle');
  return faults;
};

/** The same, each as a sentence. */
export const faultsNow = (
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  limits: ToleranceSet,
): string[] => kindsNow(m, lesson, s, limits).map(({ words }) => words);

/** Looks at the slope lights while descending, and notes every gate that has been passed since the last look. */
export const watchGates = (
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
  limits: ToleranceSet,
): void => {
  const { where, runway, plan, seen } = lesson;
  if (!DESCENDING.has(m.legs.leg)) {
    m.lights = '';
    if (m.legs.leg !== 'hold-off' && m.legs.leg !== 'landing-roll') m.gatesPassed = 0;
    return;
  }
  if (runway.lights !== null) {
    seeLights(runway, s.eyeEastM, s.eyeNorthM, s.eyeHeightM, seen);
    m.lights = lightLetters(seen);
  }
  while (m.gatesPassed < GATES_FT.length) {
    const gateFt = GATES_FT[m.gatesPassed] as number;
    const gateM = mFromFt(gateFt);
    const ofLongFinal = gateM === GATES_M.longFinal;
    if (where.heightM >= gateM) return;
    m.gatesPassed += 1;
    const crossed = m.lastHeightM >= gateM;
    const onFinal = m.legs.leg === 'final';
    // In a circuit whose plan is still turning here, this gate has nothing to say.
    const planned = plan.rollOutOnFinalHeightM > gateM;
    if (!crossed || where.alongM > runway.aimM || (!onFinal && (!planned || ofLongFinal))) continue;
    const share = (m.lastHeightM - gateM) / (m.lastHeightM - where.heightM);
    const longFinal = onFinal && m.finalFromM > LONG_FINAL_M;
    // A slip or the last turn of a glide is over by the last call; with a dead engine there is nothing to decide
    const early = SLOW_TO_SETTLE.has(lesson.task.technique) ? false : ofLongFinal ? longFinal : planned;
    const decides = m.engine === null && (gateM === GATES_M.lastCall || early);
    const faults = kindsNow(m, lesson, s, limits);
    const why = faults.map(({ words }) => words);
    const gate = {
      circuit: m.legs.circuit,
      heightFt: gateFt,
      atS: m.lastS + share * (where.timeS - m.lastS),
      slopeRad: slopeFromAimRad(lesson, where.alongM, where.heightM),
      lights: runway.lights === null ? null : m.lights,
      iasMps: s.iasMps,
      sinkMps: -s.verticalSpeedMps,
      centrelineM: where.acrossM,
      bankRad: s.bankRad,
      why,
      faults: faults.map(({ kind }) => kind),
      decides,
    };
    m.gates.push(closeFact(gate));
    if (decides && why.length > 0) {
      askGoAround(m, {
        dueS: where.timeS,
        heightM: where.heightM,
        why: `not stabilised at ${gateFt} ft: ${why.join('; ')}`,
        id: 'gate',
        gateFt,
      });
    }
  }
};
