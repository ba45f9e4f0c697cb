/** How a flight ended, in words: "rejected take off". */
export const outcomeWords = (outcome: string): string => outcome.replaceAll('-', ' ');

/** The same to stand first: "Rejected take off". */
export const outcomeTitle = (outcome: string): string =>
  `${outcome.charAt(0).toUpperCase()}${outcomeWords(outcome).slice(1)}`;
