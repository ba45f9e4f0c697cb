import * as v from 'valibot';
import { describeIssue } from '../units/issues.ts';
import { type Aeroplane, aeroplaneSchema } from './schema.ts';

/** The plan's flap stages, by the key that must name one. */
const PLANNED = ['takeOffStage', 'downwindStage', 'baseStage', 'finalStage', 'landingStage'] as const;

const massWrong = ({ massKg }: Aeroplane): string | null => {
  if (massKg.maximum <= massKg.empty)
    return `massKg.maximum must be above the empty mass ${massKg.empty}, was ${massKg.maximum}`;
  if (massKg.flown < massKg.empty || massKg.flown > massKg.maximum)
    return `massKg.flown must be from ${massKg.empty} (empty) to ${massKg.maximum} (maximum), was ${massKg.flown}`;
  return null;
};

/** Flap stages run from up to fully down: more angle, never more speed. */
const flapWrong = ({ flap: { stages } }: Aeroplane): string | null => {
  if (stages[0]?.deg !== 0) return `flap.stages[0].deg must be 0 (flap up), was ${stages[0]?.deg}`;
  for (let i = 1; i < stages.length; i += 1) {
    const less = stages[i - 1]!;
    const more = stages[i]!;
    const place = `flap.stages[${i}]`;
    if (more.deg <= less.deg)
      return `${place}.deg must be above the stage before it (${less.deg}), was ${more.deg}`;
    if (more.maximumLiftCoefficient < less.maximumLiftCoefficient)
      return `${place}.maximumLiftCoefficient must be at least the stage before it (${less.maximumLiftCoefficient}), was ${more.maximumLiftCoefficient}`;
    if (more.limitKt > less.limitKt)
      return `${place}.limitKt must be at most the stage before it (${less.limitKt}), was ${more.limitKt}`;
  }
  return null;
};

const planWrong = ({ plan, flap: { stages } }: Aeroplane): string | null => {
  for (const key of PLANNED)
    if (plan[key] >= stages.length)
      return `plan.${key} must be one of the flap stages 0 to ${stages.length - 1}, was ${plan[key]}`;
  return null;
};

const limitsWrong = ({ limits, speeds, flap, plan, engine }: Aeroplane): string | null => {
  if (limits.vnoKt >= limits.vneKt)
    return `limits.vnoKt must be below limits.vneKt ${limits.vneKt}, was ${limits.vnoKt}`;
  if (engine.idleRpm >= engine.ratedRpm)
    return `engine.idleRpm must be below engine.ratedRpm ${engine.ratedRpm}, was ${engine.idleRpm}`;
  const flown: readonly (readonly ['downwindKt' | 'baseKt' | 'finalKt' | 'finalFullFlapKt', number])[] = [
    ['downwindKt', plan.downwindStage],
    ['baseKt', plan.baseStage],
    ['finalKt', plan.finalStage],
    ['finalFullFlapKt', plan.landingStage],
  ];
  for (const [key, stage] of flown) {
    const { limitKt, deg } = flap.stages[stage]!;
    if (speeds[key] > limitKt)
      return `speeds.${key} must be at most ${limitKt}, the limit of flap ${deg} planned there, was ${speeds[key]}`;
  }
  return null;
};

/** A gear that moves has its limit speeds, and they allow what is planned. */
const gearWrong = ({ undercarriage, limits, speeds, drag }: Aeroplane): string | null => {
  if (!undercarriage.retractable) return null;
  const { gearOperatingKt, gearExtendedKt, vneKt } = limits;
  if (gearOperatingKt === undefined || gearExtendedKt === undefined)
    return 'limits must have gearOperatingKt and gearExtendedKt when the gear is retractable';
  if (gearExtendedKt > vneKt)
    return `limits.gearExtendedKt must be at most limits.vneKt ${vneKt}, was ${gearExtendedKt}`;
  if (gearOperatingKt > gearExtendedKt)
    return `limits.gearOperatingKt must be at most limits.gearExtendedKt ${gearExtendedKt}, was ${gearOperatingKt}`;
  if (speeds.downwindKt > gearOperatingKt)
    return `speeds.downwindKt must be at most ${gearOperatingKt}, where the gear is lowered, was ${speeds.downwindKt}`;
  if (drag.gear === 0) return 'drag.gear must be above 0 when the gear is retractable, was 0';
  return null;
};

/** A propeller that is governed has stops, a lever and powers told by manifold pressure. */
const propellerWrong = ({ propeller, engine, plan, equipment }: Aeroplane): string | null => {
  const governed = propeller.kind === 'constant-speed';
  if (equipment.propellerLever !== governed)
    return `equipment.propellerLever must be ${governed} with a ${propeller.kind} propeller, was ${equipment.propellerLever}`;
  if (propeller.kind === 'fixed-pitch') return null;
  if (propeller.coarsePitchDeg <= propeller.finePitchDeg)
    return `propeller.coarsePitchDeg must be above propeller.finePitchDeg ${propeller.finePitchDeg}, was ${propeller.coarsePitchDeg}`;
  if (propeller.lowestRpm >= engine.ratedRpm)
    return `propeller.lowestRpm must be below engine.ratedRpm ${engine.ratedRpm}, was ${propeller.lowestRpm}`;
  if (plan.circuitRpm === undefined || plan.baseManifoldInHg === undefined)
    return 'plan must have circuitRpm and baseManifoldInHg with a constant-speed propeller';
  if (plan.circuitRpm < propeller.lowestRpm || plan.circuitRpm > engine.ratedRpm)
    return `plan.circuitRpm must be from ${propeller.lowestRpm} to ${engine.ratedRpm}, was ${plan.circuitRpm}`;
  return null;
};

const claimsWrong = ({ claims }: Aeroplane): string | null => {
  for (const [key, { value, low, high }] of Object.entries(claims)) {
    if (low > value) return `claims.${key}.low must be at most its value ${value}, was ${low}`;
    if (high < value) return `claims.${key}.high must be at least its value ${value}, was ${high}`;
  }
  return null;
};

const CONTRADICTIONS = [massWrong, flapWrong, planWrong, limitsWrong, gearWrong, propellerWrong, claimsWrong];

/**
 * The aeroplane that a file describes: well formed, and not at odds with itself (masses, flap stages, planned
 * stages and speeds, claims).
 * Throws an Error whose message is one sentence: `two-seat.json: wing.areaM2 must be above 0, was -14`.
 */
export function parseAeroplane(json: unknown, file: string): Aeroplane {
  const result = v.safeParse(aeroplaneSchema, json, { abortEarly: true });
  if (!result.success) throw new Error(describeIssue(file, result.issues[0]));
  for (const check of CONTRADICTIONS) {
    const wrong = check(result.output);
    if (wrong !== null) throw new Error(`${file}: ${wrong}`);
  }
  return result.output;
}
