// A job made from end to end as `make` does, without a disk: its files by name, and the proof of them as a folder.
import { filesOfPiece, fullReport } from '../../src/job/deliverables.ts';
import { proofOfFolder } from '../../src/job/list/prove-folder.ts';
import { makeFiles } from '../../src/job/make-files.ts';
import type { MakeOptions } from '../../src/job/make-options.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { parseJson } from '../../src/job/typed/read-json.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { setText } from './a-font.ts';
import { filesOf, type Typed } from './a-job.ts';

export type Texts = Readonly<Record<string, string>>;

/** Pictures have so much fewer pixels each way than a maker's: who asks for a folder looks at their drawings, never at pixels. */
const coarser = 20;

/** The files of a job and its report. @throws Refused as the command would. */
export async function folderOf(
  { blank, job = {}, artwork = {}, tile, files: texts = {}, words = () => [], next }: Typed,
  options: Partial<MakeOptions> = {},
) {
  const engine = await pictureEngine();
  const art = tile === undefined ? {} : { artwork: { file: 'tile.svg', ...artwork } };
  const deliverables = await makeFiles(
    {
      job: readJob({ name: 'test job', blank: 'b.blank.json', ...job, ...art }, 't.job.json'),
      jobFile: 't.job.json',
      blank: readBlank(blank, 'b.blank.json'),
      blankFile: 'b.blank.json',
      ...(next ? { next } : {}),
      files: filesOf({ ...texts, ...(tile === undefined ? {} : { 'tile.svg': tile }) }),
      tools: {
        ...engine,
        onWhite: (svg, widthPx) => engine.onWhite(svg, Math.ceil(widthPx / coarser)),
        words,
        setText,
      },
    },
    { pictures: false, search: { trials: 4000 }, fromFolder: (file) => file, ...options },
  );
  const { pieces, rest } = deliverables;
  const more = await rest(pieces);
  const report = fullReport(pieces, more);
  const all = [...pieces.flatMap(filesOfPiece), ...more.files];
  const isText = <T extends { readonly content: unknown }>(file: T): file is T & { content: string } =>
    typeof file.content === 'string';
  const written: Texts = Object.fromEntries(all.filter(isText).map(({ file, content }) => [file, content]));
  const parsed = (name: string, { [name]: text = written[name] ?? '' }: Texts = {}) => parseJson(text, name);
  /** The proof of the folder, some of its files put in place of what was written. */
  const prove = (instead: Texts = {}) =>
    proofOfFolder({
      job: parsed('job.json', instead),
      blank: parsed('blank.json'),
      blankFile: 'blank.json',
      report: parseJson(JSON.stringify(report), 'report.json'),
      texts: { ...written, ...instead },
    });
  const failed = (instead: Texts = {}) =>
    prove(instead)
      .checks.filter(({ pass }) => !pass)
      .map(({ rule }) => rule);
  return { texts: written, report, files: all, prove, failed };
}
