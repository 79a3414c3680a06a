// `seamwright make`: the whole job.
import { basename, dirname, join, relative, resolve } from 'node:path';
import { makeFiles } from '../job/make-files.ts';
import type { MakeInput } from '../job/make-input.ts';
import { filesNamed } from '../job/typed/named-files.ts';
import { parseJson } from '../job/typed/read-json.ts';
import type { Printer } from '../job/typed/read-printer.ts';
import { unitsOf } from '../job/typed/schema-values.ts';
import { deliver } from './deliver.ts';
import { FilesTogether, readBytes, readText } from './files.ts';
import { givenJob } from './job-input.ts';
import { type NestFlags, nestSearch } from './nest-search.ts';
import type { CommonOptions } from './options.ts';
import { givenPrinter, type PrintFlags, printPaper } from './print-flags.ts';
import { stepWords } from './step-words.ts';
import { loadTools } from './tools.ts';
import { tellIn } from './units-told.ts';

export interface MakeFlags extends CommonOptions, NestFlags, PrintFlags {
  readonly pictures: boolean;
  readonly zip?: boolean;
}

/** `printer`: the one of a flag, which goes before that of the job. */
async function readInputs(jobFile: string, printer: Printer | undefined): Promise<Omit<MakeInput, 'tools'>> {
  const typed = parseJson(await readText(jobFile, jobFile), jobFile);
  tellIn(unitsOf(typed, 'mm'));
  const { job, blank, blankFile, beside } = await givenJob(typed, jobFile);
  const files = new Map<string, Uint8Array>();
  const together = new FilesTogether();
  for (const { file, key } of filesNamed(job)) {
    if (files.has(file)) continue;
    const by = { file: jobFile, key };
    files.set(file, await together.read(() => readBytes(beside(file), file, by), by));
  }
  // A finding of a job that is made names the file alone, so that the report is the same wherever the job stands.
  const asked = printer ? { ...job, printer } : job;
  return { job: asked, jobFile: basename(jobFile), blank, blankFile, files };
}

/** `engine`: the one that reads SVG, on its way. */
export async function makeCommand(
  jobFile: string,
  flags: MakeFlags,
  engine: Promise<object>,
): Promise<number> {
  const paper = printPaper(flags);
  const printer = await givenPrinter(flags);
  const input = await readInputs(jobFile, printer);
  const tools = await loadTools(engine);
  const folder = flags.out ?? join(dirname(jobFile), 'out');
  const fromFolder = (file: string) =>
    relative(resolve(folder), resolve(dirname(jobFile), file)).replaceAll('\\', '/');
  const { search, end } = nestSearch(flags);
  // A signal is heard only between turns.
  const between = () => new Promise<void>((resolve) => setImmediate(resolve));
  const options = { pictures: flags.pictures, paper, search, fromFolder, between };
  const deliverables = await makeFiles({ ...input, tools, next: stepWords('make') }, options).finally(end);
  return deliver(deliverables, { ...flags, folder });
}
