// What the engine answers to each question of the page.
import { bytesOf, type FileBytes } from '../../job/typed/named-files.ts';
import { paperNamed } from '../../job/typed/print-paper.ts';
import type { AnswerOf, AskOf, Kind } from '../model/messages.ts';
import { loadTools, loadWords } from './engine.ts';
import { givenJob } from './given.ts';
import { follower } from './leading.ts';
import { recallOf } from './remembering.ts';
import { wallOf } from './wall.ts';
import { studied } from './ways.ts';

/** Says how far long work has come. */
export type Progress = (step: number, of: number, says: string) => void;

type Answers = {
  readonly [K in Kind]: (ask: AskOf<K>, files: FileBytes, progress: Progress) => Promise<AnswerOf<K>>;
};

/** The job's files stand in `out/` beside it, as the command writes them. */
const fromFolder = (file: string): string => `../${file}`;

export const answers: Answers = {
  async vessel({ bench, window }) {
    return wallOf(bench, await loadWords(), window);
  },

  async flat({ bench }, files) {
    const { laidView } = await import('./laying.ts');
    const asked = { unchecked: true, linesOnly: true };
    return laidView({
      ...givenJob(bench, files),
      tools: await loadTools(),
      recall: recallOf(bench),
      ...asked,
    });
  },

  async followed({ bench, within }, files) {
    const leads = await follower();
    if (!leads) return {};
    const { followedView, Room } = await import('./following.ts');
    // It is handed over: no room is kept.
    const followed = followedView(leads, givenJob(bench, files), await loadWords(), within, new Room());
    return followed ? { followed } : {};
  },

  async checks({ bench }, files) {
    const { laidView } = await import('./laying.ts');
    return {
      checks: laidView({ ...givenJob(bench, files), tools: await loadTools(), recall: recallOf(bench) })
        .report.checks,
    };
  },

  async rolled({ bench }, files) {
    const { rolledJob, solidSeen } = await import('./laying.ts');
    const input = { ...givenJob(bench, files), tools: await loadTools(), recall: recallOf(bench) };
    const seen = await solidSeen(rolledJob(input).solid());
    return seen ? { solid: seen } : {};
  },

  async sides({ bench }, files) {
    const { rolledJob } = await import('./laying.ts');
    const input = { ...givenJob(bench, files), tools: await loadTools(), recall: recallOf(bench) };
    return { svg: rolledJob(input).svg() };
  },

  async rows(asked, files, progress) {
    const { Rows } = await import('./rows.ts');
    const { fit: _, ...answer } = await (await Rows.of(asked, files)).check(progress);
    return answer;
  },

  async row(asked, files) {
    const [{ Rows }, { rolledJob }] = await Promise.all([import('./rows.ts'), import('./laying.ts')]);
    const rows = await Rows.of(asked, files);
    const row = rows.rows.find(({ line }) => line === asked.line);
    if (!row) throw new Error(`the list has no row at line ${asked.line}`);
    return { svg: rolledJob(await rows.inputOf(row)).svg() };
  },

  async names({ paper, ...asked }, files, progress) {
    const { Rows } = await import('./rows.ts');
    const rows = await Rows.of(asked, files);
    return rows.make(paper === undefined ? undefined : paperNamed(paper), progress);
  },

  async seam({ bench }, files) {
    const { gapAtSeam } = await import('./making.ts');
    const gap = gapAtSeam({
      ...givenJob(bench, files),
      tools: await loadTools(),
      recall: recallOf(bench),
      unchecked: true,
    });
    return gap ? { gap } : {};
  },

  async art({ bench }, files) {
    const { artViewOf, fontsOf, inspect } = await import('./artwork.ts');
    const { job } = givenJob(bench, files);
    const tools = await loadTools();
    const file = job.artwork?.file ?? '';
    const { film, cutter } = job;
    const look = () => {
      const over = (job.artwork?.over ?? []).map((one) => ({ ...one, content: bytesOf(files, one.file) }));
      const fonts = fontsOf({ job, files, tools });
      const { normalise } = tools;
      const content = bytesOf(files, file);
      const seen = inspect({ ...job.artwork, content, file, over, film, cutter, fonts, normalise });
      return { ...artViewOf(seen), ...seen.report };
    };
    // It stays as it is while the vessel changes under it.
    return recallOf(bench).of('art', JSON.stringify([job.artwork, film, cutter]), look);
  },

  async ways({ bench }, files) {
    const { report, lines } = (await studied(bench, files)).described;
    return { joins: report.joins, ways: report.ways, taken: report.taken, lines: lines.slice(0, 3) };
  },

  async wayPicture({ bench, key }, files) {
    const { wayPicture } = await import('./artwork.ts');
    const { input, described } = await studied(bench, files);
    return wayPicture(input, described, key);
  },

  async files({ bench, paper }, files, progress) {
    progress(0, 3, 'reading the job');
    const { filesOfPiece, fullReport, jsonContent, makeFiles, reportFile } = await import('./making.ts');
    const input = { ...givenJob(bench, files), tools: await loadTools() };
    progress(1, 3, 'laying and cutting');
    const paperSize = paper === undefined ? undefined : paperNamed(paper);
    const { pieces, rest } = await makeFiles(input, { pictures: true, paper: paperSize, fromFolder });
    progress(2, 3, 'proving, drawing and printing');
    const more = await rest(pieces);
    const report = fullReport(pieces, more);
    const last = { file: reportFile, role: 'report', content: jsonContent(report) };
    return { files: [...pieces.flatMap(filesOfPiece), ...more.files, last], report };
  },
};
