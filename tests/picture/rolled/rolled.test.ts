import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/drawing/drawing.ts';
import { polygon, reverseContour } from '../../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../../src/geometry/measure.ts';
import { rolledPicture } from '../../../src/picture/rolled/rolled.ts';
import type { RolledVessel } from '../../../src/picture/rolled/rolled-vessel.ts';
import { drawn, pictureFault } from '../../pictures/compare.ts';
import { aVessel, chequered, film, patch, shown, square, type View } from '../a-vessel.ts';

const views: readonly View[] = ['front', 'left', 'right', 'seam'];

/** The eye stands 10 degrees above the level. */
const elevation = (10 * Math.PI) / 180;
const [cosE, sinE] = [Math.cos(elevation), Math.sin(elevation)];

const cylinder = aVessel({ footRadius: 40, halfAngle: 0, length: 120, band: { from: 10, to: 110 } });
const cup = aVessel({ footRadius: 30, halfAngle: 0.1, length: 120, band: { from: 10, to: 110 } });
const pot = aVessel({ footRadius: 60, halfAngle: -0.2, length: 100, band: { from: 5, to: 95 } });

/** Area of one shape: what its outer contour encloses less its holes. */
const areaOf = (contours: ReturnType<typeof shown>[number]): number => {
  const [outer = 0, ...holes] = contours.map((c) => Math.abs(signedArea(c))).sort((a, b) => b - a);
  return outer - holes.reduce((sum, hole) => sum + hole, 0);
};

const areaIn = (picture: string, view: View): number =>
  shown(picture, view)
    .flat()
    .reduce((sum, contour) => sum + Math.abs(signedArea(contour)), 0);

const boxIn = (picture: string, view: View) => tightBox(shown(picture, view).flat());

/** Film all over the piece and past it on every side: trims, run-off, overlap. */
const covered = (vessel: RolledVessel): Drawing =>
  film([[patch(vessel, [-0.004, 1.03], [vessel.band.from - 4, vessel.band.to + 4])]]);

describe('where a place on the wall is seen', () => {
  // Elementary orthographic projection: a point at angle p from the facing one, radius R and height z, is seen at
  // x = R sin p and y = R cos p sin e - z cos e, y down, for an eye at elevation e.
  const R = 40;
  const half = 2 / R;

  it.each([
    { title: 'straight ahead', turn: 0.5, view: 'front' as const, angle: 0 },
    {
      title: 'a twelfth of a turn to the right',
      turn: 0.5 + 1 / 12,
      view: 'front' as const,
      angle: Math.PI / 6,
    },
    { title: 'ahead on the left', turn: 0.25, view: 'left' as const, angle: 0 },
    { title: 'left of ahead on the right', turn: 0.7, view: 'right' as const, angle: -Math.PI / 10 },
    { title: 'right of the seam', turn: 0.05, view: 'seam' as const, angle: Math.PI / 10 },
    { title: 'left of the seam', turn: 0.95, view: 'seam' as const, angle: -Math.PI / 10 },
  ])('puts a square of 4 mm $title where the projection says', ({ turn, view, angle }) => {
    const box = boxIn(rolledPicture(film([[square(cylinder, turn, 60, 4)]]), cylinder), view);
    const nearest = Math.min(Math.abs(angle - half), Math.abs(angle + half), angle === 0 ? 0 : Infinity);
    expect(box.minX).toBeCloseTo(R * Math.sin(angle - half), 1.6);
    expect(box.maxX).toBeCloseTo(R * Math.sin(angle + half), 1.6);
    expect(box.maxY).toBeCloseTo(R * Math.cos(nearest) * sinE - 58 * cosE, 1.6);
    expect(box.minY).toBeCloseTo(R * Math.cos(Math.abs(angle) + half) * sinE - 62 * cosE, 1.6);
  });

  it('is drawn at true scale, one unit a mm', () => {
    const [, width, height, box] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([^"]+)"/.exec(
        rolledPicture(covered(cylinder), cylinder),
      ) ?? [];
    expect(box).toBe(`${width} ${height}`);
  });

  it('comes out of the rasteriser as large as it should', async () => {
    const picture = rolledPicture(film([[square(cylinder, 0.5, 60, 20)]], '#ff0000'), cylinder);
    const width = Number(/width="([\d.]+)mm"/.exec(picture)?.[1]);
    const png = await drawn(picture, 1500);
    const scale = png.width / width;
    const columns = new Set<number>();
    for (let y = 0; y < png.height; y++)
      for (let x = 0; x < png.width / 4; x++) {
        const i = 4 * (y * png.width + x);
        if ((png.data[i] ?? 0) > (png.data[i + 1] ?? 0) + 100) columns.add(x);
      }
    expect(Math.abs(columns.size - 2 * R * Math.sin(10 / R) * scale)).toBeLessThan(1.5);
  });
});

describe('what is hidden', () => {
  it('shows nothing of the far side', () => {
    const picture = rolledPicture(film([[patch(cylinder, [0, 0.02], [40, 60])]]), cylinder);
    expect(shown(picture, 'front')).toEqual([]);
    expect(shown(picture, 'right')).toEqual([]);
    expect(shown(picture, 'seam')).toHaveLength(1);
    // At the left the film is seen edge on, from a quarter turn off to 0.23 of a turn off.
    const box = boxIn(picture, 'left');
    expect(box.minX).toBeCloseTo(-40, 1.6);
    expect(box.maxX).toBeCloseTo(-40 * Math.sin(2 * Math.PI * 0.23), 1.6);
  });

  it('sees a wall that is wider at the foot past the quarter turn, and one wider at the lip less far', () => {
    // cos p = tan a tan e: 95.8 degrees for a half angle of -30, 84.2 for 30 (elementary, e = 10).
    const at = (halfAngle: number, deg: number) => {
      const vessel = aVessel({ footRadius: 60, halfAngle, length: 60, band: { from: 5, to: 55 } });
      const turn = 0.5 + deg / 360;
      return shown(
        rolledPicture(film([[patch(vessel, [turn, turn + 0.5 / 360], [20, 30])]]), vessel),
        'front',
      );
    };
    const leaning = Math.PI / 6;
    expect(at(-leaning, 94.5)).toHaveLength(1);
    expect(at(-leaning, 97)).toHaveLength(0);
    expect(at(leaning, 83)).toHaveLength(1);
    expect(at(leaning, 85.5)).toHaveLength(0);
  });

  it('looks past the seam from the right as far as from the left', () => {
    // A half angle of -30 is in sight to 95.8 degrees, as above: 5.8 degrees of turn past 0 from the right, past 1 from the left.
    const vessel = aVessel({
      footRadius: 60,
      halfAngle: -Math.PI / 6,
      length: 60,
      band: { from: 5, to: 55 },
    });
    const seenOf = (turns: readonly [number, number], view: View) =>
      shown(rolledPicture(film([[patch(vessel, turns, [20, 30])]]), vessel), view).length;
    expect(seenOf([3 / 360, 4 / 360], 'right')).toBe(1);
    expect(seenOf([356 / 360, 357 / 360], 'left')).toBe(1);
    expect(seenOf([7 / 360, 8 / 360], 'right')).toBe(0);
    expect(seenOf([352 / 360, 353 / 360], 'left')).toBe(0);
  });

  it('does not show what is trimmed away', () => {
    const picture = rolledPicture(
      film([[patch(cup, [0.3, 0.7], [7, 9.9])], [patch(cup, [0.3, 0.7], [110.1, 113])]]),
      cup,
    );
    for (const view of views) expect(shown(picture, view)).toEqual([]);
  });

  it('does not show the run-off before the start nor the overlap past the end', () => {
    const picture = rolledPicture(
      film([[patch(cup, [-0.01, 0], [40, 60])], [patch(cup, [1, 1.03], [40, 60])]]),
      cup,
    );
    for (const view of views) expect(shown(picture, view)).toEqual([]);
  });

  it('cuts film that leaves the band at the finished edge', () => {
    const box = boxIn(rolledPicture(film([[patch(cylinder, [0.4, 0.6], [5, 30])]]), cylinder), 'front');
    expect(box.maxY).toBeCloseTo(40 * sinE - 10 * cosE, 1.6);
  });
});

describe('how much is seen', () => {
  it('is 2 R h cos e of a cylinder that is covered all around, in every view', () => {
    // Elementary: half a cylinder's wall, seen at right angles to its axis, is a rectangle; tilting it by e only shears.
    const picture = rolledPicture(covered(cylinder), cylinder);
    const expected = 2 * 40 * 100 * cosE;
    for (const view of views) expect(Math.abs(areaIn(picture, view) / expected - 1)).toBeLessThan(0.0015);
  });

  it.each([
    { title: 'wider at the lip', vessel: cup, halfAngle: 0.1 },
    { title: 'wider at the foot', vessel: pot, halfAngle: -0.2 },
  ])(
    'is the wall times the cosine towards the eye, summed where it is positive, of a cone $title',
    ({ vessel, halfAngle }) => {
      // Elementary: an area shows as its size times the cosine between its normal and the line of sight.
      const { from, to } = vessel.band;
      const middle = (vessel.profile[0]?.radius ?? 0) + ((from + to) / 2) * Math.sin(halfAngle);
      const steps = 36000;
      let around = 0;
      for (let i = 0; i < steps; i++) {
        const p = (2 * Math.PI * (i + 0.5)) / steps;
        const towards = Math.cos(p) * Math.cos(halfAngle) * cosE - Math.sin(halfAngle) * sinE;
        around += (Math.max(0, towards) * 2 * Math.PI) / steps;
      }
      const expected = middle * (to - from) * around;
      const picture = rolledPicture(covered(vessel), vessel);
      for (const view of views) expect(Math.abs(areaIn(picture, view) / expected - 1)).toBeLessThan(0.0015);
    },
  );

  it('leaves holes open, whichever way they are drawn', () => {
    const outer = square(cylinder, 0.5, 60, 20);
    const hole = square(cylinder, 0.5, 60, 10);
    for (const contours of [
      [outer, hole],
      [outer, reverseContour(hole)],
    ]) {
      const pieces = shown(rolledPicture(film([contours]), cylinder), 'front');
      expect(pieces).toHaveLength(1);
      // A square's width is 2 R sin(w / 2R), its height h cos e.
      const solid = (side: number) => 2 * 40 * Math.sin(side / 80) * side * cosE;
      expect(Math.abs(areaOf(pieces[0] ?? []) - (solid(20) - solid(10)))).toBeLessThan(1);
    }
  });

  it('leaves holes open in film that is cut at the finished edge', () => {
    const outer = patch(cylinder, [0.4, 0.6], [5, 60]);
    const hole = patch(cylinder, [0.45, 0.55], [20, 40]);
    const picture = rolledPicture(film([[outer, hole]]), cylinder);
    const wide = (turns: number) => 2 * 40 * Math.sin(Math.PI * turns);
    const expected = (wide(0.2) * 50 - wide(0.1) * 20) * cosE;
    expect(Math.abs(areaOf(shown(picture, 'front').flat()) / expected - 1)).toBeLessThan(0.003);
  });
});

describe('beside a handle', () => {
  const mug = aVessel({ footRadius: 40, halfAngle: 0, length: 100, band: { from: 5, to: 95 }, handle: 50 });

  it('the film ends at the two sides', () => {
    const pieces = shown(rolledPicture(covered(mug), mug), 'seam').flat();
    const boxes = pieces.map((piece) => tightBox([piece])).sort((a, b) => a.minX - b.minX);
    expect(boxes).toHaveLength(2);
    expect(boxes[0]?.maxX).toBeCloseTo(-40 * Math.sin(25 / 40), 1.6);
    expect(boxes[1]?.minX).toBeCloseTo(40 * Math.sin(25 / 40), 1.6);
  });

  it('stands off on the side it is on, hides behind in front, and is as wide as it spans at the seam', () => {
    const parts = rolledPicture(covered(mug), mug).split('<g data-view=');
    const handle = (view: View) =>
      /<(?:path|rect) data-role="handle"[^>]*>/.exec(parts.find((p) => p.startsWith(`"${view}"`)) ?? '')?.[0];
    expect(handle('front')).toBeUndefined();
    expect(handle('left')).toMatch(/d="M-/);
    expect(handle('right')).toMatch(/d="M\d/);
    expect(Number(/ width="([\d.]+)"/.exec(handle('seam') ?? '')?.[1])).toBeCloseTo(
      80 * Math.sin(25 / 40),
      1.6,
    );
  });

  it('is not drawn for a vessel without one, nor is a seam for one with', () => {
    expect(rolledPicture(covered(cup), cup)).not.toContain('data-role="handle"');
    expect(rolledPicture(covered(cup), cup).match(/data-role="seam"/g)).toHaveLength(1);
    expect(rolledPicture(covered(mug), mug)).not.toContain('data-role="seam"');
  });
});

describe('the picture', () => {
  it.each([
    { name: 'rolled-cup', vessel: { ...cup, footRound: 5, lipRound: 1.5 } },
    { name: 'rolled-pot', vessel: { ...pot, footRound: 3, lipRound: 2 } },
  ])('of a chequered film looks like its reference, $name', async ({ name, vessel }) => {
    const picture = rolledPicture(chequered(vessel), vessel);
    expect(await pictureFault(picture, { name, widthPx: 1200, tolerance: 0.0002 })).toBeUndefined();
  });

  it('keeps the layers in the order of the file, in their colours', () => {
    const picture = rolledPicture(chequered(cup), cup);
    const layers = [...picture.matchAll(/data-layer="(\w+)" fill="(#\w+)" fill-rule="evenodd"/g)].map((m) => [
      m[1],
      m[2],
    ]);
    expect(layers).toEqual(
      views.flatMap(() => [
        ['tiles', '#20506b'],
        ['dots', '#c8552b'],
      ]),
    );
  });

  it('is the same bytes for the same input, and holds no text, clip or script', () => {
    const picture = rolledPicture(chequered(cup), cup);
    expect(rolledPicture(chequered(cup), cup)).toBe(picture);
    expect(picture).not.toMatch(/<text|clip|<script|NaN|undefined|href/);
  });

  it('writes the names under the views as outlines, each in the middle of its own', () => {
    const asked: string[] = [];
    const picture = rolledPicture(covered(cup), cup, (text, height) => {
      asked.push(text);
      const width = text.length * height;
      return [
        polygon([
          { x: 1, y: 0 },
          { x: 1 + width, y: 0 },
          { x: 1 + width, y: -height },
          { x: 1, y: -height },
        ]),
      ];
    });
    expect(asked).toEqual([...views, 'finish on top']);
    const captions = [...picture.matchAll(/data-role="caption"[^>]* d="M(-?[\d.]+) [\d.]+L([\d.]+)/g)];
    expect(captions).toHaveLength(5);
    for (const [, left, right] of captions) expect(Number(left) + Number(right)).toBeCloseTo(0, 3);
  });
});
