// KML 2.2: OGC 07-147r2 and its schema ogckml22.xsd. The order of elements below is written by hand after the
// schema's sequences: that of AbstractFeatureType was looked up, those of geometries and styles are from memory.
// Read back by @tmcw/togeojson on @xmldom/xmldom, which know nothing of us.
import { kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { kmlText } from '../../../src/formats/track/kml.ts';

const FEATURE =
  'name visibility open author link address AddressDetails phoneNumber Snippet snippet description LookAt Camera TimeStamp TimeSpan styleUrl Style StyleMap Region Metadata ExtendedData';
const ORDER: Readonly<Record<string, string>> = {
  kml: 'NetworkLinkControl Document',
  Document: `${FEATURE} Schema Placemark`,
  Placemark: `${FEATURE} Point LineString`,
  LineString: 'extrude tessellate altitudeMode coordinates',
  Point: 'extrude altitudeMode coordinates',
  Style: 'IconStyle LabelStyle LineStyle PolyStyle BalloonStyle ListStyle',
  LineStyle: 'color colorMode width',
  PolyStyle: 'color colorMode fill outline',
  IconStyle: 'color colorMode scale heading Icon hotSpot',
  TimeSpan: 'begin end',
  TimeStamp: 'when',
};

const NAME = '<b>Wren</b> & "co" ]]> \u0007';
const text = kmlText(
  NAME,
  [
    { timeS: 0, eastM: 0, northM: 0, altitudeM: 6.1 },
    { timeS: 60, eastM: 111319.49, northM: -110574.28, altitudeM: 300 },
  ],
  [{ timeS: 59.5, eastM: 10, northM: 20, altitudeM: 6, name: '300 ft', text: '<script>x</script>' }],
);

const parsed = (source: string) => {
  const faults: string[] = [];
  const note = (fault: string) => void faults.push(fault);
  const parser = new DOMParser({ errorHandler: { warning: note, error: note, fatalError: note } });
  const document = parser.parseFromString(source, 'text/xml');
  return { document, faults };
};
const children = (element: Element): Element[] =>
  Array.from(element.childNodes).filter((node): node is Element => node.nodeType === 1);

/** Every element whose children do not stand in the schema's order, or are not in it. */
const outOfOrder = (element: Element): string[] => {
  const order = (ORDER[element.localName] ?? '').split(' ');
  const places = children(element).map((child) => order.indexOf(child.localName));
  const wrong = places.some((place, i) => place < 0 || place < (places[i - 1] ?? 0));
  return [...(wrong ? [element.localName] : []), ...children(element).flatMap(outOfOrder)];
};

describe('a flight as KML', () => {
  const { document, faults } = parsed(text);
  const root = document.documentElement as unknown as Element;

  it('is well-formed, in the namespace of KML 2.2, its elements in the order of the schema', () => {
    expect(faults).toEqual([]);
    expect(root.namespaceURI).toBe('http://www.opengis.net/kml/2.2');
    expect(outOfOrder(root)).toEqual([]);
  });

  it('would be found out of order if it were', () => {
    const swapped = text.replace(
      /(<extrude>1<\/extrude>)\s*(<altitudeMode>absolute<\/altitudeMode>)/,
      '$2$1',
    );
    expect(outOfOrder(parsed(swapped).document.documentElement as unknown as Element)).toEqual([
      'LineString',
    ]);
  });

  it('is read by others as the path it was: longitude, latitude, metres above the sea', () => {
    const { features } = kml(document as unknown as Document);
    const [path, pin] = features;
    expect(path?.geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [0, 0, 6.1],
        [expect.closeTo(1, 5), expect.closeTo(-1, 5), 300],
      ],
    });
    expect(pin?.geometry?.type).toBe('Point');
    expect(pin?.properties?.description).toBe('<script>x</script>');
    expect(pin?.properties?.timestamp).toBe('2000-01-01T00:00:59.500Z');
    expect(path?.properties?.timespan).toEqual({
      begin: '2000-01-01T00:00:00.000Z',
      end: '2000-01-01T00:01:00.000Z',
    });
  });

  it('keeps names as text, never as markup; what XML 1.0 forbids is replaced', () => {
    const name = children(children(root)[0] as Element)[0];
    expect(name?.textContent).toBe('<b>Wren</b> & "co" ]]> \uFFFD');
    expect(root.getElementsByTagName('script')).toHaveLength(0);
    expect(root.getElementsByTagName('b')).toHaveLength(0);
  });

  it('draws no line through fewer than two points', () => {
    const { features } = kml(parsed(kmlText('x', [])).document as unknown as Document);
    expect(features).toEqual([]);
  });
});
