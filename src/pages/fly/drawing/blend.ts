import type { Snapshot } from '../../../simulation/snapshot.ts';
import { wrapPi, wrapTwoPi } from '../../../units/angles.ts';

/**
 * What a view shows between two steps: `at` is 0 at the step before, 1 at the last one. Fills `into`.
 * Directions turn the short way round; whole numbers, words and states belong to the last step.
 * Every field is named, because naming them by key would make a new number of each, sixty times a second.
 */
export const blend = (
  before: Readonly<Snapshot>,
  now: Readonly<Snapshot>,
  at: number,
  into: Snapshot,
): Snapshot => {
  into.timeS = before.timeS + at * (now.timeS - before.timeS);
  into.eastM = before.eastM + at * (now.eastM - before.eastM);
  into.northM = before.northM + at * (now.northM - before.northM);
  into.heightM = before.heightM + at * (now.heightM - before.heightM);
  into.wheelClearanceM = before.wheelClearanceM + at * (now.wheelClearanceM - before.wheelClearanceM);
  into.eyeEastM = before.eyeEastM + at * (now.eyeEastM - before.eyeEastM);
  into.eyeNorthM = before.eyeNorthM + at * (now.eyeNorthM - before.eyeNorthM);
  into.eyeHeightM = before.eyeHeightM + at * (now.eyeHeightM - before.eyeHeightM);
  into.velocityEastMps = before.velocityEastMps + at * (now.velocityEastMps - before.velocityEastMps);
  into.velocityNorthMps = before.velocityNorthMps + at * (now.velocityNorthMps - before.velocityNorthMps);
  into.verticalSpeedMps = before.verticalSpeedMps + at * (now.verticalSpeedMps - before.verticalSpeedMps);
  into.groundspeedMps = before.groundspeedMps + at * (now.groundspeedMps - before.groundspeedMps);
  into.pitchRad = before.pitchRad + at * (now.pitchRad - before.pitchRad);
  into.bankRad = before.bankRad + at * (now.bankRad - before.bankRad);
  into.pitchRateRadps = before.pitchRateRadps + at * (now.pitchRateRadps - before.pitchRateRadps);
  into.rollRateRadps = before.rollRateRadps + at * (now.rollRateRadps - before.rollRateRadps);
  into.yawRateRadps = before.yawRateRadps + at * (now.yawRateRadps - before.yawRateRadps);
  into.alphaRad = before.alphaRad + at * (now.alphaRad - before.alphaRad);
  into.slipRad = before.slipRad + at * (now.slipRad - before.slipRad);
  into.iasMps = before.iasMps + at * (now.iasMps - before.iasMps);
  into.shownIasMps = before.shownIasMps + at * (now.shownIasMps - before.shownIasMps);
  into.tasMps = before.tasMps + at * (now.tasMps - before.tasMps);
  into.dynamicPressurePa = before.dynamicPressurePa + at * (now.dynamicPressurePa - before.dynamicPressurePa);
  into.densityKgpm3 = before.densityKgpm3 + at * (now.densityKgpm3 - before.densityKgpm3);
  into.windEastMps = before.windEastMps + at * (now.windEastMps - before.windEastMps);
  into.windNorthMps = before.windNorthMps + at * (now.windNorthMps - before.windNorthMps);
  into.windUpMps = before.windUpMps + at * (now.windUpMps - before.windUpMps);
  into.altitudeM = before.altitudeM + at * (now.altitudeM - before.altitudeM);
  into.indicatedVerticalSpeedMps =
    before.indicatedVerticalSpeedMps +
    at * (now.indicatedVerticalSpeedMps - before.indicatedVerticalSpeedMps);
  into.loadFactor = before.loadFactor + at * (now.loadFactor - before.loadFactor);
  into.ball = before.ball + at * (now.ball - before.ball);
  into.engineRevps = before.engineRevps + at * (now.engineRevps - before.engineRevps);
  into.thrustN = before.thrustN + at * (now.thrustN - before.thrustN);
  into.throttle = before.throttle + at * (now.throttle - before.throttle);
  into.mixture = before.mixture + at * (now.mixture - before.mixture);
  into.propeller = before.propeller + at * (now.propeller - before.propeller);
  into.manifoldPa = before.manifoldPa + at * (now.manifoldPa - before.manifoldPa);
  into.bladeRad = before.bladeRad + at * (now.bladeRad - before.bladeRad);
  into.fuelPressure = before.fuelPressure + at * (now.fuelPressure - before.fuelPressure);
  into.carbIce = before.carbIce + at * (now.carbIce - before.carbIce);
  into.flapRad = before.flapRad + at * (now.flapRad - before.flapRad);
  into.flapDeg = before.flapDeg + at * (now.flapDeg - before.flapDeg);
  into.gear = before.gear + at * (now.gear - before.gear);
  into.elevator = before.elevator + at * (now.elevator - before.elevator);
  into.aileron = before.aileron + at * (now.aileron - before.aileron);
  into.rudder = before.rudder + at * (now.rudder - before.rudder);
  into.trim = before.trim + at * (now.trim - before.trim);
  into.brake = before.brake + at * (now.brake - before.brake);
  into.heldPressureDegKpa =
    before.heldPressureDegKpa + at * (now.heldPressureDegKpa - before.heldPressureDegKpa);
  into.stallAlphaRad = before.stallAlphaRad + at * (now.stallAlphaRad - before.stallAlphaRad);
  into.stallIasMps = before.stallIasMps + at * (now.stallIasMps - before.stallIasMps);
  into.weightOnWheels = before.weightOnWheels + at * (now.weightOnWheels - before.weightOnWheels);
  into.brakeHeatK = before.brakeHeatK + at * (now.brakeHeatK - before.brakeHeatK);
  into.headingRadT = wrapTwoPi(before.headingRadT + at * wrapPi(now.headingRadT - before.headingRadT));
  into.trackRadT = wrapTwoPi(before.trackRadT + at * wrapPi(now.trackRadT - before.trackRadT));
  into.step = now.step;
  into.pump = now.pump;
  into.gearLever = now.gearLever;
  into.gearWarning = now.gearWarning;
  into.gearTooFast = now.gearTooFast;
  into.flapStage = now.flapStage;
  into.carbHeat = now.carbHeat;
  into.warner = now.warner;
  into.stalled = now.stalled;
  into.onGround = now.onGround;
  into.noseWheelOnGround = now.noseWheelOnGround;
  into.parked = now.parked;
  into.tailStrike = now.tailStrike;
  into.engineDead = now.engineDead;
  into.powerPartial = now.powerPartial;
  into.wheelsLocked = now.wheelsLocked;
  into.flatSpot = now.flatSpot;
  into.airspeedBlocked = now.airspeedBlocked;
  into.radioFailed = now.radioFailed;
  into.brakePressure = now.brakePressure;
  into.ended = now.ended;
  into.endedWhy = now.endedWhy;
  into.onRunway = now.onRunway;
  return into;
};
