// The pattern taken away around a name: what that leaves too small to hold goes too, and is told; the proof knows how far.
import { describe, expect, test } from 'vitest';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { expectWithin } from '../../closeness.ts';
import { paperPath } from '../../geometry/libraries.ts';
import { folderOf } from '../a-folder.ts';
import { madeOf } from '../a-job.ts';

const blank = {
  use: 'other',
  stations: [
    { height: 0, across: 80 },
    { height: 90, across: 80 },
  ],
};
/** Bars up the wall, each with a bar of 10 by 10 mm beside it that the mark leaves a strip of. */
const tile =
  '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30"><path d="M4 2H8V28H4ZM14 10H24V20H14Z"/></svg>';
const mark =
  '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30"><rect width="30" height="30"/></svg>';
const job = (more: object = {}) => ({
  items: [{ file: 'm.svg', across: 30, at: { turn: 0.5, along: 45 }, clear: 1 }],
  ...more,
});
const typed = (more?: object) => ({
  blank,
  tile,
  artwork: { around: 8, scale: 'across' },
  job: job(more),
  files: { 'm.svg': mark },
});

const slivers = (
  checks: readonly { readonly rule: string; readonly times?: number; readonly size?: number }[],
) => checks.filter(({ rule }) => rule === 'clear-sliver').map(({ times, size }) => ({ times, size }));

describe('what clearing leaves of a pattern', () => {
  test('too small to hold is left out, told, and known to the proof', async () => {
    const made = await folderOf(typed({ film: { minPiece: 25 } }));
    const [found] = slivers(made.report.checks);
    expect(found).toBeDefined();
    expect(made.failed()).toEqual([]);
    const [item] = made.report.items ?? [];
    expect(item?.clear).toBe(1);
    // Further than the half mm beside it that the proof leaves out anyway.
    expect(item?.cleared).toBeGreaterThan(1.6);
  });

  test('is left out whole, and nothing else: the area by another library', async () => {
    const area = async (more?: object) => {
      const { drafts } = await madeOf(typed(more));
      const layer = drafts[0]?.layers.find(({ name }) => !name.startsWith('item'));
      return { shapes: layer?.shapes ?? [], leftOut: drafts[0]?.leftOut ?? [] };
    };
    const kept = await area({ film: { minPiece: 0, minWidth: 0 } });
    const { shapes, leftOut } = await area();
    expect(kept.leftOut).toEqual([]);
    expect(leftOut.length).toBeGreaterThan(0);
    const gone = leftOut.reduce((sum, one) => sum + one.area, 0);
    const paper = ({ contours }: { readonly contours: Parameters<typeof paperPath>[0] }) =>
      Math.abs(paperPath(contours).area);
    const total = (all: typeof shapes) => all.reduce((sum, shape) => sum + paper(shape), 0);
    expectWithin(total(kept.shapes) - total(shapes), gone, 0.01);
    expect(shapes.every((shape) => shapeArea(shape) >= 4)).toBe(true);
  });

  test('stays where the pattern is the film that goes', async () => {
    const { report } = await folderOf(typed({ film: { use: 'mask' } }));
    expect(slivers(report.checks)).toEqual([]);
  });

  test('is left out there too where no blade opens it', async () => {
    // Of the bar at 14 mm, drawn 1.047 as wide, clearing leaves 108.91 to 109.66 mm along: 0.75 mm.
    const { report, failed } = await folderOf(typed({ film: { use: 'mask', minGap: 0.8 } }));
    expect(slivers(report.checks)).toHaveLength(1);
    expect(report.checks.find(({ rule }) => rule === 'clear-sliver')?.says).toMatch(
      /opening.* smaller than a blade opens clean \(0\.8 mm\)/,
    );
    expect(failed()).toEqual([]);
  });
});
