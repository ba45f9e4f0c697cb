import { fixed } from '../../units/format.ts';
import { instantText, latitudeText, longitudeText, NOWHERE, type TrackPoint } from './earth.ts';
import { xmlText } from './xml.ts';

/** A place worth a pin: a touchdown, a gate. */
export interface KmlPin extends TrackPoint {
  readonly name: string;
  readonly text: string;
}

/** Longitude, latitude, altitude: the order of OGC 07-147r2, section 16.9. */
const tuple = (p: TrackPoint): string => `${longitudeText(p)},${latitudeText(p)},${fixed(p.altitudeM, 2)}`;

const pin = (p: KmlPin): string[] => [
  '    <Placemark>',
  `      <name>${xmlText(p.name)}</name>`,
  `      <description>${xmlText(p.text)}</description>`,
  `      <TimeStamp><when>${instantText(p.timeS)}</when></TimeStamp>`,
  '      <styleUrl>#place</styleUrl>',
  `      <Point><altitudeMode>absolute</altitudeMode><coordinates>${tuple(p)}</coordinates></Point>`,
  '    </Placemark>',
];

/** The path and its curtain down to the ground; elements in the order that the schema demands. */
const path = (name: string, points: readonly TrackPoint[]): string[] => [
  '    <Placemark>',
  `      <name>${xmlText(name)}</name>`,
  '      <TimeSpan>',
  `        <begin>${instantText(points[0]?.timeS ?? 0)}</begin>`,
  `        <end>${instantText(points[points.length - 1]?.timeS ?? 0)}</end>`,
  '      </TimeSpan>',
  '      <styleUrl>#path</styleUrl>',
  '      <LineString>',
  '        <extrude>1</extrude>',
  '        <altitudeMode>absolute</altitudeMode>',
  '        <coordinates>',
  ...points.map((p) => `          ${tuple(p)}`),
  '        </coordinates>',
  '      </LineString>',
  '    </Placemark>',
];

/**
 * A flight as KML 2.2 (OGC 07-147r2). A line needs two points: with fewer there are only pins. Colours are
 * aabbggrr as the standard has them.
 */
export const kmlText = (name: string, points: readonly TrackPoint[], pins: readonly KmlPin[] = []): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<kml xmlns="http://www.opengis.net/kml/2.2">',
    '  <Document>',
    `    <name>${xmlText(name)}</name>`,
    `    <description>${NOWHERE}</description>`,
    '    <Style id="path">',
    '      <LineStyle><color>ff1e43d2</color><width>2</width></LineStyle>',
    '      <PolyStyle><color>401e43d2</color></PolyStyle>',
    '    </Style>',
    '    <Style id="place">',
    '      <IconStyle><color>ff1e43d2</color></IconStyle>',
    '    </Style>',
    ...(points.length < 2 ? [] : path(name, points)),
    ...pins.flatMap(pin),
    '  </Document>',
    '</kml>',
    '',
  ].join('\n');
