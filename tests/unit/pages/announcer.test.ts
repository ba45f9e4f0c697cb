import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createAnnouncer } from '../../../src/pages/fly/said/announcer.ts';

describe('the live region', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('speaks at once, then at most once in three seconds, with the newest sentence (product.md)', () => {
    const spoken: [number, string][] = [];
    const announcer = createAnnouncer(
      (s) => spoken.push([Date.now(), s]),
      () => Date.now(),
    );
    const startMs = Date.now();
    announcer.say('one');
    vi.advanceTimersByTime(500);
    announcer.say('two');
    vi.advanceTimersByTime(500);
    announcer.say('three');
    vi.advanceTimersByTime(5000);
    announcer.say('four');
    expect(spoken.map(([, sentence]) => sentence)).toEqual(['one', 'three', 'four']);
    expect((spoken[1]?.[0] ?? 0) - startMs).toBe(3000);
  });

  it('lets nothing take the place of an instruction that waits', () => {
    const spoken: string[] = [];
    const announcer = createAnnouncer(
      (s) => spoken.push(s),
      () => Date.now(),
    );
    announcer.say('one');
    announcer.say('Go around.', true);
    announcer.say('two');
    vi.advanceTimersByTime(3000);
    announcer.say('three');
    vi.advanceTimersByTime(3000);
    expect(spoken).toEqual(['one', 'Go around.', 'three']);
  });
});
