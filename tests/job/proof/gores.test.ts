// Jobs in gores, from what is typed to the proof of what is written, and files spoilt in ways that must be named.
import { beforeAll, describe, expect, test } from 'vitest';
import { askedGoresOf, goreLayersAsMade, proofOfGoresDraft } from '../../../src/job/proof/gore-proof.ts';
import { draftGores, type GoresDraft, reportGores } from '../../../src/job/proof/gores.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { proofOfGores } from '../../../src/prove/gore-proof.ts';
import type { Proof } from '../../../src/prove/proof.ts';
import type { PieceText } from '../../../src/prove/written/delivered-file.ts';
import { expectWithin } from '../../closeness.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { setText } from '../a-font.ts';
import { filesOf } from '../a-job.ts';

/** Two colours that cross the tile's borders. */
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M-6 15Q0 6 6 15Q0 24 -6 15Z" fill="#17566b"/><path d="M34 15Q40 6 46 15Q40 24 34 15Z" fill="#17566b"/>
  <path d="M14 6C20 2 26 8 22 14C18 12 12 12 14 6Z" fill="#d4532f"/></svg>`;

const barrel = {
  name: 'barrel',
  use: 'other',
  wall: 'smooth',
  footRound: 3,
  lipRound: 2,
  stations: [
    { height: 0, across: 84 },
    { height: 30, across: 97 },
    { height: 60, across: 101 },
    { height: 90, across: 97 },
    { height: 120, across: 84 },
  ],
};
const stepped = {
  name: 'stepped',
  use: 'other',
  wall: 'stepped',
  stations: [
    { height: 0, across: 60 },
    { height: 40, across: 64 },
    { height: 52, across: 80 },
    { height: 100, across: 84 },
  ],
};

interface Typed {
  readonly blank: object;
  readonly job?: object;
  readonly artwork?: object;
  readonly drawn?: string;
}

interface Made {
  readonly draft: GoresDraft;
  readonly files: PieceText;
  readonly proof: Proof;
  readonly prove: (files: PieceText) => Proof;
}

async function made({ blank, job = {}, artwork = {}, drawn = tile }: Typed): Promise<Made> {
  const { normalise } = await pictureEngine();
  const content = {
    name: 'test job',
    blank: 'b.blank.json',
    pieces: 'gores',
    film: { stretch: 0.02 },
    artwork: { file: 'tile.svg', ...artwork },
    ...job,
  };
  const read = readJob(content, 't.job.json');
  const readAs = readBlank(blank, 'b.blank.json');
  const draft = draftGores({
    job: read,
    jobFile: 't.job.json',
    blank: readAs,
    blankFile: 'b.blank.json',
    files: filesOf({ 'tile.svg': drawn }),
    tools: { normalise, words: () => [], setText },
    gores: { ...(read.gores === undefined ? {} : { count: read.gores }), joined: 'loose', strip: 0 },
  });
  const files = { stem: 'wrap', cut: draft.cut, guide: draft.guide };
  const layers = goreLayersAsMade(draft);
  const asked = askedGoresOf({ job: draft.job, blank: readAs }, layers);
  return {
    draft,
    files,
    proof: proofOfGoresDraft(draft, readAs, layers, files),
    prove: (other) => proofOfGores(asked, other),
  };
}

const cases: Readonly<Record<string, Typed>> = {
  'a barrel': { blank: barrel },
  'a barrel under thick coats, an overlap, conformal': {
    blank: barrel,
    job: { coats: [{ name: 'base', thickness: 1.5 }], seam: { overlap: 5 }, gores: 14 },
    artwork: { lay: 'conformal', repeat: { across: 40, up: 30 } },
  },
  'a stepped cup': { blank: stepped, job: { band: { from: 10, to: 95 }, gores: 16 } },
};

const made1: Record<string, Made> = {};
beforeAll(async () => {
  for (const [name, typed] of Object.entries(cases)) made1[name] = await made(typed);
}, 600_000);

const of = (name: string): Made => {
  const found = made1[name];
  if (!found) throw new Error(`no case ${name}`);
  return found;
};
const failing = ({ checks }: Proof): string[] => checks.filter(({ pass }) => !pass).map(({ rule }) => rule);

describe.each(Object.keys(cases))('gores of %s', (name) => {
  test('hold in every row of the proof', () => {
    const { proof } = of(name);
    expect(failing(proof)).toEqual([]);
    expect(proof.checks.length).toBeGreaterThan(14);
  });

  test('have art that goes on from gore to gore', () => {
    const { seamGap } = of(name).proof;
    expect(seamGap?.crossings).toBeGreaterThan(20);
    expect(seamGap?.position).toBeLessThan(0.002);
    expect(seamGap?.tangentDeg).toBeLessThan(0.1);
  });

  test('say in the report how they are laid', () => {
    const { draft, proof } = of(name);
    const report = reportGores(draft, goreLayersAsMade(draft), proof);
    expect(report.template?.gores?.count).toBe(draft.job.gores);
    expect(report.template?.parts).toHaveLength(draft.job.gores ?? 0);
    expect(report.pattern).toMatchObject({ joins: true, layers: expect.any(Array) });
    expect(report.proof?.pass).toBe(true);
  });
});

test('art whose points only reach the borders holds', async () => {
  // Each tip is rounded past its border by less than is cut off there: the gore beside has nothing that it could go on as.
  const drawn = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">
    <path d="M0 10L12 2C26 4 28 12 22 18Z"/></svg>`;
  const { proof } = await made({ blank: barrel, drawn, job: { gores: 8 }, artwork: { around: 8 } });
  expect(failing(proof)).toEqual([]);
}, 60_000);

/** The first path of an artwork layer, or of the gore of this id, moved to the right by so much. */
function moved(text: string, at: (tag: string) => boolean, by: number): string {
  let isMoved = false;
  return text.replace(/<path[^>]*\bd="([^"]*)"[^>]*>/g, (tag, data: string) => {
    if (isMoved || !at(tag)) return tag;
    isMoved = true;
    // Our files are absolute but for relative steps: to move what they begin with is to move all of it.
    return tag.replace(
      data,
      data.replace(/^M(-?[\d.]+)/, (_, x: string) => `M${Number(x) + by}`),
    );
  });
}

describe('files of gores that were spoilt', () => {
  test('with a gore missing are no proof', () => {
    const { files, prove } = of('a barrel');
    const cut = files.cut?.replace(/<path[^>]*id="gore-2"[^>]*\/>/, '');
    expect(failing(prove({ ...files, ...(cut === undefined ? {} : { cut }) }))).toContain('files');
  });

  test('with one gore cut narrower leave the wall bare', () => {
    const { files, prove } = of('a barrel');
    const cut = files.cut?.replace(
      /(<path[^>]*id="gore-3"[^>]*\bd=")([^"]*)"/,
      (_, head: string, data: string) => {
        const box = [...data.matchAll(/-?\d*\.?\d+/g)].map(Number);
        return `${head}${narrowed(data, box)}"`;
      },
    );
    expect(cut).not.toBe(files.cut);
    const failed = failing(prove({ ...files, ...(cut === undefined ? {} : { cut }) }));
    expect(failed).toEqual(expect.arrayContaining(['outline', 'coverage']));
  });

  test('saved at 25.4/96 of their size are not', () => {
    const { files, prove } = of('a barrel');
    const small = (text = '') =>
      text.replace(
        /width="([\d.]+)mm" height="([\d.]+)mm"/,
        (_, w: string, h: string) => `width="${w}px" height="${h}px"`,
      );
    expect(failing(prove({ stem: 'wrap', cut: small(files.cut), guide: small(files.guide) }))).toContain(
      'scale',
    );
  });

  test('with art moved off its gore do not meet at the edges', () => {
    const { files, prove, draft } = of('a barrel');
    // The gores of another job, whose pattern stands 0.2 mm further round, on these outlines.
    const cut = moved(files.cut ?? '', (tag) => !tag.includes('id='), 0.2);
    expect(cut).not.toBe(files.cut);
    expect(failing(prove({ ...files, cut }))).toContain('as-guide');
    expect(draft.cut).toBe(files.cut);
  });
});

/** Path data whose x are drawn in by a thousandth towards the first. */
function narrowed(data: string, numbers: readonly number[]): string {
  const [first = 0] = numbers;
  let i = 0;
  return data.replace(/[A-Za-z]|-?\d*\.?\d+/g, (token) => {
    if (/[A-Za-z]/.test(token)) {
      i = 0;
      return token;
    }
    const isX = i++ % 2 === 0;
    return isX ? ` ${first + (Number(token) - first) * 0.995}` : ` ${token}`;
  });
}

describe('what is typed', () => {
  test('counts gores only where there are any', () => {
    expect(() => readJob({ name: 'a', blank: 'b.json', gores: 8 }, 't.job.json')).toThrow(/for gores only/);
    expect(() => readJob({ name: 'a', blank: 'b.json', pieces: 'gores', gores: 2 }, 't.job.json')).toThrow();
  });

  test('without a seam has gores edge to edge', () => {
    const job = readJob({ name: 'a', blank: 'b.json', pieces: 'gores' }, 't.job.json');
    expect(job.seam).toEqual({ style: 'butt', overlap: 0 });
    const lapped = readJob(
      { name: 'a', blank: 'b.json', pieces: 'gores', seam: { overlap: 4 } },
      't.job.json',
    );
    expect(lapped.seam.overlap).toBe(4);
  });

  test('with items, or on a wall that is flat there, is refused in words', async () => {
    const item = { file: 'tile.svg', across: 20, at: { turn: 0.5, along: 60 } };
    await expect(made({ blank: barrel, job: { items: [item] } })).rejects.toThrow(/can not lie on gores/);
    await expect(made({ blank: { ...barrel, wall: 'straight' } })).rejects.toThrow(/one piece lies flat/);
  });
});

test('the band on the sheet is longer than on the wall by the coats times the lean it turns by', () => {
  const { plan } = of('a barrel under thick coats, an overlap, conformal').draft;
  const turned =
    Math.asin(plan.bent.at(plan.onSheet.from).slope) - Math.asin(plan.bent.at(plan.onSheet.to).slope);
  expectWithin(plan.onSheet.to - plan.onSheet.from - (plan.band.to - plan.band.from), 1.54 * turned, 1e-6);
});
