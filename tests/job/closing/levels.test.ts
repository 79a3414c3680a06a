// A band cut in levels because its sheet is too short: cut where least art is crossed, and whole again when laid together.
import { describe, expect, test } from 'vitest';
import { compose, inverse, moveContour } from '../../../src/geometry/affine.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import type { Draft } from '../../../src/job/draft.ts';
import type { FlatWall } from '../../../src/unroll/flat-wall.ts';
import { edgePoint, outline, templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';
import { clipperArea, paperArea } from '../../geometry/libraries.ts';
import { folderOf } from '../a-folder.ts';
import { dotTile, leafTile, madeOf } from '../a-job.ts';
import { contourIn, frameOf } from '../written.ts';

const can = {
  use: 'other',
  stations: [
    { height: 0, across: 30 },
    { height: 110, across: 30 },
  ],
};
const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 30 },
    { height: 110, across: 42 },
  ],
};
const band = { from: 5, to: 105 };
/** Shorter than the band is high, whichever way the panels are turned. */
const short = { across: 75, up: 75, margin: 2 };
const overlap = 4;

/** A written outline where it lies on the flat wall, by its guide's own first line. */
function laidBack({ cut, guide, plan: { template } }: Draft, wall: FlatWall): Contour {
  const line = contourIn(guide, 'seam', 'seam-start').segments[0];
  if (!line) throw new Error('a line has a segment');
  const { seam } = template;
  const there = frameOf(
    edgePoint(wall, seam.start, template.band.from),
    edgePoint(wall, seam.start, template.band.to),
  );
  return moveContour(compose(inverse(frameOf(line.from, line.to)), there), contourIn(cut, 'outline'));
}

const levelsOf = ({ job }: Draft): readonly number[] => job.panels?.levels ?? [];

/** A contour as points so close that a chord is off by less than 1e-4 mm. */
const ringOf = ({ segments }: Contour): readonly Point[] =>
  segments.flatMap((s) => Array.from({ length: s.kind === 'line' ? 1 : 200 }, (_, i) => pointAt(s, i / 200)));

/** All art of drafts inside the finished piece of each, mm². */
const cutArt = (drafts: readonly Draft[]): number =>
  drafts.reduce(
    (sum, { layers, plan }) =>
      sum +
      paperArea(
        'intersection',
        layers.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours)),
        [outline(plan.template)],
      ),
    0,
  );

describe.each([
  { name: 'a can', blank: can },
  { name: 'a taper', blank: cup },
])('$name too tall for its sheet', ({ blank }) => {
  const made = madeOf({ blank, job: { band, sheet: short, panels: { overlap } }, tile: dotTile(20, 20) });

  test('gives the template back when its levels are laid together: all of it, and nothing beside it', async () => {
    const { drafts, proof } = await made;
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    const [first] = drafts;
    if (!first) throw new Error('a job has a piece');
    expect(levelsOf(first).length).toBeGreaterThan(0);
    const { wall, trim } = first.plan.template;
    const ends = { foot: trim.foot, lip: drafts.at(-1)?.plan.template.trim.lip ?? 0 };
    const whole = templateOf(wall, { band, trim: ends, overlap: first.job.seam.overlap });
    const wanted = [ringOf(outline(whole))];
    const joined = drafts.map((draft) => ringOf(laidBack(draft, wall)));
    // Edges of levels lie on one another to the 0.0001 mm that files are written to.
    expectWithin(clipperArea('difference', wanted, joined, 'nonzero'), 0, 0.1);
    expectWithin(clipperArea('difference', joined, wanted, 'nonzero'), 0, 0.1);
    const all = Math.abs(clipperArea('union', joined, [], 'nonzero'));
    expectWithin(all, Math.abs(clipperArea('union', wanted, [], 'nonzero')), 0.1);
  });

  test('is cut between the motifs where there is room for it', async () => {
    // Dots of 8 mm a row of 20 leave 12 mm clear, more than the overlap.
    const [first] = (await made).drafts;
    if (!first?.pattern) throw new Error('a job has a piece');
    const row = 20 * first.pattern.plan.closing.scaleUp;
    for (const at of levelsOf(first)) {
      const over = (at - band.from) % row;
      // A dot takes the middle two fifths of its row: the cut and the edge 4 mm above it stay clear of it.
      const [low, high] = [0.3 * row - overlap, 0.7 * row];
      expect(over <= low + 0.02 || over >= high - 0.02).toBe(true);
    }
  });
});

describe('level cuts', () => {
  test('lie between rows where joints are asked for at repeats', async () => {
    const panels = { overlap, joints: 'repeats' };
    const { draft, report } = await madeOf({
      blank: can,
      job: { band, sheet: short, panels },
      tile: dotTile(20, 20),
    });
    const row = 20 * (draft.pattern?.plan.closing.scaleUp ?? Number.NaN);
    const levels = levelsOf(draft);
    expect(levels.length).toBeGreaterThan(0);
    for (const at of levels)
      expectWithin((at - band.from) / row, Math.round((at - band.from) / row), 0.01 / row);
    expect(report.checks.find(({ rule }) => rule === 'levels')?.says).toMatch(
      /levels, at .* under the one above/,
    );
  });

  test('are where the maker says, with no art lost or laid beside it', async () => {
    const panels = { overlap: 0, joints: [], levels: [40, '2.5in'] };
    const tile = leafTile(24, 20);
    const [cut, whole] = await Promise.all([
      madeOf({ blank: cup, job: { band, panels, trim: { foot: 0, lip: 0 } }, tile }),
      madeOf({ blank: cup, job: { band, trim: { foot: 0, lip: 0 } }, tile }),
    ]);
    expect(cut.drafts.map(({ plan }) => plan.band)).toEqual([
      { from: 5, to: 40 },
      { from: 40, to: 63.5 },
      { from: 63.5, to: 105 },
    ]);
    expect(cut.proof.pass).toBe(true);
    expectWithin(cutArt(cut.drafts), cutArt(whole.drafts), 0.05);
  });

  test('are refused off the band, in words', async () => {
    const job = { band, panels: { levels: [3] } };
    await expect(madeOf({ blank: can, job })).rejects.toMatchObject({
      findings: [
        { rule: 'level-outside', says: '3 mm is not within the band, which goes from 5 mm to 105 mm' },
      ],
    });
    // A piece of 2 mm would lie under the one above whole.
    await expect(madeOf({ blank: can, job: { band, panels: { levels: [40, 103] } } })).rejects.toMatchObject({
      findings: [
        {
          rule: 'level-too-low',
          says: 'leave a piece 2 mm high, from 103 mm to 105 mm; give levels at least 6 mm from one another and from the ends of the band',
        },
      ],
    });
    await expect(madeOf({ blank: can, job: { band, panels: { levels: [40, 30] } } })).rejects.toMatchObject({
      findings: [{ rule: 'not-rising' }],
    });
  });

  test('are found again when the delivered job is made, and the proof tells where one is not where it was asked for', async () => {
    const made = await folderOf({ blank: can, job: { band, sheet: short, panels: { overlap } } });
    expect(made.failed()).toEqual([]);
    const job = JSON.parse(made.texts['job.json'] ?? '');
    const again = await folderOf({ blank: can, job: { ...job, blank: 'b.blank.json' } });
    expect(again.texts['wrap-1-a.cut.svg']).toBe(made.texts['wrap-1-a.cut.svg']);
    expect(job.panels.levels).toHaveLength(1);
    const moved = { ...job, panels: { ...job.panels, levels: [job.panels.levels[0] + 0.1] } };
    expect(made.failed({ 'job.json': JSON.stringify(moved) })).toContain('finished-edges');
  });
});
