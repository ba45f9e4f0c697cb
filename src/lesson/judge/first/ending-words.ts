import { fixed } from '../../../units/format.ts';
import type { Outcome, Report } from '../report.ts';

/** What is looked at of how it ended. */
export type Ended = Pick<Report, 'items' | 'touchdowns' | 'stop' | 'ran_off'> & { readonly outcome: Outcome };

/** An ending that hurt, or would have. */
export interface EndingWords {
  readonly key: string;
  readonly says: string;
  /** As a clause. */
  readonly short: string;
  readonly next: string;
  readonly exercise: string;
}

/** Nearer to the line than any runway is wide. */
const ON_THE_LINE_M = 20; // our choice: half of a broad runway

/** In a field: short of the runway, beyond it, or beside it. */
const inTheField = ({ touchdowns }: Ended): EndingWords => {
  const touch = touchdowns[touchdowns.length - 1];
  const exercise = 'go-around';
  if (touch === undefined || touch.past_threshold_m < 0) {
    const how = touch === undefined ? '' : `: ${fixed(-touch.past_threshold_m)} m before it`;
    return {
      key: 'ended-landed-short',
      says: `You came down short, where no runway is${how}.`,
      short: 'you came down where no runway is',
      next: 'Low and short is a go-around, while there is height for one.',
      exercise,
    };
  }
  if (Math.abs(touch.centreline_m) < ON_THE_LINE_M)
    return {
      key: 'ended-landed-beyond',
      says: 'You came down beyond the runway.',
      short: 'you came down beyond the runway',
      next: 'Not down in the first third: go around.',
      exercise,
    };
  const side = touch.centreline_m < 0 ? 'left' : 'right';
  return {
    key: 'ended-landed-beside',
    says: `You came down beside the runway: ${fixed(Math.abs(touch.centreline_m))} m ${side} of its centreline.`,
    short: 'you came down beside the runway',
    next: 'Not on the line of the runway at the gate is a go-around.',
    exercise,
  };
};

const offTheRunway = ({ ran_off, stop }: Ended): EndingWords =>
  // What an earlier version kept has only the stop to tell by
  ran_off === 'end' || (ran_off === null && stop !== null && stop.remaining_m < 0)
    ? {
        key: 'ended-off-the-end',
        says: 'You ran off the end of the runway.',
        short: 'you ran off the end',
        next: 'Not down in the first third: go around.',
        exercise: 'go-around',
      }
    : {
        key: 'ended-off-the-side',
        says: 'You left the runway at its side.',
        short: 'you left the runway at its side',
        next: 'Keep it straight with the feet until it has stopped.',
        exercise: 'final-and-landing',
      };

/** How it ended, where that hurts or would have; null where it ended as flights do. */
export const endingWords = (result: Ended): EndingWords | null => {
  switch (result.outcome) {
    case 'crashed':
      return {
        key: 'ended-crashed',
        says: 'You met the ground hard, and it was over.',
        short: 'you met the ground hard',
        next: 'Take it up again half a minute earlier, or go around sooner.',
        exercise: 'final-and-landing',
      };
    case 'loss-of-control':
      return {
        key: 'ended-loss-of-control',
        says: 'You lost it: too slow and out of balance near the ground.',
        short: 'you lost it',
        next: 'Ease forward, full power, feet level, then roll the wings level.',
        exercise: 'base-and-final',
      };
    case 'landed-out':
      // With a dead engine a field is where one lands
      return result.items.some(({ id }) => id.startsWith('engine-failure')) ? null : inTheField(result);
    case 'ran-off':
      return offTheRunway(result);
    default:
      return null;
  }
};
