import { expect, test } from 'vitest';
import { onFloorDeg, sunAt } from '../../src/derive/sun.ts';

// Reda and Andreas, Solar Position Algorithm for Solar Radiation Applications, NREL/TP-560-34302 (2003, revised 2008),
// appendix A.5, from memory: 17 October 2003, 12:30:30 at UTC−7, 39.742476° N, 105.1786° W: zenith 50.11162°,
// azimuth 194.34024°. It counts refraction for 820 mbar and 11 °C; ours for sea level, which is 0.005° apart there.
test('sun: direction and height of the published example to 0.02°', () => {
  const place = { latDeg: 39.742476, lonDeg: -105.1786, utcOffsetMin: -420 };
  const sun = sunAt(place, '2003-10-17', 12 * 60 + 30.5);
  expect(Math.abs((sun?.azimuthDeg ?? 0) - 194.34024)).toBeLessThan(0.02);
  expect(Math.abs((sun?.elevationDeg ?? 0) - (90 - 50.11162))).toBeLessThan(0.02);
});

test('sun: at the equinox it stands due east and west near six o’clock of its own time on the equator, overhead at noon', () => {
  // 20 March 2031: the equation of time is −7.4 min (Meeus, Astronomical Algorithms, chapter 28, low accuracy).
  const at = (hour: number) =>
    sunAt({ latDeg: 0, lonDeg: 0, utcOffsetMin: 0 }, '2031-03-20', hour * 60 + 7.4);
  expect(Math.abs((at(6)?.azimuthDeg ?? 0) - 90)).toBeLessThan(0.5);
  expect(Math.abs((at(18)?.azimuthDeg ?? 0) - 270)).toBeLessThan(0.5);
  expect(at(12)?.elevationDeg ?? 0).toBeGreaterThan(89.5);
});

test('sun: a compass direction on a floor whose north points up is clockwise from up', () => {
  expect([0, 90, 180, 270].map((a) => onFloorDeg(a, 270))).toEqual([270, 0, 90, 180]);
});
