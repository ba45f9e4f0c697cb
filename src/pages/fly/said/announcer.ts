/**
 * What the live region says: the newest sentence, at most one in three seconds (real time, because it is heard
 * in real time). A sentence that is overtaken before its turn is dropped, unless it is an instruction and what
 * overtakes it is not.
 */
export const SILENCE_MS = 3000;

export interface Announcer {
  /** `pressing`: an instruction; nothing else takes its place. */
  say(sentence: string, pressing?: boolean): void;
  destroy(): void;
}

export const createAnnouncer = (speak: (sentence: string) => void, nowMs: () => number): Announcer => {
  let lastMs = Number.NEGATIVE_INFINITY;
  let waiting = '';
  let pressed = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = () => {
    timer = undefined;
    if (!waiting) return;
    lastMs = nowMs();
    speak(waiting);
    waiting = '';
    pressed = false;
  };
  return {
    say: (sentence, pressing = false) => {
      if (pressed && !pressing) return;
      pressed = pressing;
      waiting = sentence;
      if (timer !== undefined) return;
      const dueMs = lastMs + SILENCE_MS - nowMs();
      if (dueMs <= 0) flush();
      else timer = setTimeout(flush, dueMs);
    },
    destroy: () => clearTimeout(timer),
  };
};
