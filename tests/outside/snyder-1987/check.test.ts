// Source: Snyder, USGS PP 1395 (1987), appendix A; proj4 and d3-geo as its independent readers. See source.md.
import { geoConicConformalRaw, geoConicEquidistantRaw } from 'd3-geo';
import proj4 from 'proj4';
import { describe, test } from 'vitest';
import { conformalLay, evenLay, toSheet } from '../../../src/pattern/lay/lay.ts';
import { radiusAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';
import { realCones } from '../../unroll/walls.ts';
import values from './values.json' with { type: 'json' };

const degree = Math.PI / 180;
const { point, origin } = values;

describe('the libraries agree with the published examples', () => {
  test.each([
    { name: 'equidistant', raw: geoConicEquidistantRaw, code: 'eqdc', published: values.equidistant },
    { name: 'conformal', raw: geoConicConformalRaw, code: 'lcc', published: values.conformal },
  ])('$name conic', ({ raw, code, published }) => {
    const { lat1, lat2, x, y } = published;
    const map = raw(lat1 * degree, lat2 * degree);
    const [east = Number.NaN, north = Number.NaN] = map(
      (point.lon - origin.lon) * degree,
      point.lat * degree,
    );
    const [, zero = Number.NaN] = map(0, origin.lat * degree);
    expectWithin(east, x, 6e-8, 'd3-geo x');
    expectWithin(north - zero, y, 6e-8, 'd3-geo y');
    const [px = Number.NaN, py = Number.NaN] = proj4(
      '+proj=longlat +R=1 +no_defs',
      `+proj=${code} +lat_1=${lat1} +lat_2=${lat2} +lat_0=${origin.lat} +lon_0=${origin.lon} +x_0=0 +y_0=0 +R=1 +no_defs`,
    ).forward([point.lon, point.lat]);
    expectWithin(px, x, 6e-8, 'proj4 x');
    expectWithin(py, y, 6e-8, 'proj4 y');
  });
});

describe.each(realCones)('on the wall "$name"', ({ wall, length, halfAngle }) => {
  const a = Math.abs(halfAngle);
  /** A wall wider at the lip has its apex below: the projection, apex up, is then read upside down. */
  const up = halfAngle < 0 ? -1 : 1;
  const rhoAt = (along: number): number => radiusAt(wall, along) / Math.sin(a);
  const reference = rhoAt(wall.reference);
  const turns = [0.02, 0.2, 0.5, 0.75, 0.98];
  const alongs = [0, 0.3 * length, 0.5 * length, length];
  const girth = 2 * Math.PI * wall.radius;

  test('the sheet, and the even lay, are the equidistant conic of d3-geo', () => {
    const sphere = reference * Math.tan(a);
    const conic = geoConicEquidistantRaw(a, a);
    const even = evenLay(wall, 0);
    for (const turn of turns)
      for (const along of alongs) {
        const lat = a + (reference - rhoAt(along)) / sphere;
        const [x = Number.NaN, y = Number.NaN] = conic(2 * Math.PI * (turn - 0.5), lat);
        const wanted = { x: x * sphere, y: up * (y - a) * sphere };
        expectPointWithin(toFlat(wall, { turn, along }), wanted, 1e-9 * Math.max(1, sphere));
        expectPointWithin(toSheet(even, { x: turn * girth, y: along }), wanted, 1e-9 * Math.max(1, sphere));
      }
  });

  test('the sheet is the equidistant conic of proj4', () => {
    const sphere = reference * Math.tan(a);
    const deg = a / degree;
    const conic = proj4(
      `+proj=longlat +R=${sphere} +no_defs`,
      `+proj=eqdc +lat_1=${deg} +lat_2=${deg} +lat_0=${deg} +lon_0=0 +x_0=0 +y_0=0 +R=${sphere} +no_defs`,
    );
    for (const turn of turns)
      for (const along of alongs) {
        const lat = a + (reference - rhoAt(along)) / sphere;
        const [x = Number.NaN, y = Number.NaN] = conic.forward([360 * (turn - 0.5), lat / degree]);
        expectPointWithin(toFlat(wall, { turn, along }), { x, y: up * y }, 1e-7);
      }
  });

  test('the conformal lay is the conformal conic of d3-geo after the inverse of Mercator', () => {
    const conic = geoConicConformalRaw(a, a);
    // d3-geo's own scale: its slant distance at the equator, where Mercator's height is 0. Read off one point there and
    // not off the pole, which d3-geo keeps a millionth of a radian away from.
    const [aside = Number.NaN, equator = Number.NaN] = [conic(1, 0)[0], conic(0, 0)[1]];
    const scale = (reference * Math.sin(Math.sin(a))) / aside;
    const lay = conformalLay(wall, wall.reference);
    for (const turn of turns)
      for (const along of alongs) {
        const y = lay.fromAlong(along);
        // Up towards the apex is north.
        const mercator = (-up * y) / wall.radius;
        const lat = 2 * Math.atan(Math.exp(mercator)) - Math.PI / 2;
        const [px = Number.NaN, py = Number.NaN] = conic(2 * Math.PI * (turn - 0.5), lat);
        const wanted = { x: px * scale, y: up * (py - equator) * scale };
        expectPointWithin(toSheet(lay, { x: turn * girth, y }), wanted, 1e-8);
      }
  });
});
