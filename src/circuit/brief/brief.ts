import { runwayInUse } from '../../aerodrome/runway.ts';
import type { Aerodrome } from '../../aerodrome/schema.ts';
import type { Aeroplane } from '../../aeroplane/schema.ts';
import { densityAltitudeM } from '../../atmosphere/air.ts';
import type { CallWords } from '../../simulation/procedures.ts';
import type { Weather } from '../../simulation/scenario.ts';
import { shapeOf } from '../../simulation/shape.ts';
import { ftFromM } from '../../units/conversions.ts';
import { fixed, thousandsTo } from '../../units/format.ts';
import { warmerThanStandardC } from '../distances/with-margins.ts';
import { planCircuit } from '../plan.ts';
import { runwayByWind } from '../runway-choice.ts';
import { type Setting, settle } from '../setting.ts';
import type { CircuitPlan, PlanOptions } from '../types.ts';
import { windAbove } from '../wind-above.ts';
import { altimeterErrs, altitudeAtM } from './altitudes.ts';
import { approachBrief } from './approach.ts';
import { baseTurnBrief } from './base-turn.ts';
import { engineFailureWords, goAroundWords } from './emergencies.ts';
import { runwayBrief } from './ends.ts';
import { gateBriefs } from './gates.ts';
import { glideLegs, glideSentence } from './glide.ts';
import { legBriefs } from './legs.ts';
import { lightsBrief } from './lights.ts';
import type { Brief } from './types.ts';

/** What a brief is made of. */
export interface BriefRequest {
  readonly aeroplane: Aeroplane;
  readonly aerodrome: Aerodrome;
  readonly weather: Weather;
  /** A designator; null: the end with more wind on the nose. */
  readonly runway: string | null;
  readonly options?: PlanOptions;
  /** The approach is a glide from the key point. */
  readonly glide?: boolean;
  /** Whose words the calls use; ICAO's where it is not said. */
  readonly words?: CallWords;
}

/**
 * Everything that is said before a circuit lesson, solved from the aeroplane that will fly, at this density
 * altitude and weight. Throws an Error sentence when no circuit can be planned.
 */
export function briefOf(request: BriefRequest): Brief {
  const { aeroplane, aerodrome, weather, options = {}, glide = false } = request;
  const designator = request.runway ?? runwayByWind(aerodrome, weather);
  const runway = runwayInUse(aerodrome, designator);
  const shape = shapeOf(aeroplane);
  const plan = planCircuit(shape, aeroplane, aerodrome, runway, weather, options);
  const setting = settle(shape, aeroplane, aerodrome, runway, weather);
  const legs = legBriefs(setting, plan, request.words ?? 'icao');
  return {
    plan,
    runway: runwayBrief(aeroplane, aerodrome, weather, designator),
    windAbove: windAbove(weather, runway, aerodrome),
    legs: glide ? glideLegs(setting, plan, legs) : legs,
    approach: approachBrief(setting, plan),
    glide: glide ? glideSentence(setting, plan) : null,
    baseTurn: baseTurnBrief(setting, plan, options),
    lights: lightsBrief(setting, plan),
    conflict: plan.conflict,
    gates: gateBriefs(setting, plan),
    runs: plan.runs,
    air: airBrief(setting, plan),
    engineFailure: engineFailureWords(setting),
    goAround: goAroundWords(setting, plan),
    notes: plan.notes,
  };
}

function airBrief(setting: Setting, plan: CircuitPlan): Brief['air'] {
  const elevationM = setting.runway.thresholdElevationM;
  const circuitAltitudeM = altitudeAtM(setting, plan.heightM);
  const realM = elevationM + plan.heightM;
  const offC = warmerThanStandardC(setting);
  const sentence = altimeterErrs(setting, plan.heightM)
    ? `The air is ${fixed(Math.abs(offC))} °C ${offC > 0 ? 'warmer' : 'colder'} than standard: ${thousandsTo(ftFromM(circuitAltitudeM), 10)} ft on the altimeter is really ${thousandsTo(ftFromM(realM), 10)} ft.`
    : null;
  return {
    elevationM,
    densityAltitudeM: densityAltitudeM(setting.air, elevationM),
    circuitAltitudeM,
    sentence,
  };
}
