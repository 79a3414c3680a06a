import { describe, expect, test } from 'vitest';
import { Refused } from '../../../src/finding.ts';
import { girthAt } from '../../../src/unroll/flat-wall.ts';
import { edgePoint } from '../../../src/unroll/template.ts';
import { tileText } from '../../artwork/a-tile.ts';
import { expectWithin } from '../../closeness.ts';
import { leafTile, madeOf } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, across: 86 },
  ],
};
const barrel = {
  use: 'other',
  wall: 'smooth',
  stations: [
    { height: 0, across: 80 },
    { height: 30, across: 90 },
    { height: 60, across: 94 },
    { height: 90, across: 90 },
    { height: 120, across: 80 },
  ],
};
const tile = leafTile(40, 30);
const stacked = { band: { from: 15, to: 90 }, pieces: 'stacked', film: { stretch: 0.005 } };

describe('stacked pieces', () => {
  test('cover the band edge to edge, and share the girth at every edge within what the film gives', async () => {
    const { drafts, report } = await madeOf({ blank: barrel, job: stacked, tile });
    expect(drafts.length).toBeGreaterThan(1);
    expect(report.template).toMatchObject({ shape: 'stepped', band: stacked.band });
    expect(report.template?.parts).toHaveLength(drafts.length);
    drafts.slice(1).forEach(({ plan: { template } }, i) => {
      const below = drafts[i]?.plan.template;
      if (!below) throw new Error('a piece has one below it');
      expect(template.band.from).toBe(below.band.to);
      const [under, over] = [below, template].map(({ wall }) => girthAt(wall, template.band.from));
      expectWithin((under ?? 0) / (over ?? 1), 1, 0.005);
    });
    expect(report.template?.strain?.stretch).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  test('carry one pattern: art crosses each shared edge at the same places', async () => {
    const { drafts, report, proof } = await madeOf({ blank: barrel, job: stacked, tile });
    expect(report.pattern?.joins).toBe(true);
    expect(report.pattern?.seamGap?.position).toBeLessThan(0.01);
    const atJoints = proof.checks.find(({ rule }) => rule === 'level-joint-position');
    expect(atJoints?.value).toBeLessThan(0.003);
    for (const { pattern } of drafts) expect(pattern?.wrap.layers[0]?.shapes.length).toBeGreaterThan(0);
    const closings = drafts.map(({ pattern }) => pattern?.plan.closing);
    expect(new Set(closings).size).toBe(1);
  });

  test('meet at a waist, though film is stretched to it by another share from below than from above', async () => {
    const stations = [
      { height: 0, across: 70 },
      { height: 25, across: 64.5 },
      { height: 50, across: 62 },
      { height: 80, across: 66 },
      { height: 112, across: 74.2 },
    ];
    const job = { pieces: 'stacked', film: { stretch: 0.02 } };
    const { drafts, proof } = await madeOf({ blank: { use: 'other', wall: 'smooth', stations }, job, tile });
    const [below, above] = drafts.map(({ plan: { template } }) => template);
    const girths = [below, above].map((one) => one && girthAt(one.wall, above?.band.from ?? 0));
    expect(Math.abs((girths[0] ?? 0) - (girths[1] ?? 0))).toBeGreaterThan(0.02);
    expect(proof.checks.find(({ rule }) => rule === 'level-joint-position')?.value).toBeLessThan(0.003);
    expect(proof.pass).toBe(true);
  });

  test('say of a tile that does not meet itself once that it does not, though it does not on any of them', async () => {
    const open = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
      <path d="M-2 9C10 2 20 18 42 17" fill="none" stroke="#000" stroke-width="4"/></svg>`;
    const { drafts, report } = await madeOf({
      blank: barrel,
      job: stacked,
      tile: open,
      artwork: { way: 'as-drawn' },
    });
    const said = (findings: readonly { readonly rule: string }[]) =>
      findings.filter(({ rule }) => rule === 'does-not-join').length;
    expect(drafts.filter(({ findings }) => said(findings) === 1).length).toBeGreaterThan(1);
    expect(said(report.checks)).toBe(1);
  });

  test('cover all of the wall between its rounds where no band is given', async () => {
    const { report, proof } = await madeOf({
      blank: { ...barrel, footRound: 3, lipRound: 2 },
      job: { pieces: 'stacked', film: { stretch: 0.02 } },
    });
    const { from = 0, to = 0 } = report.template?.band ?? {};
    expect(from).toBeLessThan(3);
    expect((report.blank?.along ?? 0) - to).toBeLessThan(2);
    expect(report.template?.parts.length).toBeGreaterThan(1);
    expect(proof.pass).toBe(true);
  });

  test('are one piece on a straight wall', async () => {
    const { drafts } = await madeOf({ blank: cup, job: { pieces: 'stacked' } });
    expect(drafts).toHaveLength(1);
  });

  test('keep the overlap parallel to the seam in every piece', async () => {
    const { drafts } = await madeOf({ blank: barrel, job: stacked });
    for (const { plan } of drafts) {
      const { wall, right, seam, band } = plan.template;
      const apart = [band.from, band.to].map((along) => {
        const [a, b] = [edgePoint(wall, right, along), edgePoint(wall, seam.finish, along)];
        return Math.hypot(a.x - b.x, a.y - b.y);
      });
      expectWithin(apart[0] ?? 0, 6, 0.01);
      expectWithin(apart[1] ?? 0, 6, 0.01);
    }
  });
});

describe('what a job asks too much of', () => {
  const rulesOf = async (job: object) =>
    (await madeOf({ blank: cup, job })).report.checks.map(({ rule }) => rule);

  test('a sheet that can not hold the piece either way round is said; one that can is not', async () => {
    const small = { sheet: { across: '12in', up: '6in' } };
    expect(await rulesOf({ ...small, panels: { joints: [] } })).toContain('sheet-too-small');
    expect(await rulesOf(small)).not.toContain('sheet-too-small');
    expect(await rulesOf({ sheet: { across: '7in', up: '12in' } })).not.toContain('sheet-too-small');
  });

  test('a trim too wide to be meant is said', async () => {
    expect(await rulesOf({ trim: { lip: 30, foot: 3 } })).toContain('trim-wide');
    expect(await rulesOf({ trim: { lip: 3, foot: 3 } })).not.toContain('trim-wide');
  });

  test('repeats too many to be cut are refused before they are laid', async () => {
    const asked = madeOf({ blank: cup, tile, artwork: { around: 9000 } });
    await expect(asked).rejects.toThrow(Refused);
    await expect(asked).rejects.toThrow(/9000 around and \d+ rows up would be \d+ repeats, finer than/);
    // As many as degrees: a slip that took minutes.
    const degrees = madeOf({ blank: cup, tile, artwork: { around: 360 } });
    await expect(degrees).rejects.toThrow(/360 around and \d+ rows up would be \d+ repeats/);
    const wavy = `<path d="M0 10${'q.5 -3 1 0q.5 3 1 0'.repeat(400)}V20H0Z"/>`;
    const many = madeOf({ blank: cup, tile: tileText(wavy), artwork: { around: 130 } });
    await expect(many).rejects.toThrow(/million lines/);
  });
});
