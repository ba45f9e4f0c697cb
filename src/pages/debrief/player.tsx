import { useEffect, useState } from 'react';
import { clockText } from '../../units/format.ts';
import { type Cursor, useCursor } from './cursor.ts';
import { type Replayed, type Sample, sampleAt } from './replayed.ts';

const RATES = [0.5, 1, 2, 4, 8, 16] as const;

interface PlayerProps {
  readonly replayed: Replayed;
  readonly endS: number;
  readonly cursor: Cursor;
  readonly onTakeOver: (timeS: number) => void;
}

/** Where each leg begins, turns left out. */
const legStarts = (samples: readonly Sample[]): readonly Sample[] =>
  samples.filter((s, i) => !s.leg.startsWith('turn') && s.leg !== samples[i - 1]?.leg).slice(0, 14);

/** Moves the cursor: plays at a rate, jumps to a leg, is drawn by hand, and hands the aeroplane over. */
export const Player = ({ replayed, endS, cursor, onTakeOver }: PlayerProps) => {
  const timeS = useCursor(cursor);
  const [playing, setPlaying] = useState(false);
  const [rate, setRate] = useState<(typeof RATES)[number]>(1);
  useEffect(() => {
    if (!playing) return;
    let lastMs = performance.now();
    let frames = requestAnimationFrame(function next(nowMs) {
      cursor.set(cursor.now() + ((nowMs - lastMs) / 1000) * rate);
      lastMs = nowMs;
      if (cursor.now() >= endS) setPlaying(false);
      else frames = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(frames);
  }, [playing, rate, cursor, endS]);
  const play = () => {
    if (!playing && cursor.now() >= endS) cursor.set(0);
    setPlaying(!playing);
  };
  return (
    <section className="player no-print" aria-label="Play it again">
      <button type="button" onClick={play} aria-pressed={playing} className="player-play">
        {playing ? 'stop' : 'play'}
      </button>
      <span className="joined">
        {RATES.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={rate === each}
            aria-label={`${each} times as fast`}
            onClick={() => setRate(each)}
          >
            {each === 0.5 ? '½' : each}
          </button>
        ))}
      </span>
      <input
        type="range"
        min={0}
        max={endS}
        step={0.5}
        value={timeS}
        aria-label="Instant"
        aria-valuetext={`${clockText(timeS)}, ${sampleAt(replayed, timeS).leg.replaceAll('-', ' ')}`}
        onChange={(event) => cursor.set(Number(event.currentTarget.value))}
      />
      <output className="player-clock">{clockText(timeS)}</output>
      <button type="button" className="strong" onClick={() => onTakeOver(timeS)} disabled={!replayed.exact}>
        try it differently from here
      </button>
      <span className="player-legs">
        {legStarts(replayed.samples).map((s) => (
          <button key={s.timeS} type="button" onClick={() => cursor.set(s.timeS)}>
            {s.leg.replaceAll('-', ' ')}
          </button>
        ))}
      </span>
    </section>
  );
};
