import type { Aeroplane } from '../aeroplane/schema.ts';
import type { CheckName } from '../circuit/checks.ts';
import { itemsOf } from '../lesson/procedures/check-lists.ts';
import type { ListId } from '../lesson/procedures/memory.ts';

/** From one item to the next, said aloud while a finger moves down the card: slow enough to be followed. */
export const PACE_S = 1.75; // common practice: a check as it is said aloud

/** What takes longer than its words, the letting go included. */
const TAKES_S: Partial<Readonly<Record<CheckName, number>>> = {
  brakes: 2.5, // our choice: pressed, felt, let go
  heatTried: 12, // derived: the ten seconds of the check, and a hand before and after
  propellerFine: 2.5, // our choice: as long as the lever takes
  fullAndFree: 5, // our choice: a second for each of the four ways, and one to let go
  ifItStops: 5, // common practice: said whole, aloud
};

/** The wheels travel on downwind alone: elsewhere they are where they belong. */
const LOCKED_S = 1.5; // our choice: the hand before, the lights after
const takesS = (name: CheckName, list: ListId, { undercarriage }: Aeroplane): number =>
  name === 'gearDown' && list === 'downwind' ? undercarriage.travelS + LOCKED_S : (TAKES_S[name] ?? PACE_S);

/** When each item of a check has its turn, in seconds from where the check is begun. */
export interface CheckTime {
  readonly name: CheckName;
  readonly id: string;
  readonly fromS: number;
  readonly toS: number;
}

export const checkTimes = (list: ListId, aeroplane: Aeroplane): readonly CheckTime[] => {
  let atS = PACE_S;
  return itemsOf(list, aeroplane).map(({ name, id }) => {
    const fromS = atS;
    atS += takesS(name, list, aeroplane);
    return { name, id, fromS, toS: atS };
  });
};

/** So long a check takes. */
export const checkTakesS = (list: ListId, aeroplane: Aeroplane): number =>
  checkTimes(list, aeroplane).at(-1)?.toS ?? 0;
