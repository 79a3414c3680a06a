// The bench as the contract's files, and back: what the page saves the command takes, and the other way round.
import type { Finding } from '../../finding.ts';
import { Refused } from '../../finding.ts';
import { unzipped, zipped } from '../../job/archive.ts';
import { safeName } from '../../job/list/row-folders.ts';
import { isJob } from '../../job/typed/read-blank.ts';
import { parseJson } from '../../job/typed/read-json.ts';
import { materialFiles } from '../../job/typed/read-material.ts';
import type { Artwork } from '../../job/typed/resolved-job.ts';
import { tooLarge } from '../../lengths/file-size.ts';
import type { Units } from '../../lengths/length.ts';
import { typedText } from '../../lengths/typed-text.ts';
import {
  type Bench,
  emptyBench,
  filesInUse,
  isObject,
  type Json,
  type JsonObject,
  withFile,
} from './bench.ts';

export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const utf8 = new TextEncoder();

const jsonText = (value: JsonObject): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** The job file's text and the blank file's. */
export const jobText = ({ job, blankFile }: Bench): string => jsonText({ ...job, blank: blankFile });
export const blankText = ({ blank }: Bench): string => jsonText(blank);

/** Columns of a list that a name waits for, with what follows them in writing: `{name}'s mug`. */
const column = /\{[^{}]*\}(?:['’]s\b)?/g;

/** What an archive of a job is called, without its ending: by the job's name, as the folders of a list's vessels are by theirs. */
export const archiveName = ({ job, jobFile }: Bench): string =>
  safeName(String(job.name ?? '').replace(column, ' '), jobFile.replace(/(\.job)?\.json$/i, ''));

/** The job's folder: the job, its blank, the files it names; and what was made of it, in `out/`. */
export function folderZip(
  bench: Bench,
  made: readonly { readonly file: string; readonly content: string | Uint8Array }[] = [],
): Uint8Array {
  const out = made.map(({ file, content }) => [
    `out/${file}`,
    typeof content === 'string' ? utf8.encode(content) : content,
  ]);
  return zipped({
    [bench.jobFile]: utf8.encode(jobText(bench)),
    [bench.blankFile]: utf8.encode(blankText(bench)),
    ...filesInUse(bench),
    ...Object.fromEntries(out),
  });
}

/** What was opened: the bench with it, and what is still wanting, in words. */
export interface Opened {
  readonly bench: Bench;
  readonly says: readonly string[];
}

const isArtwork = (name: string): boolean => /\.(svg|png|jpe?g)$/i.test(name);
const isFont = (name: string): boolean => /\.(ttf|otf|woff)$/i.test(name);
const baseName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;

const wantedInZip = (name: string): boolean =>
  (/\.json$/i.test(name) || isArtwork(name) || isFont(name)) && !/(^|\/)(out|__MACOSX)\//.test(name);

/** An archive's own files in place of it. @throws Refused where it can't be read. */
function unpacked({ name, bytes }: NamedBytes): readonly NamedBytes[] {
  if (!/\.zip$/i.test(name)) return [{ name, bytes }];
  const large = new Map<string, string>();
  const isTaken = (path: string, size: number): boolean => {
    const says = wantedInZip(path) ? tooLarge(size) : undefined;
    if (says) large.set(path, says);
    return wantedInZip(path) && !says;
  };
  const held = heldIn(name, bytes, isTaken);
  const [first] = large;
  if (first) throw refused(...first);
  return Object.entries(held).map(([path, content]) => ({ name: path, bytes: content }));
}

function heldIn(name: string, bytes: Uint8Array, isTaken: Parameters<typeof unzipped>[1]) {
  try {
    return unzipped(bytes, isTaken);
  } catch {
    throw refused(name, 'is no zip archive that can be read; give the files in it themselves');
  }
}

const refused = (file: string, says: string): Refused => {
  const finding: Finding = { rule: 'unreadable', level: 'stop', where: { file }, says };
  return new Refused([finding]);
};

/**
 * The bench after files were opened on it: a job, a blank, artwork, or any of them together, packed or not. `use`: a drawing whose name
 * the job knows already takes that one's place, but where it was given to be laid all around.
 * @throws Refused with words for the maker where one can't be read.
 */
export function withOpened(
  before: Bench,
  given: readonly NamedBytes[],
  use: 'artwork' | 'any' = 'any',
): Opened {
  const files = given.flatMap(unpacked);
  for (const { name, bytes } of files) {
    const large = tooLarge(bytes.length);
    if (large) throw refused(name, large);
  }
  const parsed = files
    .filter(({ name }) => /\.json$/i.test(name))
    .map(({ name, bytes }) => ({
      name: baseName(name),
      bytes,
      value: parseJson(typedText(bytes, baseName(name)), baseName(name)),
    }));
  const jobs = parsed.filter(({ value }) => isJob(value));
  const [job] = jobs;
  if (jobs.length > 1)
    throw refused(jobs.map(({ name }) => name).join(', '), 'are several jobs; open one at a time');
  if (job && isObject(job.value)) refuseTwins(job.name, pathsNamed(job.value));
  const others = parsed.filter((file) => file !== job);
  const blanks = others.filter(({ value }) => isObject(value) && 'stations' in value);
  const materials = others.filter((file) => !blanks.includes(file));
  const bench = job ? withJob(before, job.name, job.value) : before;
  const withBlanks = blanks.reduce(
    (now, blank) => withBlank(now, blank.name, blank.value, jobs.length > 0),
    bench,
  );
  const rest = [...materials, ...files.filter(({ name }) => isArtwork(name) || isFont(name))];
  const opened = withOthers(withBlanks, rest, { isNew: job !== undefined, use });
  const lies = new Set(Object.values(opened.bench.files));
  if (!job && blanks.length === 0 && given.length > 0 && !rest.some(({ bytes }) => lies.has(bytes)))
    throw refused(given.map(({ name }) => name).join(', '), notOpened);
  return opened;
}

/** Of what would otherwise be let go of without a word. */
const notOpened =
  'can’t be used here; give a drawing (SVG, PNG or JPEG), or a job or vessel that was saved. A list of names goes into step 5, a font to its text in step 2, a film, sheet or cutter with the job that names it';

/** Files of one name in folders apart would be one file here. @throws Refused */
function refuseTwins(job: string, paths: readonly string[]): void {
  const all = [...new Set(paths)];
  const twin = all.find((path, i) => all.slice(0, i).some((other) => baseName(other) === baseName(path)));
  if (twin !== undefined)
    throw refused(job, `names two files called ${baseName(twin)} in folders apart; give one another name`);
}

const unitsIn = (value: unknown, otherwise: Units): Units => {
  const units = isObject(value) ? value.units : undefined;
  return units === 'mm' || units === 'in' ? units : otherwise;
};

function withJob(before: Bench, name: string, value: unknown): Bench {
  if (!isObject(value)) return before;
  const { blank } = value;
  const units = unitsIn(value, 'mm');
  const empty = emptyBench(units);
  const blankFile =
    typeof blank === 'string' ? baseName(blank) : name.replace(/(\.job)?\.json$/i, '.blank.json');
  // A blank within the job's own file lies beside it here; its bare numbers stay in the job's unit.
  const own = isObject(blank) ? { units, ...blank } : empty.blank;
  return { ...empty, jobFile: name, blankFile, job: { ...besideIt(value), blank: blankFile }, blank: own };
}

/** The drawings over a job's artwork, as typed. */
const overOf = (artwork: Json | undefined): readonly Json[] =>
  isObject(artwork) && Array.isArray(artwork.over) ? artwork.over : [];

const withOver = (artwork: Json | undefined, change: (one: Json) => Json): Json | undefined =>
  isObject(artwork) && Array.isArray(artwork.over)
    ? { ...artwork, over: overOf(artwork).map(change) }
    : artwork;

/** The fonts of its drawings' texts beside it. */
const withFonts = (artwork: Json | undefined): Json | undefined =>
  isObject(artwork) && Array.isArray(artwork.fonts)
    ? { ...artwork, fonts: artwork.fonts.map((one: Json) => (typeof one === 'string' ? baseName(one) : one)) }
    : artwork;

/** The job with every file it names beside it, as they lie on the bench: a page has no folders. */
function besideIt(job: JsonObject): JsonObject {
  const moved = (value: Json | undefined): Json | undefined =>
    isObject(value) && typeof value.file === 'string' ? { ...value, file: baseName(value.file) } : value;
  const material = (value: Json | undefined) => (typeof value === 'string' ? baseName(value) : value);
  const font = (value: Json): Json =>
    isObject(value) && typeof value.font === 'string' ? { ...value, font: baseName(value.font) } : value;
  const { artwork, items, lettering, film, sheet, cutter, printer } = job;
  const named = {
    artwork: withFonts(
      withOver(moved(artwork), (one) => (typeof one === 'string' ? baseName(one) : (moved(one) ?? one))),
    ),
    items: Array.isArray(items) ? items.map((item: Json) => moved(item) ?? item) : items,
    lettering: Array.isArray(lettering) ? lettering.map(font) : lettering,
    film: material(film),
    sheet: material(sheet),
    cutter: material(cutter),
    printer: material(printer),
  };
  const there = Object.entries(named).filter((entry): entry is [string, Json] => entry[1] !== undefined);
  return { ...job, ...Object.fromEntries(there) };
}

function withBlank(before: Bench, name: string, value: unknown, isNew: boolean): Bench {
  if (!isObject(value) || (isNew && name !== before.blankFile)) return before;
  const units = isNew ? before.units : unitsIn(value, before.units);
  return { ...before, blankFile: name, blank: value, job: { ...before.job, blank: name }, units };
}

/** What is said of one drawing alone, and is wrong of any other: its size, its repeat and its colours. */
const ofDrawing: ReadonlySet<string> = new Set([
  'across',
  'repeat',
  'around',
  'way',
  'colours',
  'ground',
] satisfies (keyof Artwork)[]);

/** What is said of artwork whatever its drawing. */
const withoutDrawing = (artwork: Json | undefined): JsonObject =>
  isObject(artwork) ? Object.fromEntries(Object.entries(artwork).filter(([key]) => !ofDrawing.has(key))) : {};

/** A drawing laid all around: what was said of another one alone goes. */
function withArtwork(before: Bench, name: string, bytes: Uint8Array): Bench {
  const { artwork } = before.job;
  const isKnown = isObject(artwork) && artwork.file === name;
  const kept = isKnown ? artwork : { ...withoutDrawing(artwork), file: name };
  return withFile({ ...before, job: { ...before.job, artwork: kept } }, 'artwork.file', name, bytes);
}

interface OthersOptions {
  /** Whether they come with a job. */
  readonly isNew: boolean;
  readonly use: 'artwork' | 'any';
}

/** Files that the job names, or that can be its artwork. */
function withOthers(before: Bench, given: readonly NamedBytes[], { isNew, use }: OthersOptions): Opened {
  const wanted = pathsNamed(before.job);
  const pathOf = (name: string): string | undefined =>
    use === 'artwork' && !isNew && isArtwork(name)
      ? undefined
      : wanted.find((one) => baseName(one) === baseName(name));
  const drawings = isNew ? [] : given.filter(({ name }) => isArtwork(name) && pathOf(name) === undefined);
  const [drawing, ...unused] = drawings;
  const named = given.flatMap(({ name, bytes }) => {
    const path = pathOf(name);
    return path === undefined ? [] : [[path, bytes] as const];
  });
  const withNamed = { ...before, files: { ...before.files, ...Object.fromEntries(named) } };
  const bench = drawing ? withArtwork(withNamed, baseName(drawing.name), drawing.bytes) : withNamed;
  const missing = wanted.filter((path) => !Object.hasOwn(bench.files, path));
  const says = [
    ...missing.map((path) => `${path} is named by the job, but was not opened; open it too`),
    ...unused.map(({ name }) => `${baseName(name)} ${oneAllAround}`),
  ];
  const stations = before.blank.stations;
  const isBlankMissing =
    isNew &&
    (!Array.isArray(stations) ||
      JSON.stringify(stations) === JSON.stringify(emptyBench('mm').blank.stations));
  if (isBlankMissing)
    says.unshift(`${before.blankFile} is named by the job, but was not opened; open it too`);
  return { bench, says };
}

const oneAllAround =
  'was not used: one drawing is laid all around; add another in step 2, as a motif or laid over the pattern';

/** The paths of files that a job names, its blank aside. */
function pathsNamed(job: JsonObject): readonly string[] {
  const { artwork, items, lettering } = job;
  const fontOf = (value: Json): readonly string[] =>
    isObject(value) && typeof value.font === 'string' ? [value.font] : [];
  const fileOf = (value: Json | undefined): readonly string[] =>
    isObject(value) && typeof value.file === 'string' ? [value.file] : [];
  const list = (value: Json | undefined): readonly Json[] => (Array.isArray(value) ? value : []);
  const drawingFonts = isObject(artwork) ? list(artwork.fonts) : [];
  return [
    ...fileOf(artwork),
    ...overOf(artwork).flatMap((one) => (typeof one === 'string' ? [one] : fileOf(one))),
    ...drawingFonts.flatMap((one) => (typeof one === 'string' ? [one] : [])),
    ...list(items).flatMap(fileOf),
    ...list(lettering).flatMap(fontOf),
    ...materialFiles(job).map(({ file }) => file),
  ];
}
