// Panels, made from end to end: each fits its sheet, and brought together again they are the template.
import { describe, expect, test } from 'vitest';
import { compose, inverse, moveContour } from '../../../src/geometry/affine.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import type { Draft } from '../../../src/job/draft.ts';
import { edgePoint, outline } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';
import { paperArea, paperPath } from '../../geometry/libraries.ts';
import { dotTile, leafTile, madeOf } from '../a-job.ts';
import { contourIn, frameOf } from '../written.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, across: 86 },
  ],
};
const bowl = {
  use: 'other',
  stations: [
    { height: 0, across: 60 },
    { height: 45, across: 150 },
  ],
};
const mug = {
  use: 'other',
  stations: [
    { height: 0, across: 80 },
    { height: 90, across: 80 },
  ],
};
const handled = { ...mug, handle: { spans: 40, keepOff: 4 } };
const small = { across: 130, up: 170, margin: 5 };

/** A written panel's outline where it lies on the whole template, by its guide's own first line. */
function laidBack({ cut, guide, plan: { template } }: Draft): Contour {
  const line = contourIn(guide, 'seam', 'seam-start').segments[0];
  if (!line) throw new Error('a line has a segment');
  const { wall, seam, band } = template;
  const there = frameOf(edgePoint(wall, seam.start, band.from), edgePoint(wall, seam.start, band.to));
  return moveContour(compose(inverse(frameOf(line.from, line.to)), there), contourIn(cut, 'outline'));
}

const shapeOf = (contour: Contour) => paperPath([contour]);

describe.each([
  { name: 'a taper on a small sheet', blank: cup, job: { sheet: small } },
  {
    name: 'a wide bowl on A4, its arcs turned',
    blank: bowl,
    job: { sheet: { across: 210, up: 148, margin: 3 } },
  },
  { name: 'a straight mug at repeats', blank: mug, job: { sheet: small, panels: { joints: 'repeats' } } },
  { name: 'a mug with a handle', blank: handled, job: { sheet: small, panels: { overlap: 3 } } },
  { name: 'a mug, edge to edge', blank: mug, job: { sheet: small, panels: { overlap: 0 } } },
])('$name', ({ blank, job }) => {
  const made = madeOf({ blank, job, tile: leafTile(30, 24) });

  test('has panels that fit the sheet inside its margin, as they lie in their files', async () => {
    const { drafts, report } = await made;
    expect(drafts.length).toBeGreaterThan(1);
    const { across, up, margin } = job.sheet;
    for (const { cut } of drafts) {
      const { minX, minY, maxX, maxY } = tightBox([contourIn(cut, 'outline')]);
      expect(maxX - minX).toBeLessThanOrEqual(across - 2 * margin + 2e-4);
      expect(maxY - minY).toBeLessThanOrEqual(up - 2 * margin + 2e-4);
    }
    expect(report.template?.parts).toHaveLength(drafts.length);
    expect(report.checks.map(({ rule }) => rule)).toContain('panels');
    expect(report.checks.map(({ rule }) => rule)).not.toContain('sheet-too-small');
  });

  test('gives the template back when its panels are laid together: all of it, and nothing beside it', async () => {
    const { drafts } = await made;
    const whole = drafts[0]?.panel?.whole;
    if (!whole) throw new Error('a panel is of a template');
    const wanted = shapeOf(outline(whole));
    const joined = drafts.map((draft) => shapeOf(laidBack(draft)));
    const overlap = drafts[0]?.plan.template.overlap ?? 0;
    // Panels edge to edge share a border to a tenth of a micrometre: a sliver is left open or laid twice.
    const sliver = 0.03;
    const all = joined.reduce((a, b) => a.unite(b));
    expectWithin(Math.abs(all.area), Math.abs(wanted.area), sliver);
    expectWithin(Math.abs(wanted.subtract(all).area), 0, sliver);
    expectWithin(Math.abs(all.subtract(wanted).area), 0, sliver);
    // What is laid twice is the overlaps, each as wide as it was chosen from foot to lip.
    const high = whole.piece.to - whole.piece.from;
    const twice = joined.reduce((sum, { area }) => sum + Math.abs(area), 0) - Math.abs(all.area);
    expectWithin(
      twice,
      (drafts.length - 1) * overlap * high,
      0.02 * (drafts.length - 1) * overlap * high + sliver,
    );
  });

  test('is proved from its files, and says where each panel lies', async () => {
    const { proof, report } = await made;
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(proof.checks.map(({ rule }) => rule)).toContain('joint-position');
    const turns = (report.template?.parts ?? []).map((part) => part.turns);
    turns.slice(1).forEach((turn, i) => {
      expectWithin(turn.from, turns[i]?.to ?? Number.NaN, 1e-12);
    });
    expectWithin(turns[0]?.from ?? Number.NaN, report.template?.turns.from ?? 0, 1e-12);
    expectWithin(turns.at(-1)?.to ?? Number.NaN, report.template?.turns.to ?? 1, 1e-12);
  });
});

describe('joints', () => {
  test('run between dots where there is room, so that none is cut', async () => {
    // Dots of 12 mm in tiles of 30 mm leave 18 mm clear, more than an overlap of 6; whole rows leave the edges clear.
    const job = { sheet: small, edges: 'whole-rows' };
    const { drafts } = await madeOf({ blank: cup, job, tile: dotTile(30, 30) });
    expect(drafts.length).toBeGreaterThan(1);
    let whole = 0;
    for (const { pattern, plan } of drafts)
      for (const { contours } of pattern?.wrap.layers.flatMap(({ shapes }) => shapes) ?? []) {
        const cut = paperArea('intersection', contours, [outline(plan.template)]);
        const area = Math.abs(paperPath(contours).area);
        if (cut > 0.01) expectWithin(cut, area, 0.01);
        whole += cut > 0.01 ? 1 : 0;
      }
    expect(whole).toBeGreaterThan(20);
  });

  test('lie at repeats where that is asked for, and nowhere else', async () => {
    const { draft, report } = await madeOf({
      blank: mug,
      job: { sheet: small, panels: { joints: 'repeats' } },
      tile: dotTile(20, 20),
    });
    const around = report.pattern?.around ?? Number.NaN;
    const joints = draft.job.panels?.joints;
    if (typeof joints !== 'object') throw new Error('a resolved job has its joints as turns');
    for (const joint of joints) expectWithin(joint * around, Math.round(joint * around), 1e-9);
  });

  test('are laid across the least art where no panel of whole repeats fits, which is said', async () => {
    const { report, drafts } = await madeOf({
      blank: mug,
      job: { sheet: small, panels: { joints: 'repeats' } },
      artwork: { around: 1, scale: 'across' },
      tile: dotTile(250, 60),
    });
    expect(drafts.length).toBeGreaterThan(1);
    expect(report.checks.map(({ rule }) => rule)).toContain('panel-repeat');
  });

  test('are as typed where they are typed; none leaves the piece whole, and says that it does not fit', async () => {
    const typed = await madeOf({ blank: mug, job: { panels: { joints: [0.25, 0.7] } } });
    expect(typed.drafts.map(({ mark }) => mark)).toEqual(['a', 'b', 'c']);
    expect(typed.proof.pass).toBe(true);
    // By hand: the mug goes around in 251.3 mm, so 0.01 turns are 2.5 mm.
    await expect(madeOf({ blank: mug, job: { panels: { joints: [0.25, 0.26] } } })).rejects.toMatchObject({
      findings: [{ rule: 'panel-too-narrow', says: expect.stringContaining('less than 6 mm wide') }],
    });
    const whole = await madeOf({ blank: mug, job: { sheet: small, panels: { joints: [] } } });
    expect(whole.drafts.map(({ mark }) => mark)).toEqual(['']);
    expect(whole.report.checks.map(({ rule }) => rule)).toContain('sheet-too-small');
  });

  test('are none where the piece fits the sheet at some turn, in whose file it is turned as little as it takes', async () => {
    const flat = await madeOf({ blank: mug, job: { sheet: { across: 110, up: 300, margin: 3 } } });
    expect(flat.draft.turned).toBe(0);
    // A piece of 257 by 36 mm fits a square of 215 mm only aslant.
    const band = { from: 10, to: 40 };
    const aslant = await madeOf({ blank: mug, job: { band, sheet: { across: 215, up: 215, margin: 0 } } });
    expect(aslant.drafts).toHaveLength(1);
    expect(Math.abs(aslant.draft.turned)).toBeGreaterThan(0.2);
    expect(aslant.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  });
});
