import { type Glance, turnTo } from './eyes.ts';
import { press } from './fingers.ts';
import { chance } from './luck.ts';
import {
  bankTo,
  clamp,
  flapTowards,
  headFor,
  holdTrack,
  levelAt,
  type Mind,
  noticed,
  power,
  reading,
  type Stage,
  setPower,
  speedByNose,
  trim,
  turnPage,
  type Who,
} from './mind.ts';
import type { LegCard } from './plan-card.ts';

/** Height in hand that a student likes to have on base (common practice: rather a little high than low). */
const IN_HAND_FT = 45;

const late = (mistakeS: number | undefined): number => mistakeS ?? 0;

/** Keeps a turn: bank as planned, out of it with half the bank in hand. True when it is over. */
const turning = (m: Mind, who: Who, g: Glance, toDeg: number, bankDeg: number): boolean => {
  const left = turnTo(g.headingDeg, toDeg);
  if (left < Math.max(3, 0.5 * Math.abs(g.bankDeg)) && g.timeS > m.since + 3) {
    bankTo(m, who, g, 0);
    return Math.abs(g.bankDeg) < 6;
  }
  bankTo(m, who, g, bankDeg);
  return false;
};

const begins = (m: Mind, g: Glance, stage: Stage, pitchDeg?: number): void => {
  turnPage(m, g, stage);
  m.crabDeg = 0;
  if (pitchDeg !== undefined) m.wantPitchDeg = pitchDeg;
};

const climb = (m: Mind, who: Who, g: Glance, leg: LegCard): void => {
  m.wantRpm = 9999;
  power(m, who, g);
  speedByNose(m, who, g, leg.speedKt, leg.pitchDeg);
  trim(m, who, g);
  if (g.heightFt > 250) flapTowards(m, who, g, leg.flapStage);
  if (who.card.retractable && g.gearLever === 1 && leg.gear === 0 && g.heightFt > 150) m.fingers.gear = 1;
};

const topOfClimb = (_: Mind, who: Who, g: Glance): boolean =>
  g.heightFt > who.card.levelHeightFt + (who.mistakes.downwindHighFt ?? 0) - 40;

const level = (m: Mind, who: Who, g: Glance): void => {
  const { card, mistakes } = who;
  const leg = card.legs.downwind;
  const speedKt = leg.speedKt + (mistakes.downwindFastKt ?? 0);
  levelAt(m, who, g, card.levelHeightFt + (mistakes.downwindHighFt ?? 0), leg, speedKt);
  // Power comes back when the speed is there
  if (m.wantRpm > 5000 && g.iasKt > speedKt - 6) {
    setPower(m, who, reading(who, leg) + 12 * (mistakes.downwindFastKt ?? 0));
    m.poweredS = g.timeS + 6;
  }
  power(m, who, g);
  trim(m, who, g);
};

const climbOrLevel = (m: Mind, who: Who, g: Glance, leg: LegCard): void => {
  if (topOfClimb(m, who, g)) level(m, who, g);
  else climb(m, who, g, leg);
};

/** The way down: speed by the nose; power as the card has it, then by what the picture says. */
const descend = (
  m: Mind,
  who: Who,
  g: Glance,
  leg: LegCard,
  speedKt: number,
  wantFt: number | null,
): void => {
  speedByNose(m, who, g, speedKt, leg.pitchDeg);
  if (wantFt !== null && g.timeS >= m.poweredS + 2.2 * who.person.correctS) {
    // Where it will be in six seconds at this rate, against what the picture asks for
    const off = g.heightFt - wantFt + 0.1 * (g.verticalFpm + 450);
    if (Math.abs(off) > 40) {
      m.poweredS = g.timeS;
      const by = clamp(1.5 * off, -250, 250);
      m.wantRpm = clamp(m.wantRpm - by, 900, 2500);
    }
  }
  power(m, who, g);
  trim(m, who, g);
};

const startDown = (m: Mind, who: Who, g: Glance, leg: LegCard, moreRpm = 0): void => {
  m.descending = true;
  setPower(m, who, reading(who, leg) + moreRpm);
  m.wantPitchDeg = leg.pitchDeg;
  m.poweredS = g.timeS + 6;
  m.correctedS = g.timeS + 3;
  if (who.card.carburettor) m.fingers.heat = 1;
};

const goRound = (m: Mind, who: Who, g: Glance): void => {
  begins(m, g, 'going-around', Math.max(5, who.card.legs.upwind.pitchDeg - 1));
  m.goArounds += 1;
  m.wantRpm = 9999;
  m.descending = false;
  m.gatesSeen = 0;
  m.flapDueS = g.timeS + 3;
  if (who.card.carburettor) m.fingers.heat = 1;
};

/** Looked at 300 and 200 ft: would this student go on? */
const gates = (m: Mind, who: Who, g: Glance): boolean => {
  if (who.mistakes.goesOnWhatever === true) return true;
  const gateFt = [300, 200][m.gatesSeen];
  if (gateFt === undefined || g.heightFt > gateFt) return true;
  m.gatesSeen += 1;
  const { approachKt } = who.card;
  const farM = 300 - g.alongM;
  const bad =
    Math.abs(g.slopeOffDeg) > 1.1 ||
    Math.abs(g.acrossM) > 0.07 * farM ||
    g.iasKt > approachKt + 14 ||
    g.iasKt < approachKt - 8 ||
    Math.abs(g.bankDeg) > 18;
  // Students go on more often than they should
  return !bad || chance(m.luck) < 0.4;
};

/** The track that leads back to the centreline, by how crooked the runway looks. */
const ontoLine = (g: Glance): number =>
  clamp((-57.3 * g.acrossM) / Math.max(250, 0.45 * (600 - g.alongM)), -14, 14);

type Fly = (m: Mind, who: Who, g: Glance) => void;

const keepStraight = (m: Mind, who: Who, g: Glance): void => {
  const wanted = clamp(-0.5 * g.acrossM, -7, 7);
  const off = turnTo(g.headingDeg, wanted) + 0.4 * turnTo(g.trackDeg, wanted);
  if (Math.abs(off) > 1)
    press(m.fingers.rudder, g.timeS, who.side * Math.sign(off), clamp(0.05 * Math.abs(off), 0.07, 0.5));
};

export const FLY: Readonly<Record<Stage, Fly>> = {
  roll: (m, who, g) => {
    m.wantRpm = 9999;
    power(m, who, g);
    keepStraight(m, who, g);
    if (g.iasKt < who.card.rotateKt) {
      m.wantPitchDeg = g.pitchDeg;
      return;
    }
    m.wantPitchDeg = 7;
    if (!g.onGround && g.clearanceFt > 15) begins(m, g, 'upwind', clamp(who.card.legs.upwind.pitchDeg, 4, 9));
  },
  upwind: (m, who, g) => {
    const { card, mistakes } = who;
    const leg = card.legs.upwind;
    climb(m, who, g, leg);
    if (mistakes.driftsOn === 'upwind') headFor(m, who, g, leg.trackDeg, 12);
    else holdTrack(m, who, g, leg, leg.trackDeg + clamp(-0.06 * g.acrossM, -8, 8), 12);
    const there = g.heightFt > card.crosswindAtFt - 10 && g.alongM > card.crosswindAtM - 400;
    if (noticed(m, who, g, there, late(mistakes.crosswindLateS))) begins(m, g, 'turn-crosswind');
  },
  'turn-crosswind': (m, who, g) => {
    climbOrLevel(m, who, g, who.card.legs.upwind);
    const leg = who.card.legs.crosswind;
    if (turning(m, who, g, leg.headingDeg, who.card.bankDeg.climbing)) begins(m, g, 'crosswind');
  },
  crosswind: (m, who, g) => {
    const { card, mistakes } = who;
    const leg = card.legs.crosswind;
    climbOrLevel(m, who, g, leg);
    holdTrack(m, who, g, leg, leg.trackDeg, 15);
    const there = g.acrossM > card.downwindAtM + (mistakes.wideM ?? 0);
    if (noticed(m, who, g, there, late(mistakes.downwindLateS))) begins(m, g, 'turn-downwind');
  },
  'turn-downwind': (m, who, g) => {
    climbOrLevel(m, who, g, who.card.legs.crosswind);
    const leg = who.card.legs.downwind;
    if (turning(m, who, g, leg.headingDeg, who.card.bankDeg.level)) {
      begins(m, g, 'downwind');
      m.flapDueS = g.timeS + 6;
    }
  },
  downwind: (m, who, g) => {
    const { card, mistakes } = who;
    const leg = card.legs.downwind;
    const spacingM = who.card.downwindAtM;
    if (who.card.retractable && g.gearLever === 0 && g.alongM < 1500 && leg.gear + card.legs.base.gear > 0)
      m.fingers.gear = 1;
    if (mistakes.driftsOn === 'downwind') headFor(m, who, g, leg.trackDeg, 15);
    else {
      const off = g.acrossM - (m.gatesSeen === -1 ? spacingM : spacingM);
      // Spacing is mended gently and only where it shows
      const aim = Math.abs(off - 250) > 500 ? clamp(0.02 * (off - 250), -8, 8) : 0;
      holdTrack(m, who, g, leg, leg.trackDeg + aim, 15);
    }
    if (!m.descending) {
      if (topOfClimb(m, who, g) || g.timeS > m.since + 60) level(m, who, g);
      else
        climb(m, who, g, {
          ...leg,
          speedKt: card.legs.crosswind.speedKt,
          pitchDeg: card.legs.crosswind.pitchDeg,
        });
      if (topOfClimb(m, who, g)) flapTowards(m, who, g, leg.flapStage);
    } else if (card.descending !== null) descend(m, who, g, card.descending, card.descending.speedKt, null);
    if (card.descending !== null && !m.descending && m.reachedS === Number.POSITIVE_INFINITY) {
      const lateM = late(mistakes.descentLateS) * g.groundspeedMps;
      if (g.alongM < card.descendAtM - lateM - 15) startDown(m, who, g, card.descending);
    }
    const angleDeg = (Math.atan2(-g.alongM, g.acrossM) * 180) / Math.PI;
    const early = Math.min(0, late(mistakes.baseLateS)) * g.groundspeedMps;
    const earlyDeg = (Math.atan2(-g.alongM - early, g.acrossM) * 180) / Math.PI;
    const there = (early < 0 ? earlyDeg : angleDeg) > card.baseAngleDeg;
    if (noticed(m, who, g, there, late(mistakes.baseLateS))) {
      begins(m, g, 'turn-base');
      m.gatesSeen = 0;
    }
  },
  'turn-base': (m, who, g) => {
    const { card } = who;
    if (m.descending && card.descending !== null)
      descend(m, who, g, card.descending, card.descending.speedKt, null);
    else level(m, who, g);
    if (turning(m, who, g, card.legs.base.headingDeg, card.bankDeg.level)) {
      begins(m, g, 'base');
      const { base } = card.legs;
      const more = who.mistakes.basePowerRpm ?? 0;
      if (m.descending) {
        setPower(m, who, reading(who, base) + more);
        m.wantPitchDeg = base.pitchDeg;
        m.poweredS = g.timeS + 6;
      }
      m.flapDueS = g.timeS + 1.5 + (who.mistakes.flapLateS ?? 0);
    }
  },
  base: (m, who, g) => {
    const { card, mistakes } = who;
    const leg = card.legs.base;
    if (!m.descending && g.timeS > m.since + late(mistakes.descentLateS))
      startDown(m, who, g, leg, mistakes.basePowerRpm ?? 0);
    const share = clamp(
      (g.acrossM - card.finalAtM) / Math.max(100, card.downwindAtM - card.finalAtM),
      0,
      1.2,
    );
    const wantFt = card.baseToFt + IN_HAND_FT + share * (card.baseFromFt - card.baseToFt);
    const watches = mistakes.basePowerRpm === undefined;
    if (m.descending)
      descend(m, who, g, leg, leg.speedKt + (mistakes.baseFastKt ?? 0), watches ? wantFt : null);
    else level(m, who, g);
    flapTowards(m, who, g, Math.max(0, leg.flapStage - (mistakes.flapFewer ?? 0)));
    if (mistakes.driftsOn === 'base') headFor(m, who, g, leg.trackDeg, 15);
    else holdTrack(m, who, g, leg, leg.trackDeg, 15);
    const earlyM = Math.min(0, late(mistakes.finalLateS)) * g.groundspeedMps;
    if (noticed(m, who, g, g.acrossM + earlyM < card.finalAtM, late(mistakes.finalLateS)))
      begins(m, g, 'turn-final');
  },
  'turn-final': (m, who, g) => {
    const { card, mistakes } = who;
    const share = clamp(turnTo(g.headingDeg, card.legs.final.headingDeg) / 90, 0, 1);
    const wantFt = card.rollOutFt + IN_HAND_FT + share * (card.baseToFt - card.rollOutFt);
    const watches = mistakes.basePowerRpm === undefined;
    descend(
      m,
      who,
      g,
      card.legs.base,
      card.legs.base.speedKt + (mistakes.baseFastKt ?? 0),
      watches ? wantFt : null,
    );
    const { headingDeg } = card.legs.final;
    const leftDeg = turnTo(g.headingDeg, headingDeg);
    const planned = card.bankDeg.final * (mistakes.finalBankShare ?? 1);
    const mostDeg = mistakes.steepestFinalDeg ?? Math.max(planned, 28);
    // The bank that would roll out on the line, as the eye judges it halfway round
    const roundM = g.acrossM / Math.max(0.05, 1 - Math.cos((clamp(leftDeg, 0, 120) * Math.PI) / 180));
    const needDeg =
      roundM <= 30
        ? mostDeg
        : (Math.atan((g.groundspeedMps * g.groundspeedMps) / (9.8 * roundM)) * 180) / Math.PI;
    const judged = mistakes.finalBankShare === undefined && g.timeS > m.since + 4 && leftDeg > 15;
    const bankDeg = judged ? clamp(needDeg, 8, mostDeg) : planned;
    if (turning(m, who, g, headingDeg, bankDeg)) {
      begins(m, g, 'final');
      m.poweredS = g.timeS - 2;
      m.flapDueS = g.timeS + 1.5 + (mistakes.flapLateS ?? 0);
      setPower(m, who, reading(who, card.legs.final) + (mistakes.finalPowerRpm ?? 0));
      m.wantPitchDeg = (m.wantPitchDeg + card.legs.final.pitchDeg) / 2;
    }
  },
  final: (m, who, g) => {
    const { card, mistakes, person } = who;
    const leg = card.legs.final;
    const speedKt = leg.speedKt + (mistakes.finalFastKt ?? 0);
    const alone = mistakes.leavesFinalAlone === true;
    // High: a little steeper than the line to the aim point; low: a little flatter
    const steeper = g.steeperDeg - clamp(0.9 * g.slopeOffDeg, -1.5, 1.5);
    const fast = g.iasKt + 3 * m.iasRateKtps - speedKt;
    if (!alone && g.timeS >= m.correctedS + 0.7 * person.correctS) {
      m.correctedS = g.timeS;
      // The nose keeps the aim point still, but not at the price of the speed
      const by = 0.45 * person.pitchGain * steeper + (fast < -5 || fast > 8 ? 0.12 * fast : 0);
      if (Math.abs(by) > 0.3)
        m.wantPitchDeg = clamp(m.wantPitchDeg + clamp(by, -1.2, 1.2), leg.pitchDeg - 4, leg.pitchDeg + 4);
    }
    if (g.flapStage < leg.flapStage)
      flapTowards(m, who, g, Math.max(0, leg.flapStage - (mistakes.flapFewer ?? 0)));
    const leftAt = mistakes.finalPowerRpm !== undefined;
    if (!alone && !leftAt && g.timeS >= m.poweredS + 1.3 * person.correctS && g.clearanceFt > 50) {
      m.poweredS = g.timeS;
      const by = clamp(45 * steeper - 16 * fast, -300, 300);
      if (Math.abs(by) > 40)
        m.wantRpm = clamp(Math.round((m.wantRpm + by) / 25) * 25, 900, reading(who, leg) + 500);
    }
    // High with the throttle nearly closed: the next stage of flap, where there is one
    const nextStage = g.slopeOffDeg > 0.6 && g.throttle < 0.25 && g.clearanceFt > 250;
    if (nextStage && !alone && (mistakes.flapFewer ?? 0) === 0 && g.flapStage < card.flapLimitsKt.length - 1)
      flapTowards(m, who, g, g.flapStage + 1);
    power(m, who, g);
    trim(m, who, g);
    if (mistakes.driftsOn === 'final') headFor(m, who, g, leg.trackDeg, 12);
    else holdTrack(m, who, g, leg, ontoLine(g), 14);
    if (card.carburettor && g.heightFt < 300 && m.descending) {
      m.descending = false;
      m.fingers.heat = 1;
    }
    if (!gates(m, who, g)) {
      goRound(m, who, g);
      return;
    }
    const highFt = (mistakes.roundOutHighFt ?? 0) + (mistakes.levelsHighFt ?? 0);
    const roundOutFt = 21 + 0.02 * Math.max(0, -g.seenFpm - 350) + highFt;
    if (g.clearanceFt < roundOutFt && g.alongM > -400) {
      begins(m, g, 'flare');
      m.flareFromFt = Math.max(5, g.clearanceFt);
      m.pitchFreeS = g.timeS;
      m.wantRpm += mistakes.addsPowerInFlareRpm ?? 0;
      if (mistakes.snatchesDeg !== undefined) {
        m.wantPitchDeg = g.pitchDeg + mistakes.snatchesDeg;
        press(m.fingers.pitch, g.timeS, 1, mistakes.snatchesDeg / 3);
        m.pitchFreeS = g.timeS + 1.6;
      }
    }
  },
  flare: (m, who, g) => {
    const { mistakes } = who;
    if (g.onGround) {
      begins(m, g, 'on-wheels', g.pitchDeg);
      return;
    }
    // Less sink the nearer the ground: some four seconds to go from each height, a foot a second at the last
    const seenFt = g.clearanceFt - (mistakes.levelsHighFt ?? 0);
    const lastFpm = mistakes.levelsHighFt === undefined ? 60 : 0;
    const wantFpm = -Math.max(lastFpm, (60 * Math.max(0, seenFt)) / 3.6);
    const slow = mistakes.pullShare ?? 1;
    if (g.timeS >= m.pitchFreeS) {
      const by = clamp(((wantFpm - g.seenFpm) / 110) * slow, -0.5, 2.2);
      if (g.clearanceFt > m.flareFromFt + 6 && g.seenFpm > 0) m.wantPitchDeg = g.pitchDeg;
      else m.wantPitchDeg = clamp(g.pitchDeg + by, -3, 11);
      if (by > 0.3) {
        const forS = by / 3;
        press(m.fingers.pitch, g.timeS, 1, forS);
        m.pitchFreeS = g.timeS + forS + 0.15;
      } else m.pitchFreeS = g.timeS + 0.25;
    }
    if (mistakes.landsFlat === true) m.wantPitchDeg = Math.min(m.wantPitchDeg, -1);
    if (mistakes.pushesAfterBalloon === true && g.clearanceFt > 4 && g.seenFpm > 60) {
      m.wantPitchDeg = g.pitchDeg - 5;
      press(m.fingers.pitch, g.timeS, -1, 0.8);
      m.pitchFreeS = g.timeS + 1.2;
    }
    m.wantRpm = mistakes.keepsPowerInFlare === true ? m.wantRpm : 0;
    if (mistakes.addsPowerInFlareRpm !== undefined) power(m, who, g);
    if (mistakes.keepsPowerInFlare !== true && g.clearanceFt < 14 && g.throttle > 0.01)
      press(m.fingers.power, g.timeS, -1, 0.35);
    // Nose along the runway at the last, wings for the drift
    if (mistakes.leavesCrab !== true && g.clearanceFt < (mistakes.noWingDown === true ? 18 : 6)) {
      const off = turnTo(g.headingDeg, 0);
      if (Math.abs(off) > 1.5)
        press(m.fingers.rudder, g.timeS, who.side * Math.sign(off), clamp(0.08 * Math.abs(off), 0.1, 0.6));
      bankTo(m, who, g, mistakes.noWingDown === true ? 0 : clamp(-1.2 * turnTo(0, g.trackDeg), -5, 5));
    } else holdTrack(m, who, g, who.card.legs.final, ontoLine(g), 8);
    if (mistakes.landsWhatever === true) return;
    if (g.timeS > m.since + 14 || (g.clearanceFt > 45 && g.timeS > m.since + 3)) goRound(m, who, g);
  },
  'on-wheels': (m, who, g) => {
    if (g.throttle > 0.01) press(m.fingers.power, g.timeS, -1, 0.5);
    m.wantPitchDeg = Math.max(2, g.pitchDeg);
    if (!g.onGround && g.clearanceFt > 4) {
      begins(m, g, 'flare', g.pitchDeg);
      m.flareFromFt = g.clearanceFt;
      return;
    }
    if (!g.noseWheelOnGround && g.iasKt > 45) press(m.fingers.pitch, g.timeS, 1, 0.15);
    keepStraight(m, who, g);
    if (who.mistakes.locksBrakes === true && g.onGround) {
      m.fingers.brakeUntilS = g.timeS + 1.2;
      m.fingers.brakeHard = true;
    }
    if (who.mistakes.noBrakes !== true && g.groundspeedMps < 22 && g.onGround && g.timeS > m.brakedS + 1.7) {
      m.fingers.brakeUntilS = g.timeS + 1.2;
      m.brakedS = g.timeS;
    }
  },
  'going-around': (m, who, g) => {
    const { card } = who;
    m.wantRpm = 9999;
    power(m, who, g);
    trim(m, who, g);
    speedByNose(m, who, g, card.legs.upwind.speedKt, card.legs.upwind.pitchDeg);
    holdTrack(m, who, g, card.legs.upwind, clamp(-0.06 * g.acrossM, -8, 8), 12);
    const stage = card.legs.upwind.flapStage;
    if (g.verticalFpm > 100 && g.iasKt > 58 && g.flapStage > stage && g.timeS > m.flapDueS) {
      m.fingers.flap = -1;
      m.flapDueS = g.timeS + 5;
    }
    if (g.heightFt > 350 && g.flapStage <= stage) begins(m, g, 'upwind');
  },
};
