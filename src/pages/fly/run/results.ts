import { fetchPart } from '../../parts/fetch-part.ts';

type Results = typeof import('./result-card.ts');

let results: Results | null = null;

/** Fetches what judges a flight; kept once it is there. */
export const loadResults = async (): Promise<Results> => {
  results ??= await fetchPart('pages/fly/run/result-card.ts', () => import('./result-card.ts'));
  return results;
};

/** What judges a flight, once it has been fetched. */
export const resultsNow = (): Results | null => results;
