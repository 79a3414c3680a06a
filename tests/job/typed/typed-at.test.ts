// Findings speak as the maker typed: in keys of a file, or in flags of the command line.
import { describe, expect, test } from 'vitest';
import { toLine } from '../../../src/finding.ts';
import { describeBlank } from '../../../src/job/blank/describe-blank.ts';
import { planWrap } from '../../../src/job/plan/plan.ts';
import { standardFilm } from '../../../src/job/typed/material.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { standardTrim } from '../../../src/job/typed/resolved-job.ts';

const bowl = {
  wall: 'smooth',
  stations: [
    { height: 0, across: 50 },
    { height: 40, across: 80 },
    { height: 80, across: 70 },
  ],
};
const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 150, across: 86 },
  ],
};

function linesOf(blank: object, byFlags: boolean): readonly string[] {
  const [jobFile, blankFile] = byFlags ? [undefined, undefined] : ['t.job.json', 'b.blank.json'];
  const { findings } = planWrap({
    job: {
      band: { from: 5, to: 70 },
      coats: [{ name: 'clear', thickness: 4, over: false }],
      film: standardFilm,
      seam: { style: 'overlap', overlap: 1 },
      trim: standardTrim,
    },
    jobFile,
    blank: readBlank(blank, 'b.blank.json'),
    blankFile,
  });
  return findings.map(toLine);
}

describe('what a wrap asks of the maker', () => {
  test('by keys of its job', () => {
    const lines = linesOf(bowl, false);
    expect(lines).toContainEqual(expect.stringMatching(/^t\.job\.json: seam\.overlap: 1 mm may not cover/));
    expect(lines).toContainEqual(
      expect.stringMatching(/^t\.job\.json: coats\[0\]\.thickness: is a coat of 4 mm/),
    );
    expect(lines).toContainEqual(
      expect.stringMatching(/^t\.job\.json: band: asks .* or cut it in stacked pieces: "pieces": "stacked"$/),
    );
  });

  test('by flags, where it was typed so', () => {
    const lines = linesOf(bowl, true);
    expect(lines).toContainEqual(expect.stringMatching(/^--overlap: 1 mm may not cover/));
    expect(lines).toContainEqual(expect.stringMatching(/^--coat: is a coat of 4 mm/));
    expect(lines).toContainEqual(
      expect.stringMatching(/^--band: asks .* or cut it in stacked pieces: --pieces stacked$/),
    );
    for (const line of lines) expect(line).not.toMatch(/seam|stations|"pieces"|the command line/);
  });
});

test('what is told of a blank points at its reading as it was typed', () => {
  const lines = (file: string | undefined) => describeBlank(readBlank(cup, 'b'), file, 'mm').lines.join('\n');
  expect(lines('b')).toContain('up the wall (stations[0].across) read half a millimetre too small');
  expect(lines(undefined)).toContain('up the wall (--foot-across) read half a millimetre too small');
});
