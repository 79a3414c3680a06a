// Motifs over the joints of a stack: on a wall that bends each piece is a cone of its own, and lines have to go on from one to the next.
import { expect, test } from 'vitest';
import { madeOf } from '../a-job.ts';

test('what is cleared around bars up the wall meets itself at every joint', async () => {
  const bars =
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="90mm" viewBox="0 0 40 90"><path d="M0 0H5V90H0ZM35 0H40V90H35Z"/></svg>';
  const all =
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20"><path d="M0 0H40V20H0Z"/></svg>';
  const { proof, drafts } = await madeOf({
    blank: {
      use: 'other',
      wall: 'stepped',
      stations: [
        { height: 0, across: 110 },
        { height: 60, across: 114 },
        { height: 110, across: 140 },
      ],
    },
    job: {
      pieces: 'stacked',
      film: { thickness: 0.1 },
      items: [{ file: 'bars.svg', across: 40, at: { turn: 0.5, along: 40 }, apart: false, clear: 2 }],
    },
    tile: all,
    files: { 'bars.svg': bars },
  });
  expect(drafts.length).toBeGreaterThan(1);
  expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  expect(proof.checks.map(({ rule }) => rule)).toContain('level-joint-position');
});
