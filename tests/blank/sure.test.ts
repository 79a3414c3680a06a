import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import { flatBand } from '../../src/blank/flat-band.ts';
import { climbUncertainty } from '../../src/blank/paper-miss.ts';
import { placeReading } from '../../src/blank/stations.ts';
import {
  bareGirthAt,
  girthUncertaintyAt,
  type StraightWall,
  solveWall,
} from '../../src/blank/straight-wall.ts';
import { halfMillimetreAtSeam, recommendedOverlap, sureness } from '../../src/blank/sure.ts';
import { expectWithin, expectWithinPart } from '../closeness.ts';
import { aBlank } from './a-blank.ts';
import { deviation, normal, uniform } from './random.ts';

const two = aBlank(
  [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
  { footRound: 6, lipRound: 1.5 },
);

const steep = aBlank(
  [
    { height: 0, girth: 400 },
    { height: 40, girth: 340 },
    { along: 90, girth: 265 },
  ],
  { heightReading: 0.4, footRound: 5, lipRound: 4 },
);

/** A place read both ways, and one whose diameters differ. */
const both: Blank = {
  ...two,
  stations: [
    { position: { kind: 'height', mm: 0 }, reading: { kind: 'across', mm: 61.8, diameters: [62.4, 61.2] } },
    { position: { kind: 'height', mm: 60, along: 65 }, reading: { kind: 'girth', mm: 270 } },
  ],
};

const fitted: Blank = {
  ...two,
  fits: [
    {
      foot: 2,
      lip: -1,
      climb: -1,
      band: { from: 6, to: 148 },
      paper: 0.1,
      reading: 0.5,
      template: { radius: 31, halfAngle: 0.08 },
      replaces: true,
    },
  ],
};

/** What one blank might as well have read: every input moved by its own uncertainty. Written apart from the code. */
function redrawn(blank: Blank, draw: () => number): Blank {
  const isExact = blank.heightReading === 0;
  const last = blank.stations.length - 1;
  return {
    ...blank,
    stations: blank.stations.map(({ position, reading }, i) => {
      const diameters = reading.diameters ?? [];
      const half = diameters.length > 1 ? (Math.max(...diameters) - Math.min(...diameters)) / 2 : 0;
      const u = Math.hypot(blank.reading / Math.sqrt(Math.max(1, diameters.length)), half / Math.sqrt(3));
      const isMoved = !isExact || position.along !== undefined || (blank.fits !== undefined && i === last);
      const up = isMoved ? placeReading(blank) : 0;
      return {
        position: {
          ...position,
          mm: position.mm + draw() * up,
          ...(position.along === undefined ? {} : { along: position.along + draw() * up }),
        },
        reading: { ...reading, mm: reading.mm + draw() * u },
      };
    }),
    ...(blank.fits
      ? {
          fits: blank.fits.map((fit) => ({
            ...fit,
            foot: fit.foot + draw() * fit.reading,
            lip: fit.lip + draw() * fit.reading,
            climb: (fit.climb ?? 0) + draw() * climbUncertainty(fit, 0),
          })),
        }
      : {}),
  };
}

describe('how sure a wrap is', () => {
  // JCGM 101:2008: propagation of distributions by a Monte Carlo method. 20 000 draws give a standard deviation to
  // 0.5 %; 3 % is six times that.
  test.each([
    ['two stations', two],
    ['a steep wall whose heights are read too', steep],
    ['a place read both ways and one out of round', both],
    ['a paper fit', fitted],
  ])('agrees with 20 000 noisy blanks: %s', (_, blank) => {
    const wall = solveWall(blank);
    const band = flatBand(wall, blank);
    const sure = sureness(blank, wall, band);
    const draw = normal(uniform(5));
    const walls = Array.from({ length: 20_000 }, () => solveWall(redrawn(blank, draw)));
    const scatter = (figure: (wall: StraightWall) => number) => deviation(walls.map(figure));
    expectWithinPart(
      sure.sweep.u,
      scatter((w) => 2 * Math.PI * Math.sin(w.halfAngle)),
      0.03,
      'sweep',
    );
    expectWithinPart(
      sure.seam.foot,
      scatter((w) => bareGirthAt(w, band.from)),
      0.03,
      'seam at the foot',
    );
    expectWithinPart(
      sure.seam.lip,
      scatter((w) => bareGirthAt(w, band.to)),
      0.03,
      'seam at the lip',
    );
    expectWithinPart(
      sure.flat.from,
      scatter((w) => flatBand(w, blank).from),
      0.03,
      'flat from',
    );
    expectWithinPart(
      sure.flat.to,
      scatter((w) => flatBand(w, blank).to),
      0.03,
      'flat to',
    );
  });

  // Two ways to the same figure: sensitivities found by trying, and the covariance of the fit.
  test('is that of the covariance of the fit where a place is held along the wall', () => {
    const byAlong = aBlank([
      { along: 0, across: 62 },
      { along: 70, girth: 233 },
      { along: 150, girth: 270 },
    ]);
    const wall = solveWall(byAlong);
    const { seam } = sureness(byAlong, wall, { from: 20, to: 140 });
    expectWithinPart(seam.foot, girthUncertaintyAt(wall, 20), 1e-4);
    expectWithinPart(seam.lip, girthUncertaintyAt(wall, 140), 1e-4);
  });

  // References, section 10, computed there: frustum 90/60/120, half a mm more on the lip diameter +0.7325 degrees, on
  // the foot diameter -0.7330, on the height -0.1824.
  test('has the published sensitivities of a frustum 90/60/120', () => {
    const sweepDeg = (foot: number, lip: number, height: number) =>
      360 *
      Math.sin(
        solveWall(
          aBlank([
            { height: 0, across: foot },
            { height, across: lip },
          ]),
        ).halfAngle,
      );
    const at = sweepDeg(60, 90, 120);
    expectWithin(at, 44.652504, 1e-6);
    expectWithin(sweepDeg(60, 90.5, 120) - at, 0.7325, 1e-4);
    expectWithin(sweepDeg(60.5, 90, 120) - at, -0.733, 1e-4);
    expectWithin(sweepDeg(60, 90, 120.5) - at, -0.1824, 1e-4);
    const blank = aBlank([
      { height: 0, across: 60 },
      { height: 120, across: 90 },
    ]);
    const wall = solveWall(blank);
    const { sweep } = sureness(blank, wall, { from: 0, to: wall.length });
    expectWithinPart((sweep.u * 180) / Math.PI, Math.hypot(0.7325, 0.733), 0.001);
  });
});

describe('the overlap that is advised', () => {
  test('is twice the uncertainty at the worse end, and what has to be left to hold', () => {
    expect(recommendedOverlap({ foot: 1.5, lip: 0.5 })).toEqual({ coversAt95: 3, recommended: 6 });
    expect(recommendedOverlap({ foot: 0.2, lip: 0.5 }, 5)).toEqual({ coversAt95: 1, recommended: 6 });
  });

  // NIST TN 1297, 6.2: k = 2 is about 95 %; two-sided normal 95.45 %, and a gap can only open one way: 97.7 %.
  test('covers at the worse end in 97.7 % of 20 000 noisy blanks', () => {
    const wall = solveWall(two);
    const band = flatBand(wall, two);
    const { coversAt95 } = recommendedOverlap(sureness(two, wall, band).seam);
    const draw = normal(uniform(9));
    const made = bareGirthAt(wall, band.from);
    const covered = Array.from({ length: 20_000 }, () => solveWall(redrawn(two, draw))).filter(
      (w) => bareGirthAt(w, band.from) - made <= coversAt95,
    ).length;
    expectWithin(covered / 20_000, 0.977, 0.005);
  });
});

describe('half a millimetre of tape', () => {
  test('is half a millimetre at the seam where it was read, and pi times that across', () => {
    const half = halfMillimetreAtSeam(two, { from: 0, to: solveWall(two).length });
    expect(half?.station).toBe(0);
    expectWithin(half?.foot ?? 0, Math.PI / 2, 1e-6);
    // The lip's reading stays as it was, but that the lean turns its place along by a little.
    expectWithin(half?.lip ?? 9, 0, 0.1);
  });
});
