// Where along a pattern a straight seam falls, held against chords of circles and against the films that were laid.
import { describe, expect, test } from 'vitest';
import { Refused } from '../../../src/finding.ts';
import { isUnlucky } from '../../../src/job/lay/seam-place.ts';
import { filmCut } from '../../../src/pattern/seam/film-crossed.ts';
import type { Template } from '../../../src/unroll/template.ts';
import { edgePoint } from '../../../src/unroll/template.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { folderOf } from '../a-folder.ts';
import { madeOf, type Typed } from '../a-job.ts';

/** 240 mm around on the sheet's own middle, but for its film; 80 mm up. */
const can = {
  stations: [
    { height: 0, girth: 240 },
    { height: 80, girth: 240 },
  ],
};
const cup = {
  stations: [
    { height: 0, across: 60 },
    { height: 90, across: 84 },
  ],
};
const butt = { seam: { style: 'butt' }, film: { thickness: 0 } };

/** Discs of 9 mm radius on the left and right edges of a tile of 40 by 40 mm, drawn there twice. */
const edgeDiscs =
  '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><circle cx="0" cy="20" r="9"/><circle cx="40" cy="20" r="9"/></svg>';

/** So much of a pattern of discs and bars that repeats by 34 by 30 mm, from a place in it. */
const crop = (x: number, y: number, width = 75, height = 62): string => {
  const motif = (i: number, j: number) => {
    const at = { x: 34 * i - x, y: 30 * j - y };
    return `<circle cx="${at.x + 9}" cy="${at.y + 9}" r="7"/><path d="M${at.x + 20} ${at.y + 4}H${at.x + 27}V${at.y + 12}L${at.x + 20} ${at.y + 18}Z"/><circle cx="${at.x + 22}" cy="${at.y + 24}" r="2.5"/>`;
  };
  const all = [-1, 0, 1, 2, 3, 4].flatMap((i) => [-1, 0, 1, 2, 3, 4].map((j) => motif(i, j)));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${all.join('')}</svg>`;
};

type Made = Awaited<ReturnType<typeof madeOf>>;

/** What an upright edge cuts of the film that was laid, mm: the edge at so much to the right of a turn. */
function cutBy({ draft }: Made, turn: number, offset: number): number {
  const { wall, band, piece }: Template = draft.plan.template;
  const point = (along: number) => edgePoint(wall, { turn, offset }, along);
  const points = [piece.from - 3, band.from, band.to, piece.to + 3].map(point);
  return filmCut({ points, first: 1, last: 2 }, draft.layers).length;
}

describe('a tile with motifs on its edge', () => {
  const told = ({ report }: Made) => report.checks.filter(({ rule }) => rule === 'seam-place');

  test('keeps its edge at the seam, and is told what that cuts and what another place would', async () => {
    const made = await madeOf({ blank: can, tile: edgeDiscs, job: butt });
    const [finding] = told(made);
    // Two rows, each cut through its middle.
    expect(finding?.says).toMatch(/cuts 36 mm of film; 20 mm along it, it would cut 0 mm/);
    expect(finding?.level).toBe('note');
    expect(made.report.pattern?.seamAt).toBeUndefined();
    expectWithin(cutBy(made, 0, 0), 36, 0.1);
  });

  test('is taken to its gaps where the job asks for it', async () => {
    const made = await madeOf({ blank: can, tile: edgeDiscs, job: butt, artwork: { seamAt: 'gaps' } });
    expectWithin(made.report.pattern?.seamAt?.at ?? 0, 20, 0.2);
    expectWithin(made.report.pattern?.seamAt?.cutsAtEdge ?? 0, 36, 0.1);
    expect(made.report.pattern?.seamAt?.cuts).toBe(0);
    expectAtMost(cutBy(made, 0, 0), 1e-9);
    expect(made.proof.pass).toBe(true);
  });

  test('or to a place of its own: chords of its circles', async () => {
    for (const seamAt of [5, -5, 45]) {
      const made = await madeOf({ blank: can, tile: edgeDiscs, job: butt, artwork: { seamAt } });
      expectWithin(cutBy(made, 0, 0), 2 * 2 * Math.sqrt(81 - 25), 0.05);
      expect(made.proof.pass).toBe(true);
      expect(told(made)).toEqual([]);
      // What stands at a turn was drawn that much further along.
      expectAtMost(cutBy(made, (20 - seamAt) / 240, 0), 1e-9);
    }
  });

  test('is not spoken of where its edge cuts less than is told: of a tile in inches it "cuts 0 in, and elsewhere would cut 0 in"', () => {
    expect(isUnlucky({ at: 6, cuts: 0, cutsAtEdge: 0.03 })).toBe(false);
    expect(isUnlucky({ at: 6, cuts: 0, cutsAtEdge: 0.3 })).toBe(true);
    expect(isUnlucky({ at: 6, cuts: 0.2, cutsAtEdge: 0.3 })).toBe(false);
  });

  test('typed wrong is refused with what may stand there', async () => {
    const made = madeOf({ blank: can, tile: edgeDiscs, job: butt, artwork: { seamAt: 'gap' } });
    await expect(made).rejects.toThrow('"gap" will not do here; give "gaps", or a length such as "20mm"');
  });

  test('is not spoken of where its edge cuts nothing, or a seam winds', async () => {
    const dots = edgeDiscs.replace('cx="0"', 'cx="20"').replace('cx="40"', 'cx="20"');
    expect(told(await madeOf({ blank: can, tile: dots, job: butt }))).toEqual([]);
    const winding = { seam: { style: 'winding', overlap: 6 } };
    expect(told(await madeOf({ blank: can, tile: edgeDiscs, job: winding }))).toEqual([]);
  });
});

describe('a repeat that was found in a crop', () => {
  const seams: Readonly<Record<string, { readonly seam: object; readonly shows: number }>> = {
    butt: { seam: { style: 'butt' }, shows: 0 },
    'an overlap, its finish on top': { seam: { style: 'overlap', overlap: 7 }, shows: 7 },
    'an overlap, its start on top': { seam: { style: 'overlap', overlap: 7, top: 'start' }, shows: 0 },
    'cut through': { seam: { style: 'cut-through', overlap: 8 }, shows: 0 },
  };
  const cases = Object.entries(seams).flatMap(([name, seam]) =>
    [can, cup].map((blank) => ({ name, blank, shape: blank === can ? 'can' : 'cup', ...seam })),
  );
  test.each(cases)(
    'begins where no other edge cuts less: $name on a $shape',
    async ({ blank, seam, shows }) => {
      const typed: Typed = { blank, tile: crop(9, 8), job: { seam } };
      const made = await madeOf(typed);
      const place = made.report.pattern?.seamAt;
      if (!place) throw new Error('the seam was not moved');
      // Whatever the edge that shows is, on the film that was laid.
      // Grazed, a circle of 7 mm is cut by more or less for a hundredth of a mm.
      expectWithin(cutBy(made, 0, shows), place.cuts, Math.sqrt(8 * 7 * 0.01));
      const around = made.report.pattern?.around ?? 1;
      const others = Array.from({ length: 60 }, (_, i) => cutBy(made, (1 + i / 60) / around, shows));
      expectAtMost(place.cuts, Math.min(...others) + 0.3);
      expect(made.proof.pass).toBe(true);
      const drawn = await madeOf({ ...typed, artwork: { seamAt: 0 } });
      expectWithin(cutBy(drawn, 0, shows), place.cutsAtEdge, Math.sqrt(8 * 7 * 0.01));
      expect(drawn.proof.pass).toBe(true);
    },
  );

  test('cuts no motif where a line misses all of them, whole rows and rigid motifs too', async () => {
    for (const more of [{}, { edges: 'whole-rows' }, { edges: 'fade' }]) {
      const made = await madeOf({ blank: can, tile: crop(9, 8), job: { ...butt, ...more } });
      expectAtMost(cutBy(made, 0, 0), 1e-9);
      expect(made.proof.pass).toBe(true);
    }
    const rigid = await madeOf({ blank: cup, tile: crop(9, 8), job: butt, artwork: { lay: 'rigid' } });
    expectAtMost(cutBy(rigid, 0, 0), 1e-9);
    expect(rigid.proof.pass).toBe(true);
  });

  test('is made again from its resolved job as it was', async () => {
    const made = await madeOf({ blank: can, tile: crop(9, 8), job: butt });
    const { seamAt, way } = made.draft.job.artwork ?? {};
    expectWithin(Number(seamAt), made.report.pattern?.seamAt?.at ?? 0, 1e-12);
    const again = await madeOf({ blank: can, tile: crop(9, 8), job: butt, artwork: { seamAt, way } });
    expect(again.draft.layers).toEqual(made.draft.layers);
  });

  test('lies under its strips where they cover the borders, and nowhere else', async () => {
    const strips = { way: 'strip-3' };
    const made = await madeOf({ blank: can, tile: crop(9, 8), job: butt, artwork: strips });
    expect(made.report.pattern?.seamAt).toBeUndefined();
    const moved = madeOf({ blank: can, tile: crop(9, 8), job: butt, artwork: { ...strips, seamAt: 5 } });
    await expect(moved).rejects.toThrow(Refused);
  });
});

describe('a pattern on gores', () => {
  // 8 borders over 6 repeats fall on four places of a period; over 8 on one.
  const barrel = {
    use: 'other',
    wall: 'smooth',
    stations: [
      { height: 0, across: 70 },
      { height: 40, across: 76 },
      { height: 80, across: 70 },
    ],
  };
  const onGores = (gores: number, artwork: object) =>
    folderOf({
      blank: barrel,
      tile: crop(9, 8),
      artwork,
      job: { pieces: 'gores', gores, film: { stretch: 0.05 }, seam: { style: 'butt' } },
    });

  test.each([
    { gores: 8, around: 8 },
    { gores: 8, around: 6 },
  ])(
    'of a crop begins where their borders cut least: $gores gores, $around repeats',
    async ({ gores, around }) => {
      const made = await onGores(gores, { around });
      const { seamAt } = made.report.pattern ?? {};
      if (!seamAt) throw new Error('the borders were not moved');
      expect(made.failed()).toEqual([]);
      const places = [0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9].map((part) => 34 * part);
      const crossings = async (at: number): Promise<number> =>
        (await onGores(gores, { around, seamAt: at })).report.pattern?.seamGap?.crossings ?? Number.NaN;
      const others = await Promise.all(places.map(crossings));
      // Measured on the written files: every line that crosses a border, which it does into film and out of it.
      const own = made.report.pattern?.seamGap?.crossings ?? Number.NaN;
      expectAtMost(own, Math.min(...others));
      expect(seamAt.cuts).toBeLessThan(seamAt.cutsAtEdge);
      expect(
        made.report.checks.filter(({ rule }) => rule === 'seam-place').map(({ says }) => says)[0],
      ).toContain(`the ${gores} borders of the gores cut`);
    },
    300_000,
  );
});
