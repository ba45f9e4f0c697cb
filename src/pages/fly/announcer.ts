/**
 * What the live region says: the newest sentence, at most one in three seconds (real time, because it is heard
 * in real time). A sentence that is overtaken before its turn is dropped.
 */
export const SILENCE_MS = 3000;

export interface Announcer {
  say(sentence: string): void;
  destroy(): void;
}

export const createAnnouncer = (speak: (sentence: string) => void, nowMs: () => number): Announcer => {
  let lastMs = Number.NEGATIVE_INFINITY;
  let waiting = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = () => {
    timer = undefined;
    if (!waiting) return;
    lastMs = nowMs();
    speak(waiting);
    waiting = '';
  };
  return {
    say: (sentence) => {
      waiting = sentence;
      if (timer !== undefined) return;
      const dueMs = lastMs + SILENCE_MS - nowMs();
      if (dueMs <= 0) flush();
      else timer = setTimeout(flush, dueMs);
    },
    destroy: () => clearTimeout(timer),
  };
};
