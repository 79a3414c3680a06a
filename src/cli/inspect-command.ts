// `seamwright inspect`: whether artwork can be cut, weeded and carried.
import { basename } from 'node:path';
import { Refused, stop } from '../finding.ts';
import { jsonContent, type NamedFile } from '../job/deliverables.ts';
import { type Inspected, inspect, inspectionLines } from '../job/inspect/inspect.ts';
import { inspectionPicture, mendedArt, mendedPicture } from '../job/inspect/inspect-picture.ts';
import { pictureFiles } from '../job/pictures/picture-files.ts';
import type { FileReport } from '../job/report.ts';
import type { JobTools } from '../job/tools.ts';
import { type Cutter, type Film, standardCutter, standardFilm } from '../job/typed/material.ts';
import { readCutter } from '../job/typed/read-cutter.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { boundsOfWidth, readFilm } from '../job/typed/read-material.ts';
import { mostInList } from '../job/typed/schema-values.ts';
import type { TraceOptions } from '../job/typed/tracing.ts';
import { radians } from '../lengths/angle.ts';
import { leastSize } from '../lengths/length.ts';
import { coloursOf, groundOf, traceOf } from './colours-flag.ts';
import { delivered } from './delivery.ts';
import { FilesTogether, readBytes, readText } from './files.ts';
import { FlagLengths } from './flag-lengths.ts';
import { fontsGiven } from './font-flag.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { stepWords } from './step-words.ts';
import { loadTools } from './tools.ts';
import { told, unitsTold } from './units-told.ts';

export interface InspectFlags extends CommonOptions {
  readonly artAcross?: string;
  readonly colours?: string;
  readonly ground?: readonly string[];
  readonly font?: readonly string[];
  readonly film?: string;
  readonly cutter?: string;
  readonly minWidth?: string;
  readonly minGap?: string;
  readonly minPiece?: string;
  readonly minAngle?: string;
  readonly use?: string;
  readonly mend?: boolean;
}

/** What the flags ask for, over the figures of a film. */
interface Asked {
  readonly trace: TraceOptions;
  readonly over: Partial<Film>;
}

function askedOf(flags: InspectFlags): Asked {
  const lengths = new FlagLengths(flags.units);
  const across = lengths.read('--art-across', flags.artAcross, 'positive', { least: leastSize });
  const angle = lengths.readNumber('--min-angle', flags.minAngle, /(?:deg|degrees|°)$/, {
    least: 0,
    most: 90,
  });
  const over = {
    minWidth: lengths.read('--min-width', flags.minWidth, 'zero-too', boundsOfWidth),
    minGap: lengths.read('--min-gap', flags.minGap, 'zero-too', boundsOfWidth),
    minPiece: lengths.readNumber('--min-piece', flags.minPiece, /mm(?:²|2|\^2)$/, { least: 0, most: 1e6 }),
    minAngle: angle === undefined ? undefined : radians(angle),
    use: useOf(flags.use, lengths),
  };
  const colours = coloursOf(flags.colours, lengths);
  const ground = groundOf(flags.ground, lengths);
  lengths.finish();
  return {
    trace: traceOf({ across, colours, ground }),
    over: Object.fromEntries(Object.entries(over).filter(([, value]) => value !== undefined)),
  };
}

function useOf(typed: string | undefined, lengths: FlagLengths): Film['use'] | undefined {
  if (typed === undefined || typed === 'decal' || typed === 'mask') return typed;
  return lengths.refuse('--use', `"${typed}" is no use of film here; give decal or mask`);
}

async function named<T>(
  file: string | undefined,
  key: string,
  read: (content: unknown, file: string) => T,
  standard: T,
): Promise<T> {
  if (file === undefined) return standard;
  return read(parseJson(await readText(file, file, { key }), file), file);
}

/** The files of a run, in the order they are listed. */
function filesOf(inspected: Inspected, title: string, { words, ...tools }: JobTools): NamedFile[] {
  const mended = mendedArt(inspected, title);
  const over = mendedPicture(inspected, title, words, unitsTold());
  return [
    ...pictureFiles('inspect', inspectionPicture(inspected, title, words, unitsTold()), tools),
    ...(mended === undefined ? [] : [{ file: 'mended.svg', role: 'artwork', content: mended }]),
    ...(over === undefined ? [] : pictureFiles('mended-picture', over, tools)),
  ];
}

async function write(inspected: Inspected, title: string, folder: string, tools: JobTools) {
  const named = filesOf(inspected, title, tools);
  const files = [...named, { file: 'inspect.json', role: 'report' }].map(({ file, role }) => ({
    file,
    role,
  }));
  await delivered(folder, async (delivery) => {
    for (const { file, content } of named) await delivery.stage(file, content);
    await delivery.stage('inspect.json', jsonContent({ ...inspected.report, files }));
  });
  return files;
}

/** Mended art is only told of where it is also kept. */
function refuseUnkept({ mend, out }: InspectFlags): void {
  if (!mend || out !== undefined) return;
  throw new Refused([
    stop('mend', { key: '--mend' }, 'writes the mended art; say where, such as --out mended'),
  ]);
}

/** Each is films of its own over those before it: as many as a job may name. */
function refuseMany(others: readonly string[]): void {
  if (others.length <= mostInList) return;
  const says = `${others.length} drawings would be laid over the first, each films of its own; up to ${mostInList} are, so give those of one vessel alone, or look at them one by one`;
  throw new Refused([stop('too-many', {}, says)]);
}

export async function inspectCommand(
  [file = '', ...others]: readonly string[],
  flags: InspectFlags,
): Promise<number> {
  const { trace, over } = askedOf(flags);
  refuseUnkept(flags);
  const film: Film = { ...(await named(flags.film, '--film', readFilm, standardFilm)), ...over };
  const cutter: Cutter = await named(flags.cutter, '--cutter', readCutter, standardCutter);
  refuseMany(others);
  const together = new FilesTogether();
  const read = (path: string) => together.read(() => readBytes(path, path), { file: path });
  const content = await read(file);
  const laidOver: { content: Uint8Array; file: string }[] = [];
  for (const other of others) laidOver.push({ content: await read(other), file: basename(other) });
  const tools = await loadTools();
  const inspected = inspect({
    content,
    file: basename(file),
    over: laidOver,
    ...trace,
    fonts: await fontsGiven(flags.font, tools),
    film,
    cutter,
    mend: flags.mend === true,
    normalise: tools.normalise,
    next: stepWords('inspect'),
  });
  const { report } = inspected;
  const files = flags.out === undefined ? [] : await write(inspected, basename(file), flags.out, tools);
  if (flags.json) printJson({ ...report, ...(files.length > 0 ? { files } : {}) });
  else
    process.stdout.write(
      `${[...inspectionLines(inspected).map(told), ...writtenTo(flags.out, files)].join('\n')}\n`,
    );
  printFindings(report.checks, { numbered: files.length > 0 });
  return exitStatus(report.checks);
}

const writtenTo = (folder: string | undefined, files: readonly FileReport[]): readonly string[] =>
  folder === undefined ? [] : [`written to ${folder}: ${files.map((one) => one.file).join(', ')}`];
