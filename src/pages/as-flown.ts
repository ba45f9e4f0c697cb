import { windText } from '../formats/wind-text.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { everyAerodrome, everyAeroplane } from './fly/sheets/choices.ts';
import type { Settings } from './settings.ts';

const isOneOf = (all: readonly { readonly id: string }[], id: string): boolean =>
  all.some((each) => each.id === id);

/** Place, aeroplane and air of a flight as settings; what is not here any more stays as it is set. */
export const asFlown = (scenario: Scenario, now: Settings): Partial<Settings> => {
  const { aeroplane, aerodrome, runway, weather } = scenario;
  const { turbulence, temperatureC, qnhHpa, dewPointC } = weather;
  const isHere = isOneOf(everyAerodrome(), aerodrome.id);
  return {
    ...(isOneOf(everyAeroplane(), aeroplane.id) && { aeroplane: aeroplane.id }),
    // A chosen circuit belongs to the aerodrome that it was chosen for
    ...(isHere && aerodrome.id !== now.aerodrome && { aerodrome: aerodrome.id, circuit: null }),
    ...(isHere && { runway }),
    wind: windText(weather),
    turbulence,
    temperature: String(Math.round(temperatureC * 10) / 10),
    qnh: String(Math.round(qnhHpa * 100) / 100),
    dewPoint: dewPointC === null ? '' : String(dewPointC),
  };
};
