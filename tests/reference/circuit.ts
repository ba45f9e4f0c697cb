import { reference } from './reference.ts';

const ACS = 'FAA-S-ACS-6 (6B and 6C, three transcriptions)';

/** Against the limits of src/lesson/tolerances.ts, by their names there. */
export const FAA_LIMITS = reference({
  what: 'tolerances of the private licence test, below and above',
  source: ACS,
  certainty: 'VERIFIED',
  columns: ['limit', 'below', 'above', 'section'],
  rows: [
    ['heightFt', 100, 100, 'FAA-S-ACS-6 III.B'],
    ['circuitSpeedKt', 10, 10, 'FAA-S-ACS-6 III.B'],
    ['climbSpeedKt', 5, 10, 'FAA-S-ACS-6 IV.A'],
    ['approachSpeedKt', 5, 10, 'FAA-S-ACS-6 IV.B'],
    ['touchdownFt', 0, 400, 'FAA-S-ACS-6 IV.B'],
    ['shortTouchdownFt', 0, 200, 'FAA-S-ACS-6 IV.F'],
  ],
});

export const EASA_LIMITS = reference({
  what: 'tolerances of the private licence test, below and above; it names no distance for the touchdown',
  source: 'AMC1 FCL.235, criteria of the skill test',
  certainty: 'QUOTED',
  columns: ['limit', 'below', 'above', 'section'],
  rows: [
    ['heightFt', 150, 150, 'AMC1 FCL.235'],
    ['trackDeg', 10, 10, 'AMC1 FCL.235'],
    ['circuitSpeedKt', 15, 15, 'AMC1 FCL.235'],
    ['climbSpeedKt', 5, 15, 'AMC1 FCL.235'],
    ['approachSpeedKt', 5, 15, 'AMC1 FCL.235'],
  ],
});

export const COMMERCIAL_LIMITS = reference({
  what: 'tolerances of the commercial licence test, below and above',
  source: 'FAA commercial ACS III.B (transcription)',
  certainty: 'VERIFIED',
  columns: ['limit', 'below', 'above', 'section'],
  rows: [
    ['heightFt', 100, 100, 'commercial ACS III.B'],
    ['circuitSpeedKt', 10, 10, 'commercial ACS III.B'],
  ],
});

export const BANK_LIMITS = reference({
  what: 'most bank of a level turn and of the turn to final',
  source: 'South African CAA instructor training procedures (revised AIC), p. 110',
  certainty: 'VERIFIED',
  columns: ['limit', 'deg', 'section'],
  rows: [
    ['levelBankDeg', 30, 'South African'],
    ['finalBankDeg', 30, 'South African'],
  ],
});

export const AHEAD_LIMIT = reference({
  what: 'field ahead after an engine failure, either side',
  source: 'New Zealand and flight-training texts on engine failure after take-off',
  certainty: 'QUOTED',
  columns: ['limit', 'deg'],
  rows: [['aheadDeg', 30]],
});

export const ROUND_OUT_HEIGHT = reference({
  what: 'height at which the round-out begins',
  source: 'FAA-H-8083-3C p. 9-8',
  certainty: 'VERIFIED',
  columns: ['ft at least', 'ft at most'],
  rows: [[10, 20]],
});

export const POWER_IN_ROUND_OUT = reference({
  what: 'when power comes to idle, and before what the throttle is not closed',
  source:
    'FAA-H-8083-3C p. 9-8; South African CAA instructor training procedures (revised AIC), p. 115 and 271',
  certainty: 'VERIFIED',
  columns: ['to idle', 'not closed before'],
  rows: [['during the round-out', 'the round-out is complete']],
});

export const BASE_TURN_ANGLE = reference({
  what: 'angle behind the wing at which base is turned, in still air: about',
  source: 'FAA-H-8083-3C p. 8-3',
  certainty: 'VERIFIED',
  columns: ['deg'],
  rows: [[45]],
});

export const MOST_SINK = reference({
  what: 'most sink of a stabilised approach',
  source: 'Flight Safety Foundation, ALAR briefing note 7.1',
  certainty: 'QUOTED',
  columns: ['ft/min'],
  rows: [[1000]],
});

export const STABILISED_BY = reference({
  what: 'height above the aerodrome by which an approach is stabilised, and a circling one has its wings level',
  source: 'Flight Safety Foundation, ALAR briefing note 7.1, recommended elements',
  certainty: 'QUOTED',
  columns: ['conditions', 'ft'],
  rows: [
    ['visual', 500],
    ['circling, wings level', 300],
  ],
});

export const LANDING_POINT = reference({
  what: 'go around when not down in this share of the runway; touch down this far beyond the point at most',
  source: `FAA-H-8083-3C p. 9-32; ${ACS} IV.B`,
  certainty: 'VERIFIED',
  columns: ['of the runway', 'ft'],
  rows: [[1 / 3, 400]],
});

export const CROSSWIND_SHOWN = reference({
  what: 'crosswind that certification shows, of the stalling speed with landing flap, at least',
  source: 'FAA-H-8083-3C p. 9-19',
  certainty: 'VERIFIED',
  columns: ['of Vs0'],
  rows: [[0.2]],
});

export const GUST_ADDED = reference({
  what: 'share of the gust factor that the approach speed takes',
  source: 'FAA-H-8083-3C p. 9-20',
  certainty: 'VERIFIED',
  columns: ['of the gust factor'],
  rows: [[0.5]],
});

export const SINK_ON_A_SLOPE = reference({
  what: 'sink by slope and groundspeed',
  source: 'tan of the slope times groundspeed',
  certainty: 'RECOMPUTED',
  columns: ['deg', 'kt over the ground', 'ft/min'],
  rows: [
    [3, 60, 318],
    [3, 70, 372],
    [3, 80, 425],
    [5, 60, 532],
    [5, 70, 620],
    [5, 80, 709],
  ],
});

export const DISTANCE_ON_SLOPE = reference({
  what: 'distance from the aim point at a height on a slope',
  source: 'plane geometry',
  certainty: 'RECOMPUTED',
  columns: ['ft', 'deg', 'NM'],
  rows: [[500, 3, 1.57]],
});

export const FINAL_BEGINS = reference({
  what: 'height on 3 degrees where a final begins, one spacing from the threshold and 300 m to the aim point',
  source: 'plane geometry of a square circuit',
  certainty: 'RECOMPUTED',
  columns: ['NM', 'ft'],
  rows: [
    [0.75, 290],
    [1.0, 369],
  ],
});

export const PRE_LANDING_ORDER = reference({
  what: 'order of the check before landing, BUMPFFITCHH; the flap has no one place in those texts',
  source: 'UK and Commonwealth training texts',
  certainty: 'QUOTED',
  columns: ['item'],
  rows: [
    ['brakes'],
    ['gear'],
    ['mixture'],
    ['propeller'],
    ['fuel'],
    ['altimeter'],
    ['engine'],
    ['heat'],
    ['harness'],
  ],
});

export const GO_AROUND_ORDER = reference({
  what: 'order of the go-around: power with heat cold, attitude, some flap, gear once climbing, the rest',
  source: 'FAA-H-8083-3C p. 9-11 and 9-12',
  certainty: 'VERIFIED',
  columns: ['item'],
  rows: [['power'], ['heat'], ['attitude'], ['flap'], ['gear'], ['flap-up']],
});

export const CALL_FINAL = reference({
  what: 'furthest from the threshold that final is called',
  source: 'CAP 413',
  certainty: 'VERIFIED',
  columns: ['NM'],
  rows: [[4]],
});

export const CALL_DOWNWIND = reference({
  what: 'where "downwind" is called, and past what it is "late downwind"',
  source: 'CAP 493 (MATS part 1) and CAP 413, chapter 4, figure 1, positions 1 and 2',
  certainty: 'QUOTED',
  columns: ['called abeam', 'late past'],
  rows: [['upwind end', 'downwind end']],
});

export const CALL_DOWNWIND_FAA = reference({
  what: 'where a position on downwind is told at an aerodrome without a tower',
  source: 'FAA AIM 4-1-9, table 4-1-1',
  certainty: 'VERIFIED',
  columns: ['called on'],
  rows: [['entering']],
});

export const TOWER_WORDS_FAA = reference({
  what: 'words of a tower of the FAA: the runway first, then the clearance',
  source: 'FAA JO 7110.65, 3-9-10 and 3-10-5',
  certainty: 'VERIFIED',
  columns: ['clearance', 'words after the runway'],
  rows: [
    ['cleared-take-off', 'cleared for takeoff'],
    ['cleared-land', 'cleared to land'],
  ],
});

export const REJECTED_TAKE_OFF = reference({
  what: 'order of a rejected take-off, read in two reprints of the chapter as it stands in edition A',
  source: 'FAA-H-8083-3C ch. 6, rejected take-off',
  certainty: 'QUOTED',
  columns: ['done', 'how'],
  rows: [
    ['power', 'idle'],
    ['brak', 'maximum'],
  ],
});

export const TRIED_FIRST = reference({
  what: 'first action beside flying in any engine failure of an aeroplane with a carburettor',
  source: 'CAA New Zealand Flight Instructor Guide, engine failure after take-off',
  certainty: 'VERIFIED',
  columns: ['action'],
  rows: [['carburettor heat hot']],
});

export const LIGHT_SIGNALS = reference({
  what: 'what a tower shows to an aircraft in flight, and what it means',
  source: 'FAA AIM 4-3-13, table 4-3-1',
  certainty: 'VERIFIED',
  columns: ['light', 'shown', 'meaning'],
  rows: [
    ['green-light', 'steady green', 'cleared to land'],
    ['green-flashes', 'flashing green', 'return for landing'],
    ['red-light', 'steady red', 'give way'],
    [null, 'flashing red', 'do not land'],
  ],
});

export const RADIO_FAILURE_CODE = reference({
  what: 'code of a transponder when the radio has failed',
  source: 'ICAO Annex 10, as training texts quote it',
  certainty: 'QUOTED',
  columns: ['code'],
  rows: [['7600']],
});

export const STALL_BY_BANK_TIMES = reference({
  what: 'stalling speed of a level turn, times, rounded to .01',
  source: '1/sqrt(cos bank), textbook',
  certainty: 'RECOMPUTED',
  columns: ['deg of bank', 'times'],
  rows: [
    [20, 1.03],
    [30, 1.07],
    [45, 1.19],
    [60, 1.41],
  ],
});
