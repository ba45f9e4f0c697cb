/**
 * What the hands ask for in one step, whichever device they are on. Rates are shares of the fastest movement,
 * -1..1; counts are presses in this step.
 */
export interface Intent {
  /** + pull. */
  pitch: number;
  /** + right. */
  roll: number;
  /** True when pitch and roll are positions of a real stick, not keys that are up or down. */
  analogue: boolean;
  /** + right foot. */
  rudder: number;
  /** + more. */
  power: number;
  /** + nose up. */
  trim: number;
  brake: number;
  letGo: boolean;
  flapStages: number;
  carbHeatPresses: number;
  pumpPresses: number;
  gearPresses: number;
  /** + forward: more rpm, richer. */
  propeller: number;
  mixture: number;
  /** Where a slider on the screen wants the lever, or null. */
  throttleTo: number | null;
  trimTo: number | null;
  flapTo: number | null;
}

export const newIntent = (): Intent => ({
  pitch: 0,
  roll: 0,
  analogue: false,
  rudder: 0,
  power: 0,
  trim: 0,
  brake: 0,
  letGo: false,
  flapStages: 0,
  carbHeatPresses: 0,
  pumpPresses: 0,
  gearPresses: 0,
  propeller: 0,
  mixture: 0,
  throttleTo: null,
  trimTo: null,
  flapTo: null,
});

export const clearIntent = (intent: Intent): void => {
  intent.pitch = 0;
  intent.roll = 0;
  intent.analogue = false;
  intent.rudder = 0;
  intent.power = 0;
  intent.trim = 0;
  intent.brake = 0;
  intent.letGo = false;
  intent.flapStages = 0;
  intent.carbHeatPresses = 0;
  intent.pumpPresses = 0;
  intent.gearPresses = 0;
  intent.propeller = 0;
  intent.mixture = 0;
  intent.throttleTo = null;
  intent.trimTo = null;
  intent.flapTo = null;
};

/** A device that adds what it asks for to the step's intent. */
export interface IntentReader {
  read(into: Intent): void;
}
