/** How a flight ended, in words: "rejected take off". */
export const outcomeWords = (outcome: string): string => outcome.replaceAll('-', ' ');

/** The same to stand first: "Rejected take off". */
export const outcomeTitle = (outcome: string): string =>
  `${outcome.charAt(0).toUpperCase()}${outcomeWords(outcome).slice(1)}`;

/** The exercise that is a whole circuit, and is none where the flight began on a leg. */
const CIRCUIT = 'normal-circuit';

/** What a flight is called: its exercise; "From final" where that is a circuit and the flight was only its end. */
export const flownTitle = (title: string, exercise: string, from: string | null | undefined): string =>
  exercise !== CIRCUIT || from === null || from === undefined || from === 'line-up' ? title : `From ${from}`;
