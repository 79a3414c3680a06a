import { describe, expect, it } from 'vitest';
import { signedArea, tightBox } from '../../src/geometry/measure.ts';
import type { Point } from '../../src/geometry/point.ts';
import { rolledPicture } from '../../src/picture/rolled/rolled.ts';
import { ringsOf } from '../../src/picture/rolled/rolled-body.ts';
import { profileOf } from '../../src/picture/rolled/rolled-profile.ts';
import { type ProfileRing, ringAlong, wallRings } from '../../src/picture/rolled/rolled-rings.ts';
import { outlineOf, sightOf } from '../../src/picture/rolled/rolled-sight.ts';
import type { RolledVessel } from '../../src/picture/rolled/rolled-vessel.ts';
import { pictureFault } from '../pictures/compare.ts';
import { aBentVessel, aSmoothWall, aSteppedWall, chequered, film, patch, shown } from './a-vessel.ts';

const elevation = (10 * Math.PI) / 180;
const [cosE, sinE] = [Math.cos(elevation), Math.sin(elevation)];
const camera = { facing: 0, elevation };

const barrel = aBentVessel(
  aSmoothWall([
    [0, 40],
    [30, 45],
    [60, 47],
    [90, 45],
    [120, 40],
  ]),
  { from: 8, to: 114 },
  { footRound: 3, lipRound: 1.5 },
);
const bowl = aBentVessel(
  aSmoothWall([
    [0, 30],
    [10, 47],
    [25, 60],
    [45, 69],
    [70, 75],
  ]),
  { from: 20, to: 75 },
  { footRound: 2, lipRound: 1.5 },
);
const steppedCorners = [
  [0, 33],
  [70, 34.5],
  [78, 43],
  [180, 46],
] as const;
const stepped = aBentVessel(
  aSteppedWall(steppedCorners),
  { from: 5, to: 175 },
  { footRound: 3, lipRound: 1 },
);

/** Circles of a ball of radius R that stands on a circle of latitude, within 80 degrees of its equator. */
function ballRings(R: number, count: number): readonly ProfileRing[] {
  const from = (-80 * Math.PI) / 180;
  return Array.from({ length: count + 1 }, (_, i) => {
    const latitude = from * (1 - (2 * i) / count);
    return {
      along: R * (latitude - from),
      radius: R * Math.cos(latitude),
      height: R * (Math.sin(latitude) - Math.sin(from)),
      lean: -latitude,
    };
  });
}

describe('the outline of a round body', () => {
  it('of a ball is a circle of its own radius', () => {
    // Elementary: the parallel projection of a sphere is a disc of the same radius. The caps left out lie inside it,
    // since they are within 10 degrees of the poles and the poles 10 degrees from the outline.
    const R = 50;
    const rings = ballRings(R, 160);
    const centre = { x: 0, y: -(R * Math.sin((80 * Math.PI) / 180)) * cosE };
    const outline = outlineOf(camera, rings);
    expect(outline).toHaveLength(1);
    const away = (outline[0] ?? []).map(({ x, y }: Point) => Math.hypot(x - centre.x, y - centre.y));
    // Points lie on circles of 120 chords, R (1 - cos 1.5 degrees) = 0.017 short at most, and on rings 0.01 apart.
    expect(Math.max(...away)).toBeLessThan(R + 0.002);
    expect(Math.min(...away)).toBeGreaterThan(R - 0.03);
  });

  it('of a waisted body is hollow where it is', () => {
    const rings = wallRings(
      aSteppedWall([
        [0, 40],
        [60, 20],
        [120, 40],
      ]),
      0,
    );
    const [outline = []] = outlineOf(camera, rings);
    const atWaist = outline.filter(({ y }) => Math.abs(y + 60 * cosE) < 3).map(({ x }) => Math.abs(x));
    expect(Math.min(...atWaist)).toBeGreaterThan(19.9);
    expect(Math.min(...atWaist)).toBeLessThan(20.6);
  });
});

describe('how far around a circle is in sight', () => {
  it('of a ball is where its normal is square to the line of sight', () => {
    // Elementary: the normal (cos l sin p, cos l cos p, sin l) times the way to the eye (0, cos e, sin e) is 0
    // where cos p = -tan l tan e.
    const rings = ballRings(50, 320);
    for (const ring of rings.filter((_, i) => i % 16 === 0)) {
      const expected = Math.acos(Math.min(1, Math.max(-1, Math.tan(ring.lean) * Math.tan(elevation))));
      // A chord to the next circle stands a little steeper than the ball: 0.25 degrees of latitude.
      expect(Math.abs(2 * Math.PI * sightOf(ring, rings, elevation) - expected)).toBeLessThan(0.01);
    }
  });

  /** Slow: is the way from a point of the body to the eye free of it? Walks it in small steps. */
  function isFree(body: readonly ProfileRing[], ring: ProfileRing, angle: number): boolean {
    const top = body.at(-1)?.height ?? 0;
    const step = 0.02;
    for (let t = step; ring.height + t * sinE < top; t += step) {
      const height = ring.height + t * sinE;
      const depth = ring.radius * Math.cos(angle) + t * cosE;
      const away = Math.hypot(ring.radius * Math.sin(angle), depth);
      const i = body.findIndex((other) => other.height >= height);
      const [a, b] = [body[i - 1], body[i]];
      if (!a || !b) continue;
      const share = (height - a.height) / (b.height - a.height);
      if (away < a.radius + (b.radius - a.radius) * share - 1e-6) return false;
    }
    return true;
  }

  it.each([
    {
      title: 'under a ledge',
      corners: [
        [0, 40],
        [60, 40],
        [64, 55],
        [100, 55],
      ] as const,
    },
    {
      title: 'under a collar',
      corners: [
        [0, 40],
        [60, 40],
        [61, 55],
        [80, 55],
        [81, 40],
        [130, 40],
      ] as const,
    },
    {
      title: 'under a brim',
      corners: [
        [0, 40],
        [60, 24],
        [63, 60],
        [80, 60],
      ] as const,
    },
  ])('$title is what a ray walked to the eye leaves free', ({ corners }) => {
    const body = wallRings(aSteppedWall(corners), 0);
    const length = body.at(-1)?.along ?? 0;
    let hidden = 0;
    for (let along = 1.3; along < length; along += 2.7) {
      const ring = ringAlong(body, along);
      const half = 2 * Math.PI * sightOf(ring, body, elevation);
      if (half < Math.acos(Math.min(1, Math.max(-1, Math.tan(ring.lean) * Math.tan(elevation)))) - 0.02)
        hidden++;
      if (half > 0.03) expect(isFree(body, ring, half - 0.03), `${along} inside`).toBe(true);
      if (half < Math.PI - 0.03) expect(isFree(body, ring, half + 0.03), `${along} outside`).toBe(false);
    }
    // Something other than the wall's own turning away must have been at work.
    expect(hidden).toBeGreaterThan(0);
  });
});

describe('film on a wall that bends', () => {
  const covered = (vessel: RolledVessel) =>
    film([[patch(vessel, [-0.004, 1.03], [vessel.band.from - 4, vessel.band.to + 4])]]);

  it('covers of a barrel what a sum over its wall says', () => {
    // Elementary: an area shows as its size times the cosine between its normal and the line of sight; summed over the
    // wall between the ends of the band, where it is positive. A barrel is convex, so nothing hides it.
    const [ups, arounds] = [800, 1440];
    const { from, to } = barrel.band;
    let expected = 0;
    for (let i = 0; i < ups; i++) {
      const { radius, lean } = ringAlong(barrel.profile, from + ((to - from) * (i + 0.5)) / ups);
      for (let n = 0; n < arounds; n++) {
        const p = (2 * Math.PI * (n + 0.5)) / arounds;
        const towards = Math.cos(p) * Math.cos(lean) * cosE - Math.sin(lean) * sinE;
        expected += Math.max(0, towards) * radius * ((2 * Math.PI) / arounds) * ((to - from) / ups);
      }
    }
    const picture = rolledPicture(covered(barrel), barrel);
    for (const view of ['front', 'left', 'right', 'seam'] as const) {
      const area = shown(picture, view)
        .flat()
        .reduce((sum, contour) => sum + Math.abs(signedArea(contour)), 0);
      expect(Math.abs(area / expected - 1), view).toBeLessThan(0.0015);
    }
  });

  it('lies where the true wall is, not where the flat sheet would close', () => {
    const middle = (barrel.band.from + barrel.band.to) / 2;
    const { radius } = ringAlong(barrel.profile, middle);
    const box = tightBox(
      shown(
        rolledPicture(film([[patch(barrel, [0.2, 0.8], [middle - 1, middle + 1])]]), barrel),
        'front',
      ).flat(),
    );
    expect(box.maxX).toBeCloseTo(radius, 1.3);
    expect(box.minX).toBeCloseTo(-radius, 1.3);
  });

  it('is bent at the corners of the wall', () => {
    // A corner of the strip's sides is where they cross the circle of the wall's corner: a tenth of a turn to the right.
    const strip = patch(stepped, [0.6, 0.62], [60, 100]);
    const pieces = shown(rolledPicture(film([[strip]]), stepped), 'front').flat();
    const nodes = pieces.flatMap(({ segments }) => segments.map(({ from }) => from));
    const angle = 2 * Math.PI * 0.1;
    for (const [height, radius] of steppedCorners.slice(1, 3)) {
      const at = {
        x: radius * Math.sin(angle),
        y: radius * Math.cos(angle) * sinE - height * cosE,
      };
      expect(Math.min(...nodes.map(({ x, y }) => Math.hypot(x - at.x, y - at.y)))).toBeLessThan(0.03);
    }
  });
});

describe('rounded edges', () => {
  it('touch the wall where the closed form for a straight one says', () => {
    // q / tan(45 deg + a/2) from the foot corner, q / tan(45 deg - a/2) from the lip corner (issue of the flat band).
    const a = 0.15;
    const profile = [
      { along: 0, radius: 40, height: 0, lean: a },
      { along: 100, radius: 40 + 100 * Math.sin(a), height: 100 * Math.cos(a), lean: a },
    ];
    const { foot, wall, lip } = profileOf({ profile, footRound: 6, lipRound: 2 });
    expect(wall[0]?.along).toBeCloseTo(6 / Math.tan(Math.PI / 4 + a / 2), 9);
    expect(wall.at(-1)?.along).toBeCloseTo(100 - 2 / Math.tan(Math.PI / 4 - a / 2), 9);
    expect(foot[0]?.height).toBeCloseTo(0, 9);
    expect(lip.at(-1)?.height).toBeCloseTo(100 * Math.cos(a), 9);
  });

  it('go from foot to lip without a break on a wall that bends', () => {
    for (const { profile, footRound, lipRound } of [barrel, bowl, stepped]) {
      const rings = ringsOf(profileOf({ profile, footRound, lipRound }));
      const heights = rings.map(({ height }) => height);
      expect(heights).toEqual([...heights].sort((a, b) => a - b));
      const steps = rings.slice(1).map((ring, i) => {
        const before = rings[i] ?? ring;
        return Math.abs(ring.lean - before.lean);
      });
      if (profile !== stepped.profile) expect(Math.max(...steps)).toBeLessThan(0.4);
    }
  });
});

describe('a lifted wall', () => {
  it('keeps its distance off every side of a corner', () => {
    const [bare, lifted] = [0, 2].map((lift) => wallRings(aSteppedWall(steppedCorners), lift));
    lifted?.forEach((ring, i) => {
      const from = bare?.[i];
      if (!from) return;
      const off =
        (ring.radius - from.radius) * Math.cos(from.lean) - (ring.height - from.height) * Math.sin(from.lean);
      expect(off).toBeCloseTo(2, 9);
    });
  });
});

describe('the picture', () => {
  it.each([
    { name: 'rolled-stepped', vessel: stepped },
    { name: 'rolled-barrel', vessel: barrel },
    { name: 'rolled-bowl', vessel: bowl },
  ])('of a chequered film looks like its reference, $name', async ({ name, vessel }) => {
    const picture = rolledPicture(chequered(vessel), vessel);
    expect(picture).not.toMatch(/<text|clip|<script|NaN|undefined|href/);
    expect(await pictureFault(picture, { name, widthPx: 1200, tolerance: 0.0002 })).toBeUndefined();
  });
});
