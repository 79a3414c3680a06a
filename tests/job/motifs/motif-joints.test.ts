// Joints of panels and a name: they keep off it, and where the maker puts one through it, that is told.
import { describe, expect, test } from 'vitest';
import { leafTile, madeOf } from '../a-job.ts';

const pot = {
  use: 'other',
  stations: [
    { height: 0, across: 84 },
    { height: 110, across: 118 },
  ],
};
const mark =
  '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="10mm" viewBox="0 0 30 10"><path d="M0 0H10V10H0ZM20 0H30V10H20Z"/></svg>';
const typed = (turn: number, more: object = {}) => ({
  blank: pot,
  tile: leafTile(50, 60),
  files: { 'm.svg': mark },
  job: {
    sheet: { across: 210, up: 297, margin: 6 },
    items: [{ file: 'm.svg', across: 60, at: { turn, along: 55 } }],
    ...more,
  },
});
const made = async (...asked: Parameters<typeof typed>) => {
  const { drafts } = await madeOf(typed(...asked));
  const [first] = drafts;
  const joints = first?.level.joints ?? [];
  const { from, to } = first?.laid[0]?.reach.turns ?? { from: Number.NaN, to: Number.NaN };
  const told = (first?.findings ?? []).filter(({ rule }) => rule === 'item-on-joint');
  return { joints, from, to, told };
};

describe('a motif on a wrap that is cut in panels', () => {
  // A gap stands open in the middle of the mark: where least art is cut a joint would go through it.
  test.each([0.4, 0.45, 0.5, 0.55, 0.6])('at turn %s lies on one of them', async (turn) => {
    const { joints, from, to, told } = await made(turn);
    expect(joints.length).toBeGreaterThan(0);
    for (const joint of joints)
      expect(joint > from && joint < to, `${joint} in ${from} to ${to}`).toBe(false);
    expect(told).toEqual([]);
  });

  test('is told where a joint of the maker cuts it in two', async () => {
    const { joints, told } = await made(0.5, { panels: { joints: [0.5] } });
    expect(joints).toEqual([0.5]);
    expect(told).toHaveLength(1);
    expect(told[0]?.says).toContain('the joint of two panels at turn 0.500');
    expect(told[0]).toMatchObject({ where: { key: 'items[0].at' } });
  });

  test('that is cut apart is not: it is laid over the joint', async () => {
    const items = [{ file: 'm.svg', across: 60, at: { turn: 0.5, along: 55 }, apart: true }];
    const { told } = await made(0.5, { panels: { joints: [0.5] }, items });
    expect(told).toEqual([]);
  });
});
