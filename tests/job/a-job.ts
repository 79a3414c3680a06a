// Jobs for the tests, made from end to end without a file: what is typed goes in, the report and the written texts come out.

import type { DrawWords } from '../../src/drawing/words.ts';
import { draftPieces } from '../../src/job/lay/make.ts';
import { partsOf } from '../../src/job/parts/parts.ts';
import { proofOfDrafts } from '../../src/job/proof/proof.ts';
import { reportDrafts } from '../../src/job/proof/report-drafts.ts';
import type { FileBytes } from '../../src/job/typed/named-files.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { setText } from './a-font.ts';

/** A dot in the middle of its tile: nothing crosses an edge, so it joins whatever the repeat. Drawn mm. */
export const dotTile = (width: number, height: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm"><circle cx="${width / 2}mm" cy="${height / 2}mm" r="${Math.min(width, height) / 5}mm"/></svg>`;

/** A leaf that crosses the left and right edges of its tile, and a dot. Drawn mm. */
export const leafTile = (width: number, height: number): string => {
  const [x, y] = [width, height / 2];
  const leaf = (at: number) => `M${at - 3} ${y}Q${at} ${y - 4} ${at + 3} ${y}Q${at} ${y + 4} ${at - 3} ${y}Z`;
  const dot = `<circle cx="${width / 2}" cy="${height / 2}" r="${Math.min(width, height) / 5}"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path d="${leaf(0)}${leaf(x)}"/>${dot}</svg>`;
};

/** Files that a job names, from their texts. */
export const filesOf = (texts: Readonly<Record<string, string>>): FileBytes =>
  new Map(Object.entries(texts).map(([file, text]) => [file, new TextEncoder().encode(text)]));

export interface Typed {
  readonly blank: object;
  /** The job beside its name, blank and artwork file. */
  readonly job?: object;
  /** The artwork's keys beside its file; none without a tile. */
  readonly artwork?: object;
  readonly tile?: string;
  /** Other files that the job names, by their names. */
  readonly files?: Readonly<Record<string, string>>;
  /** Font files and pictures that the job names. */
  readonly fonts?: Readonly<Record<string, Uint8Array>>;
  /** Who draws the guides' words; nobody, if left out. */
  readonly words?: DrawWords;
  /** Who is told what is done next, of a whole folder. */
  readonly next?: (says: string) => void;
}

/** The draft of a job and its report. @throws Refused as the command would. */
export async function madeOf({
  blank,
  job = {},
  artwork = {},
  tile,
  files: texts = {},
  fonts = {},
  words = () => [],
}: Typed) {
  const { normalise } = await pictureEngine();
  const art = tile === undefined ? {} : { artwork: { file: 'tile.svg', ...artwork } };
  const content = { name: 'test job', blank: 'b.blank.json', ...job, ...art };
  const read = readBlank(blank, 'b.blank.json');
  const input = {
    job: readJob(content, 't.job.json'),
    jobFile: 't.job.json',
    blank: read,
    blankFile: 'b.blank.json',
    files: new Map([
      ...filesOf({ ...texts, ...(tile === undefined ? {} : { 'tile.svg': tile }) }),
      ...Object.entries(fonts),
    ]),
    tools: { normalise, words, setText },
  };
  const drafts = draftPieces(input);
  const parts = partsOf(input, drafts);
  const [draft] = drafts;
  if (!draft) throw new Error('a job has at least one piece');
  const files = drafts.map(({ cut, guide }, i) => ({ stem: `wrap-${i + 1}`, cut, guide }));
  const proof = proofOfDrafts(drafts, read, files, parts);
  return { draft, drafts, parts, report: reportDrafts(drafts, proof, parts), proof, blank: read };
}

/** The closed form of a straight wall from its two ends, in the words of the contract. Radii and height mm. */
export function frustum(footRadius: number, lipRadius: number, height: number) {
  const halfAngle = Math.atan2(lipRadius - footRadius, height);
  return {
    halfAngle,
    along: Math.hypot(lipRadius - footRadius, height),
    /** Girth of a sheet whose mid-thickness lies `off` above the bare wall. */
    girthAt: (along: number, off: number) =>
      2 * Math.PI * (footRadius + along * Math.sin(halfAngle) + off * Math.cos(halfAngle)),
  };
}
