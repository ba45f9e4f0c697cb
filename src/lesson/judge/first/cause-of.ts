import { ledTo } from './chain.ts';
import { type Finding, HARMS } from './finding.ts';

/** The worst first. */
export const byHarm = (a: Finding, b: Finding): number =>
  HARMS.indexOf(a.harm) - HARMS.indexOf(b.harm) ||
  Number(a.band === 'amber') - Number(b.band === 'amber') ||
  a.rank - b.rank ||
  a.circuit - b.circuit ||
  // Early faults make later ones; what is only untidy comes by how much
  (a.band === 'amber' && b.band === 'amber' ? b.strain - a.strain : 0) ||
  a.place - b.place;

/** An amber that nobody would speak of as the beginning of anything. */
const tells = ({ band, short }: Finding): boolean => band === 'red' || short !== '';

/** The earliest that led there, the red ones first. */
export const causeOf = (effect: Finding, all: readonly Finding[]): Finding | null => {
  const before = all
    .filter((finding) => tells(finding) && ledTo(finding, effect))
    .sort((a, b) => a.place - b.place);
  return before.find(({ band }) => band === 'red') ?? before[0] ?? null;
};
