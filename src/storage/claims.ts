/** Gives a claim back. */
export type Release = () => void;

/** One flight, one tab: whoever holds the claim on a flight under way is flying it. */
export interface Claims {
  /** Null: another tab holds it, or this one does already. */
  claim(flight: string): Promise<Release | null>;
  isFree(flight: string): Promise<boolean>;
  close(): void;
}

const nameOf = (flight: string): string => `lapwing/flight/${flight}`;

/** By Web Locks (W3C): the browser gives a claim back when its tab dies. */
export const lockClaims = (locks: LockManager): Claims => ({
  claim: (flight) =>
    new Promise((resolve, reject) => {
      locks
        .request(nameOf(flight), { ifAvailable: true }, (lock) => {
          if (lock === null) return resolve(null);
          return new Promise<void>((release) => resolve(release));
        })
        .catch(reject);
    }),
  isFree: async (flight) => {
    const { held = [] } = await locks.query();
    return held.every((lock) => lock.name !== nameOf(flight));
  },
  close: () => {},
});

/** How long another tab has to say that a flight is its own. */
const ANSWER_MS = 300;

/** Where there are no locks (pages that are not served securely): the other tabs are asked. */
export const askingClaims = (channel: BroadcastChannel, answerMs = ANSWER_MS): Claims => {
  const mine = new Set<string>();
  const heard = new Map<string, () => void>();
  channel.onmessage = ({ data }: MessageEvent<{ readonly ask?: string; readonly mine?: string }>) => {
    if (data.ask !== undefined && mine.has(data.ask)) channel.postMessage({ mine: data.ask });
    if (data.mine !== undefined) heard.get(data.mine)?.();
  };
  const isFree = async (flight: string): Promise<boolean> => {
    if (mine.has(flight)) return false;
    const free = await new Promise<boolean>((resolve) => {
      heard.set(flight, () => resolve(false));
      channel.postMessage({ ask: flight });
      setTimeout(() => resolve(true), answerMs);
    });
    heard.delete(flight);
    return free;
  };
  return {
    isFree,
    claim: async (flight) => {
      if (!(await isFree(flight))) return null;
      mine.add(flight);
      return () => mine.delete(flight);
    },
    close: () => channel.close(),
  };
};

/** Nobody else can be asked: every flight is free. */
const freeClaims: Claims = { claim: async () => () => {}, isFree: async () => true, close: () => {} };

/** The best claims that this browser has. */
export const claimsHere = (): Claims => {
  if (typeof navigator !== 'undefined' && navigator.locks) return lockClaims(navigator.locks);
  if (typeof BroadcastChannel !== 'undefined') return askingClaims(new BroadcastChannel('lapwing/claims'));
  return freeClaims;
};
