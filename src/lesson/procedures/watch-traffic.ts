import { acrossM, alongM } from '../../aerodrome/runway.ts';
import type { Snapshot } from '../../simulation/snapshot.ts';
import { mFromFt, mFromNmi } from '../../units/conversions.ts';
import type { Lesson } from '../lesson.ts';
import type { LessonMemory } from '../memory.ts';
import { askGoAroundOnce } from '../watch/dues.ts';
import type { OtherFact, ProcedureMemory } from './memory.ts';

/** What was told of another aeroplane is believed for so long. */
const FRESH_S = 3; // our choice: three of its seconds
/** A runway with somebody on it, by here, is no runway to land on (common practice: a height chosen before). */
const DECIDE_M = mFromFt(200);
/** Closer than this to one ahead on final, and about as high, is too close to go on (common practice). */
const TOO_CLOSE_M = 350;
const AS_HIGH_M = mFromFt(200); // common practice, as above

/** Where another aeroplane is, in whole metres: "0:east,north,height,on the ground". */
export const trafficValue = (index: number, s: Readonly<Snapshot>): string =>
  `${index}:${Math.round(s.eastM)},${Math.round(s.northM)},${Math.round(s.heightM)},${s.onGround ? 1 : 0}`;

export const takeTraffic = (p: ProcedureMemory, timeS: number, value: string): void => {
  const [head = '', rest = ''] = value.split(':');
  const [east, north, height, ground] = rest.split(',').map(Number);
  const index = Number(head);
  const numbers = [index, east, north, height].every((x) => Number.isFinite(x));
  if (!numbers || index < 0 || index > 2) return;
  while (p.others.length <= index)
    p.others.push({ atS: Number.NEGATIVE_INFINITY, eastM: 0, northM: 0, heightM: 0, onGround: true });
  const other = p.others[index] as OtherFact;
  other.atS = timeS;
  other.eastM = east as number;
  other.northM = north as number;
  other.heightM = height as number;
  other.onGround = ground === 1;
};

const isFresh = (other: OtherFact, timeS: number): boolean => timeS - other.atS < FRESH_S;

/** Somebody stands or rolls on the runway. */
export const isRunwayTaken = (p: ProcedureMemory, { runway }: Lesson, timeS: number): boolean =>
  p.others.some((other) => {
    if (!isFresh(other, timeS) || !other.onGround) return false;
    const along = alongM(runway, other.eastM, other.northM);
    const across = acrossM(runway, other.eastM, other.northM);
    return along > runway.surfaceStartM && along < runway.surfaceEndM && Math.abs(across) < runway.widthM;
  });

/** Beyond this one ahead is somebody else's concern. */
const AHEAD_M = mFromNmi(2); // our choice: as far as it is seen

/** On downwind: somebody ahead in the circuit has not yet come abeam on final, so that base would cut in front. */
export const isYetToPass = (p: ProcedureMemory, { where, runway }: Lesson, s: Readonly<Snapshot>): boolean =>
  p.others.some(
    (other) =>
      isFresh(other, s.timeS) &&
      !other.onGround &&
      distanceM(other, s) < AHEAD_M &&
      alongM(runway, other.eastM, other.northM) < where.alongM,
  );

const distanceM = (other: OtherFact, s: Readonly<Snapshot>): number => {
  const east = other.eastM - s.eastM;
  const north = other.northM - s.northM;
  const up = other.heightM - s.heightM;
  return Math.sqrt(east * east + north * north + up * up);
};

/** Keeps the spacing, and calls for a go-around where a conflict asks for one. */
export const watchTraffic = (
  p: ProcedureMemory,
  m: LessonMemory,
  lesson: Lesson,
  s: Readonly<Snapshot>,
): void => {
  const { leg, circuit } = m.legs;
  const inTheAir = p.others.filter((other) => isFresh(other, s.timeS) && !other.onGround);
  if (!s.onGround) for (const other of inTheAir) noteNearest(p, circuit, distanceM(other, s), s.timeS);
  const landing = leg === 'final' || leg === 'hold-off';
  if (!landing || s.onGround) return;
  if (lesson.where.heightM < DECIDE_M && isRunwayTaken(p, lesson, s.timeS))
    due(m, lesson, 'the runway is occupied');
  const close = inTheAir.some(
    (other) =>
      distanceM(other, s) < TOO_CLOSE_M &&
      Math.abs(other.heightM - s.heightM) < AS_HIGH_M &&
      alongM(lesson.runway, other.eastM, other.northM) > lesson.where.alongM,
  );
  if (close) due(m, lesson, 'too close behind the one ahead');
};

const noteNearest = (p: ProcedureMemory, circuit: number, metres: number, atS: number): void => {
  const fact = p.nearest.find((near) => near.circuit === circuit);
  if (fact === undefined) p.nearest.push({ circuit, metres, atS });
  else if (metres < fact.metres) {
    fact.metres = metres;
    fact.atS = atS;
  }
};

const due = (m: LessonMemory, { where }: Lesson, why: string): void =>
  askGoAroundOnce(m, { dueS: where.timeS, heightM: where.heightM, why });
