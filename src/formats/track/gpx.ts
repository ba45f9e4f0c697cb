import { fixed } from '../../units/format.ts';
import { instantText, latitudeText, longitudeText, NOWHERE, type TrackPoint } from './earth.ts';
import { xmlText } from './xml.ts';

export type { TrackPoint as GpxPoint } from './earth.ts';

const point = (p: TrackPoint): string =>
  `      <trkpt lat="${latitudeText(p)}" lon="${longitudeText(p)}"><ele>${fixed(p.altitudeM, 2)}</ele><time>${instantText(p.timeS)}</time></trkpt>`;

/** A track as GPX 1.1 (topografix.com/GPX/1/1). */
export const gpxText = (name: string, points: readonly TrackPoint[]): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Lapwing" xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd">',
    `  <metadata><desc>${NOWHERE}</desc></metadata>`,
    `  <trk>`,
    `    <name>${xmlText(name)}</name>`,
    '    <trkseg>',
    ...points.map(point),
    '    </trkseg>',
    '  </trk>',
    '</gpx>',
    '',
  ].join('\n');
