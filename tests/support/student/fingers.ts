import type { Intent } from '../../../src/input/intent.ts';

/** What the fingers are doing: keys that stay down until an instant, and the stick of a gamepad. */
export interface Fingers {
  pitch: { way: number; untilS: number };
  roll: { way: number; untilS: number };
  power: { way: number; untilS: number };
  trim: { way: number; untilS: number };
  rudder: { way: number; untilS: number };
  brakeUntilS: number;
  /** Pressed as far as it goes. */
  brakeHard: boolean;
  flap: number;
  heat: number;
  gear: number;
  pump: number;
  /** Where the stick stands, or null with keys. */
  stick: { pitch: number; roll: number } | null;
}

const idle = () => ({ way: 0, untilS: 0 });

export const newFingers = (gamepad: boolean): Fingers => ({
  pitch: idle(),
  roll: idle(),
  power: idle(),
  trim: idle(),
  rudder: idle(),
  brakeUntilS: 0,
  brakeHard: false,
  flap: 0,
  heat: 0,
  gear: 0,
  pump: 0,
  stick: gamepad ? { pitch: 0, roll: 0 } : null,
});

/** Shorter than this nobody presses a key. */
const SHORTEST_S = 0.06;

export const press = (
  key: { way: number; untilS: number },
  nowS: number,
  way: number,
  forS: number,
): void => {
  if (forS < SHORTEST_S) return;
  key.way = way;
  key.untilS = nowS + forS;
};

export const isDown = (key: { untilS: number }, nowS: number): boolean => key.untilS > nowS;

/** What the fingers ask for at this instant; presses are used up. */
export const readFingers = (f: Fingers, nowS: number, into: Intent): void => {
  const held = (key: { way: number; untilS: number }) => (isDown(key, nowS) ? key.way : 0);
  if (f.stick === null) {
    into.pitch += held(f.pitch);
    into.roll += held(f.roll);
  } else {
    into.analogue = true;
    into.pitch += f.stick.pitch;
    into.roll += f.stick.roll;
  }
  into.power += held(f.power);
  into.trim += held(f.trim);
  into.rudder += held(f.rudder);
  if (f.brakeUntilS > nowS) into.brake = f.brakeHard ? 1 : 0.7;
  into.flapStages += f.flap;
  into.carbHeatPresses += f.heat;
  into.gearPresses += f.gear;
  into.pumpPresses += f.pump;
  f.flap = 0;
  f.heat = 0;
  f.gear = 0;
  f.pump = 0;
};
