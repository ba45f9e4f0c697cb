import { runwayInUse } from '../../../aerodrome/runway.ts';
import type { Aerodrome } from '../../../aerodrome/schema.ts';
import { isaTemperatureK } from '../../../atmosphere/isa.ts';
import { asTaught, withCircuit } from '../../../circuit/brief/custom.ts';
import { planCircuit } from '../../../circuit/plan.ts';
import { runwayByWind } from '../../../circuit/runway-choice.ts';
import { startOfLeg } from '../../../circuit/start-of-leg.ts';
import { parseWind, parseWindAbove } from '../../../formats/wind-text.ts';
import { chooseProcedures } from '../../../lesson/procedures/choose.ts';
import { type Model, prepare } from '../../../simulation/model.ts';
import { MODEL_VERSION, type Scenario, type Weather } from '../../../simulation/scenario.ts';
import { degCFromKelvin, mFromFt } from '../../../units/conversions.ts';
import { circuitOptions, type Settings, taughtOf } from '../../settings.ts';
import { chosen, everyAerodrome, everyAeroplane } from './choices.ts';

/** A number typed into a field; an Error sentence with the field's name when it is none or out of range. */
export const numberIn = (name: string, text: string, low: number, high: number, standard: number): number => {
  if (text.trim() === '') return standard;
  const value = Number(text);
  if (Number.isFinite(value) && value >= low && value <= high) return value;
  throw new Error(`${name} must be a number from ${low} to ${high}, was "${text}"`);
};

const STANDARD_QNH_HPA = 1013.25;

/** The day that the settings ask for. Throws an Error sentence where a field says none. */
export const weatherOf = (settings: Settings, aerodrome: Aerodrome): Weather => {
  const isaC = degCFromKelvin(isaTemperatureK(mFromFt(aerodrome.elevationFt)));
  const above = parseWindAbove(settings.windAbove, 'wind at circuit height');
  return {
    ...parseWind(settings.wind, 'wind'),
    ...(above !== undefined && { above }),
    turbulence: settings.turbulence,
    temperatureC: numberIn('temperature', settings.temperature, -60, 60, Math.round(isaC * 10) / 10),
    dewPointC: settings.dewPoint.trim() === '' ? null : numberIn('dew point', settings.dewPoint, -90, 60, 0),
    qnhHpa: numberIn('QNH', settings.qnh, 850, 1090, STANDARD_QNH_HPA),
  };
};

const seedOf = (text: string): number => {
  if (/^\d+$/.test(text) && Number(text) <= 4294967295) return Number(text);
  throw new Error(`seed must be a whole number from 0 to 4294967295, was "${text}"`);
};

/** The same flight with the checks, calls and others that the settings ask for; what it has of them stays. */
export const withProcedures = (scenario: Scenario, settings: Settings): Scenario => {
  const { radio, callWords, others, surprises } = settings;
  if (radio === 'none' || scenario.procedures !== undefined) return scenario;
  const choice = { radio, words: callWords, others, surprises };
  const start = scenario.start.leg ?? 'final';
  const { procedures, failures } = chooseProcedures(choice, scenario.seed, scenario.weather.qnhHpa, start);
  return { ...scenario, procedures, failures: [...scenario.failures, ...failures] };
};

/** The flight that the settings ask for; throws an Error sentence when there is none. */
export const scenarioOf = (settings: Settings): { readonly scenario: Scenario; readonly model: Model } => {
  const aeroplane = chosen(everyAeroplane(), settings.aeroplane);
  const aerodrome = withCircuit(
    asTaught(chosen(everyAerodrome(), settings.aerodrome), taughtOf(settings)),
    circuitOptions(settings.circuit),
  );
  const weather = weatherOf(settings, aerodrome);
  const ends = aerodrome.runway.ends.map((end) => end.designator);
  const runway = ends.includes(settings.runway) ? settings.runway : runwayByWind(aerodrome, weather);
  const lineUp: Scenario = {
    modelVersion: MODEL_VERSION,
    exercise: 'normal-circuit',
    aeroplane,
    aerodrome,
    runway,
    weather,
    start: { at: 'line-up', trimmed: true, leg: 'line-up' },
    seed: seedOf(settings.seed),
    assists: { rudder: settings.rudderAssist },
    failures: [],
    circuits: 1,
  };
  if (settings.start === 'line-up') {
    const scenario = withProcedures(lineUp, settings);
    return { scenario, model: prepare(scenario) };
  }
  const { shape } = prepare(lineUp);
  const plan = planCircuit(shape, aeroplane, aerodrome, runwayInUse(aerodrome, runway), weather);
  const start = { at: startOfLeg(plan, settings.start), trimmed: true, leg: settings.start } as const;
  const scenario = withProcedures({ ...lineUp, start }, settings);
  return { scenario, model: prepare(scenario) };
};
