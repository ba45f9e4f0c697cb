/** What a student does wrong on purpose, added to what people do anyhow. Zero or absent: nothing. */
export interface Mistakes {
  /** + late. */
  readonly crosswindLateS?: number;
  readonly downwindLateS?: number;
  readonly descentLateS?: number;
  readonly baseLateS?: number;
  readonly finalLateS?: number;
  /** + high. */
  readonly downwindHighFt?: number;
  /** + fast. */
  readonly downwindFastKt?: number;
  readonly baseFastKt?: number;
  readonly finalFastKt?: number;
  /** + more than the card says, set and left as the leg begins. */
  readonly basePowerRpm?: number;
  readonly finalPowerRpm?: number;
  /** Of the planned bank of the turn to final. */
  readonly finalBankShare?: number;
  /** + wider, in metres. */
  readonly wideM?: number;
  /** Holds the heading without allowing for the wind on this leg. */
  readonly driftsOn?: 'downwind' | 'base' | 'final' | 'upwind';
  readonly neverTrims?: boolean;
  /** Stages fewer than planned from base on. */
  readonly flapFewer?: number;
  /** Seconds later than planned. */
  readonly flapLateS?: number;
  /** Steepest bank that is used to save a turn to final. */
  readonly steepestFinalDeg?: number;
  /** Answers nothing on final: neither slope nor power. */
  readonly leavesFinalAlone?: boolean;
  /** + high, where the round-out begins. */
  readonly roundOutHighFt?: number;
  /** How quick the round-out is pulled; 1 as usual. */
  readonly pullShare?: number;
  readonly keepsPowerInFlare?: boolean;
  /** More power than it had, as the round-out begins. */
  readonly addsPowerInFlareRpm?: number;
  /** Holds off as long as it takes, and lands. */
  readonly landsWhatever?: boolean;
  readonly noBrakes?: boolean;
  /** Sees the ground so much nearer in the round-out than it is, and levels off there. */
  readonly levelsHighFt?: number;
  /** Begins the round-out by so much nose at once. */
  readonly snatchesDeg?: number;
  /** Having climbed away from the runway in the round-out, pushes. */
  readonly pushesAfterBalloon?: boolean;
  /** Leaves the nose where the crab has it. */
  readonly leavesCrab?: boolean;
  /** Straightens early and takes no wing down. */
  readonly noWingDown?: boolean;
  /** Stops the sink with the nose level, and no further. */
  readonly landsFlat?: boolean;
  /** Stands on the brakes from the touch on. */
  readonly locksBrakes?: boolean;
  readonly goesOnWhatever?: boolean;
}
