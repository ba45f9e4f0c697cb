import { type BriefRequest, briefOf } from '../../circuit/brief/brief.ts';
import type { Brief } from '../../circuit/brief/types.ts';
import type { SpeedsCard } from '../../formats/own-file.ts';
import { scenarioOf } from '../fly/scenario-of-settings.ts';
import { ownPlaces } from '../own-places.ts';
import type { Settings } from '../settings.ts';

/** The brief of the very flight that the settings ask for. */
export interface PreparedBrief {
  readonly brief: Brief;
  readonly request: BriefRequest;
  /** Where the aeroplane is a card entered by the user. */
  readonly card: SpeedsCard | null;
  readonly ownAerodrome: boolean;
}

/** Throws an Error sentence when the flight cannot be planned. */
export const briefOfSettings = (settings: Settings): PreparedBrief => {
  const { scenario } = scenarioOf({ ...settings, start: 'line-up' });
  const { aeroplane, aerodrome, weather, runway } = scenario;
  const request: BriefRequest = { aeroplane, aerodrome, weather, runway };
  const own = ownPlaces();
  return {
    brief: briefOf(request),
    request,
    card: own.cards.find((card) => card.id === aeroplane.id) ?? null,
    ownAerodrome: own.aerodromes.some((each) => each.id === aerodrome.id),
  };
};
