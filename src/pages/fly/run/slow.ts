import { lightLetters } from '../../../aerodrome/slope-lights.ts';
import { emergencyNow } from '../../../flight/emergency.ts';
import { lessonMemory } from '../../../flight/flight.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import { lightsInWords } from '../../shown/lights-in-words.ts';
import { useStore } from '../../store.ts';
import { legWords } from '../card/card-data.ts';
import { nextWords } from '../card/next-words.ts';
import type { Announcer } from '../said/announcer.ts';
import { logOf } from './flight-log.ts';
import type { ReadyFlight } from './ready.ts';
import { resultsNow } from './results.ts';

/** Four times a simulated second: leg, what comes next, lights and levers, where they have changed. */
export const showSlowly = (flight: ReadyFlight, s: Readonly<Snapshot>, announcer: Announcer): void => {
  const before = useStore.getState();
  const legId = lessonMemory(flight).legs.leg;
  const emergency = emergencyNow(flight, s);
  const next = nextWords(emergency || legId, flight.plan, s);
  const lights = flight.frame.lights ? lightsInWords(lightLetters(flight.frame.lights)) : '';
  const changes = {
    legId,
    emergency,
    leg: legWords(legId),
    next,
    lights,
    flapStage: s.flapStage,
    carbHeat: s.carbHeat === 1,
    pump: s.pump === 1,
    gearDown: s.gearLever === 1,
  };
  const keys = Object.keys(changes) as (keyof typeof changes)[];
  if (keys.every((key) => before[key] === changes[key])) return;
  useStore.setState(changes);
  // In an emergency the way ahead matters, wherever one has just looked
  if (emergency !== '' && before.emergency !== emergency && before.look !== 'leg')
    useStore.setState({ look: 'leg' });
  if (before.legId !== legId) {
    const marks = resultsNow()?.marksOfLegs(flight, logOf(flight).help().watchedS) ?? [];
    useStore.setState({ marks });
    if (before.settings.announce) announcer.say(`${changes.leg}.${next ? ` Next: ${next}.` : ''}`);
    // A look chosen for the leg before would hide what this one asks for.
    if (before.legId && before.look !== 'leg') useStore.setState({ look: 'leg' });
  }
};
