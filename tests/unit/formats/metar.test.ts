import { describe, expect, test } from 'vitest';
import { parseMetarText } from '../../../src/formats/metar.ts';

describe('a pasted METAR', () => {
  // Group by group after WMO-No. 306, FM 15: dddffGfmfmKT true, M for minus, Q in whole hPa.
  test('gives wind, temperature, dew point and QNH', () => {
    expect(parseMetarText('METAR ABCD 211350Z 24012G22KT 9999 SCT025 18/12 Q1014 NOSIG=', 0)).toEqual({
      windFromDegT: 240,
      windFromDegM: 240,
      windKt: 12,
      gustKt: 22,
      temperatureC: 18,
      dewPointC: 12,
      qnhHpa: 1014,
      station: 'ABCD',
      leftAside: ['9999', 'SCT025', 'NOSIG'],
      inForce: ['9999', 'SCT025'],
    });
  });

  test.each([
    [240, 3, 237],
    [240, -4.5, 245],
    [2, 5, 357],
    [358, -3, 1],
    [10, 10, 360],
  ])('turns %d true with variation %d east to %d magnetic', (deg, variation, magnetic) => {
    // "Variation east, magnetic least."
    const wind = `${String(deg).padStart(3, '0')}10KT`;
    expect(parseMetarText(`${wind} 15/10 Q1013`, variation).windFromDegM).toBe(magnetic);
  });

  test('may be a METAR of the American kind', () => {
    const seen = parseMetarText(
      'KABC 211350Z AUTO 24012KT 1 3/4SM R04/1200FT +TSRA BKN010CB OVC020 M02/M05 A2992 RMK AO2 SLP123',
      0,
    );
    expect(seen.temperatureC).toBe(-2);
    expect(seen.dewPointC).toBe(-5);
    // 29.92 inHg is 1013.2 hPa (ISA_BY_HEIGHT of tests/reference/atmosphere.ts: 29.9213 inHg is 1013.25).
    expect(seen.qnhHpa).toBe(1013.2);
    expect(seen.leftAside.at(-1)).toBe('RMK AO2 SLP123');
  });

  test('may give the wind in metres a second, and a calm', () => {
    // 1 m/s is 1.943844 kt: 6 is 11.66.
    expect(parseMetarText('ABCD 211350Z 07006MPS 040V100 CAVOK 10/08 Q0998', 0).windKt).toBe(12);
    const calm = parseMetarText('ABCD 211350Z 00000KT CAVOK 10/08 Q0998', 7);
    expect([calm.windFromDegM, calm.windKt]).toEqual([0, 0]);
  });

  test('with a light variable wind is flown as calm, and its other groups count', () => {
    // Below 3 kt a wind is reported as variable (WMO-No. 306, FM 15, 15.5.3, from memory); 1 m/s is 1.94 kt
    for (const wind of ['VRB02KT', 'VRB01MPS']) {
      const seen = parseMetarText(`ABCD 211350Z ${wind} CAVOK M00/M02 Q0998`, 4);
      expect([seen.windFromDegM, seen.windKt, seen.gustKt]).toEqual([0, 0, null]);
      expect([seen.temperatureC, seen.dewPointC, seen.qnhHpa]).toEqual([0, -2, 998]);
      expect(seen.leftAside[0]).toBe(`${wind}, flown as calm`);
    }
  });

  test('may come from sensors that failed, with a correction, a colour state, a runway state, wind shear', () => {
    const auto = parseMetarText('METAR COR ABCD 211350Z AUTO 24012KT //// // ////// ///// Q////', 0);
    expect([auto.windKt, auto.temperatureC, auto.qnhHpa]).toEqual([12, null, null]);
    const dry = parseMetarText('ABCD 211350Z 24012KT CAVOK M05/// Q1030', 0);
    expect([dry.temperatureC, dry.dewPointC]).toEqual([-5, null]);
    const full = parseMetarText(
      'SPECI ABCD 211350Z 24012KT 210V280 4000 1500N -SHRA BKN012CB 09/08 Q1001 RESHRA WS R22 BLU NOSIG',
      0,
    );
    expect([full.windFromDegM, full.windKt, full.qnhHpa]).toEqual([240, 12, 1001]);
  });

  test('may leave out temperature and pressure', () => {
    const seen = parseMetarText('24012KT', 0);
    expect([seen.windKt, seen.temperatureC, seen.qnhHpa, seen.station]).toEqual([12, null, null, '']);
  });

  test.each([
    ['', /a wind group like 24012KT or 24012G22KT is needed, found none/],
    ['ABCD 211350Z VRB04KT CAVOK 10/08 Q0998', /"VRB04KT" gives no direction/],
    ['ABCD 211350Z VRB02MPS CAVOK 10/08 Q0998', /"VRB02MPS" gives no direction/],
    ['ABCD 211350Z /////KT 9999 10/08 Q0998', /no wind was measured \("\/\/\/\/\/KT"\)/],
    ['ABCD 211350Z NIL=', /NIL says that no report was made/],
    ['TAF ABCD 211100Z 2112/2212 24012KT 9999', /a TAF is a forecast/],
    ['ABCD 211350Z 24012KT 9999 17/18 Q1014', /dew point must not be above the temperature, was "17\/18"/],
    ['ABCD 211350Z 36050KMH 9999 18/12 Q1014', /was "36050KMH"/],
    ['ABCD 211350Z 240P99KT 9999 18/12 Q1014', /was "240P99KT"/],
    ['ABCD 211350Z 2401200KT 9999 18/12 Q1014', /was "2401200KT"/],
    ['ABCD 211350Z 37012KT 9999 18/12 Q1014', /direction must be 000 to 360, was "37012KT"/],
    ['ABCD 211350Z 24022G12KT 9999 18/12 Q1014', /gust must be above the mean wind, was "24022G12KT"/],
    ['ABCD 211350Z 24012KT 9999 18/1 Q1014', /the group "18\/1" is not one of a weather report/],
    ['ABCD 211350Z 24012KT 9999 18/12 Q10//', /pressure group must be like Q1013 or A2992, was "Q10\/\/"/],
    ['ABCD 211350Z 24012KT 9999 18/12 Q0700', /must be 850 to 1090 hPa, was "Q0700"/],
    ['ABCD 211350Z 24012KT 9999 18/12 Q1014 WHATEVER', /the group "WHATEVER" is not one of a weather report/],
  ])('%s is refused, the group named', (text, sentence) => {
    expect(() => parseMetarText(text, 0)).toThrow(sentence);
  });

  test('of more than 99 kt is refused too', () => {
    expect(() => parseMetarText('ABCD 211350Z 240112KT 9999 18/12 Q1014', 0)).toThrow(/was "240112KT"/);
  });
});
