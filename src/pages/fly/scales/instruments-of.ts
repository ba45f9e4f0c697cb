import { askedRpm, saidRpm } from '../../../circuit/said-rpm.ts';
import { oneInSixty } from '../../../circuit/wind-above.ts';
import { degFromRad, fpmFromMps, ktFromMps } from '../../../units/conversions.ts';
import { fixed } from '../../../units/format.ts';
import { SCALES } from '../../../views/scales/all.ts';
import { useStore } from '../../store.ts';
import type { ReadyFlight } from '../run/ready.ts';
import type { Instruments } from './instruments.ts';

/** Scales and card of a flight. */
export const instrumentsOf = (flight: ReadyFlight): Instruments => {
  const { scenario, model } = flight;
  const { aeroplane, aerodrome, weather } = scenario;
  const { lights } = model.runway;
  const change = flight.plan.legs.downwind.change;
  const sumFor = (leg: 'crosswind' | 'downwind' | 'base'): string | null => {
    const { crosswindMps, tasMps } = flight.plan.legs[leg];
    return oneInSixty(crosswindMps, tasMps);
  };
  const setting = { aeroplane, runway: model.runway, weather };
  return {
    scales: SCALES.filter((scale) => scale.aboard(setting)),
    setting,
    lightsAngle: lights ? `${fixed(degFromRad(lights.angleRad), 1).replace('.0', '')}°` : '',
    card: {
      aeroplane,
      runway: scenario.runway,
      side: model.runway.circuitSide > 0 ? 'right' : 'left',
      runwayHeadingDegM: degFromRad(model.runway.headingRadM),
      callWords: scenario.procedures?.words ?? useStore.getState().settings.callWords,
      qnhHpa: scenario.weather.qnhHpa,
      circuitAltitudeFt: 10 * Math.round((aerodrome.elevationFt + aerodrome.circuitHeightFt) / 10),
      descent:
        change !== null && change.verticalSpeedMps < 0
          ? {
              rpm: saidRpm(change.steady.revps),
              fpm: 10 * Math.round(-fpmFromMps(change.verticalSpeedMps) / 10),
            }
          : null,
      baseRpm: askedRpm(aeroplane, 'base', flight.plan.legs.base.steady),
      drift: { crosswind: sumFor('crosswind'), downwind: sumFor('downwind'), base: sumFor('base') },
      approachKt: Math.round(ktFromMps(flight.plan.approachIasMps)),
      crosswindTurnFt: aerodrome.circuit.crosswindTurnFt,
    },
  };
};
