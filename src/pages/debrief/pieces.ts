import type { ApproachBand } from './approach-bands.ts';
import type { Sample } from './replayed.ts';

/** A run of samples of one band, its last point the next one's first. */
export interface Piece {
  readonly band: ApproachBand;
  readonly samples: readonly Sample[];
}

export const piecesOf = (samples: readonly Sample[]): readonly Piece[] => {
  const pieces: { band: ApproachBand; samples: Sample[] }[] = [];
  for (const sample of samples) {
    const last = pieces[pieces.length - 1];
    if (last === undefined) pieces.push({ band: sample.band, samples: [sample] });
    else {
      last.samples.push(sample);
      if (last.band !== sample.band) pieces.push({ band: sample.band, samples: [sample] });
    }
  }
  return pieces;
};

/** Points of an SVG line; breaks where a value says nothing. */
export const pathOf = (
  samples: readonly Sample[],
  x: (sample: Sample) => number,
  y: (sample: Sample) => number,
): string => {
  let text = '';
  let down = false;
  for (const sample of samples) {
    const px = x(sample);
    const py = y(sample);
    if (!Number.isFinite(px) || !Number.isFinite(py)) {
      down = false;
      continue;
    }
    text += `${down ? 'L' : 'M'}${px.toFixed(1)} ${py.toFixed(1)}`;
    down = true;
  }
  return text;
};
