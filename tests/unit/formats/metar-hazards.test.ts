// Which reports are no day for circuits. Groups after WMO-No. 306; invented stations.
import { describe, expect, it } from 'vitest';
import { hazards, parseMetarText } from '../../../src/formats/metar.ts';

const CIRCUIT_M = 304.8;
const against = (text: string): readonly string[] => hazards(parseMetarText(text, 0).inForce, CIRCUIT_M);

describe('a report that keeps a lesson on the ground', () => {
  it.each([
    [
      '24003KT 0300 FG VV001 09/09 Q1020',
      ['visibility 300 m (0300)', 'fog (FG)', 'sky not seen above 100 ft (VV001)'],
    ],
    ['24012G22KT 9999 TSRA SCT020CB 18/12 Q1014', ['thunderstorm (TSRA)', 'thundercloud (SCT020CB)']],
    ['24012KT 9999 VCTS FEW030 18/12 Q1014', ['thunderstorm near by (VCTS)']],
    ['24012KT 9999 BKN008 12/11 Q1014', ['broken cloud at 800 ft (BKN008)']],
    ['24012KT 9999 OVC014 12/11 Q1014', ['overcast at 1,400 ft (OVC014)']],
    ['24012KT 4000 BR SCT030 12/11 Q1014', ['visibility 4,000 m (4000)']],
    ['24012KT 1 1/2SM BR OVC040 12/11 A2992', ['visibility 2,410 m (1/2SM)']],
    ['24012KT 9999 FZRA SCT040 M01/M02 Q1014', ['freezing fog, drizzle or rain (FZRA)']],
    ['24012KT 9999 -GR SCT040 12/10 Q1014', ['hail (-GR)']],
  ])('%s', (text, expected) => {
    expect(against(text)).toEqual(expected);
  });
});

describe('a day for circuits', () => {
  it.each([
    '24012KT CAVOK 18/12 Q1014',
    '24012KT 9999 FEW008 SCT025 18/12 Q1014',
    '24012KT 9999 -RA BKN015 18/12 Q1014',
    '24012KT 9999 MIFG FEW040 18/17 Q1014',
    '24012KT 10SM BKN040 18/12 A2992',
    // What may come later is not in force
    '24012KT 9999 SCT025 18/12 Q1014 TEMPO 3000 TSRA BKN008',
    '24012KT 9999 SCT025 18/12 Q1014 RMK OVC004',
  ])('%s', (text) => {
    expect(against(text)).toEqual([]);
  });
});
