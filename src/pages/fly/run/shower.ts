import { lessonMemory, ownAircraft } from '../../../flight/flight.ts';
import type { Session } from '../../../session/session.ts';
import { STEP_HZ } from '../../../simulation/scenario.ts';
import type { FlightSound } from '../../../sound/flight-sound.ts';
import { clockText } from '../../../units/format.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Announcer } from '../said/announcer.ts';
import { createSpeech } from '../said/speech.ts';
import { clockId, meters } from '../scales/meters.ts';
import type { Driver } from './driver.ts';
import type { ReadyFlight } from './ready.ts';
import { showSlowly } from './slow.ts';

/** Steps between two looks at what changes slowly: 0.25 s. */
const SLOW_STEPS = STEP_HZ / 4;

/** Shows a flight, frame by frame: scales, clock, words, sound and drawing. */
export const createShower = (announcer: Announcer, drawing: Drawing, sound: FlightSound) => {
  let slowStep = -1;
  let second = -1;
  let session: Session | null = null;
  const speech = createSpeech(announcer);

  const writeClock = (step: number) => {
    const now = Math.floor(step / STEP_HZ);
    if (now === second) return;
    second = now;
    const element = document.getElementById(clockId);
    if (element) element.textContent = clockText(now);
  };

  return (flight: ReadyFlight, driver: Driver, nowMs: number): void => {
    const shown = driver.frame(nowMs);
    const { snapshot, controls } = ownAircraft(flight);
    const { step } = snapshot;
    // Another flight, or this one taken up elsewhere: everything is written anew.
    if (flight.session !== session) {
      session = flight.session;
      slowStep = -1;
      second = -1;
    }
    if (drawing.setting) meters.write(shown, controls, step, drawing.setting);
    writeClock(step);
    if (slowStep < 0 || step < slowStep || step >= slowStep + SLOW_STEPS) {
      slowStep = step - (step % SLOW_STEPS);
      showSlowly(flight, snapshot, announcer);
      speech.follow(flight, snapshot, driver.running);
    }
    sound.follow(snapshot, driver.running);
    drawing.draw(flight, shown, lessonMemory(flight).legs.leg, driver.running, nowMs);
  };
};
