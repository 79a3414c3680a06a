// The artwork of a job as read, and how it goes around: the same for all pieces of its band.

import { mostAreas } from '../../artwork/art-bounds.ts';
import type { StackedArt } from '../../artwork/stacked-tile.ts';
import type { Tile } from '../../artwork/tile.ts';
import { turnedTile } from '../../artwork/tile-layer.ts';
import type { Band } from '../../blank/flat-band.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { keptLayers, segmentCount } from '../../geometry/kept-contour.ts';
import { cellArea } from '../../pattern/lattice/lattice.ts';
import { chosenWay, latticeOfRepeat, saysRepeat, studyOf } from '../closing/choose-way.ts';
import { layFindings } from '../closing/lay-distortion.ts';
import { type PatternPlan, planPattern } from '../closing/pattern-plan.ts';
import type { MakeInput } from '../make-input.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import { remembered } from '../recall.ts';
import { bytesOf } from '../typed/named-files.ts';
import { collarsOn } from '../typed/resolved-collars.ts';
import type { Artwork, Job } from '../typed/resolved-job.ts';
import type { Strips } from '../typed/strips.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import { groundFindings, refuseUnknownGround } from './art-ground.ts';
import { fontsOf } from './drawing-fonts.ts';
import { drawnChecks } from './drawn-checks.ts';
import { filmFindings, orderOf, withFilms } from './layer-films.ts';
import type { MendedTile } from './mend-tile.ts';
import { limitsInArt, mendedPlan } from './mended-plan.ts';
import { readStacked } from './stacked-art.ts';
import { refuseStencil, stencilFindings, withBridges } from './stencil.ts';

export interface Drawn {
  readonly artwork: Artwork;
  readonly ground: PatternGround;
  readonly plan: PatternPlan;
  /** Of a job whose artwork is mended. */
  readonly mended?: MendedTile;
  /** Colours of the drawing, from the lowest layer up. */
  readonly colours: readonly string[];
  readonly job: Job;
  readonly jobFile: TypedIn;
  readonly findings: readonly Finding[];
}

/** Undefined where the job has no artwork. @throws Refused where it can't be read, or does not go around. */
export function readDrawn(input: MakeInput, groundOf: () => PatternGround): Drawn | undefined {
  const { job, jobFile, files, tools, chosen, recall } = input;
  refuseStencil(job, jobFile);
  const { artwork } = job;
  if (!artwork) return undefined;
  const { file } = artwork;
  const options = { ...artwork, ...orderOf(job) };
  const art = chosen
    ? { tile: chosen.tile, sheets: [], findings: [] }
    : remembered(recall, 'tile', [file, options], () => readSheets({ job, jobFile, files, tools }, artwork));
  const { tile: read, sheets, findings } = art;
  const tile = job.shown === 'upside-down' ? turnedTile(read) : read;
  const ground = groundOf();
  refuseDense(tile, artwork, jobFile);
  const named = { job: jobFile, art: file };
  const asDrawn = planPattern(
    tile,
    artwork,
    ground,
    named,
    job.edges,
    chosen?.chosen ??
      chosenWay(tile, artwork, job.edges, ground, named, (of, repeat) =>
        remembered(recall, 'study', [file, options, job.shown, repeat], () => studyOf(of, repeat)),
      ),
  );
  // A picture that is laid as drawn is traced as one that goes on, however the way was named.
  if (tile.pixels && typeof artwork.way === 'number' && asDrawn.way === wayAsDrawn)
    return readDrawn({ ...input, job: { ...job, artwork: { ...artwork, way: wayAsDrawn } } }, groundOf);
  refuseTooMany(asDrawn, jobFile);
  const { plan, mended, findings: mends } = mendedPlan(job, asDrawn, ground);
  const told = [
    ...findings,
    ...groundFindings(read, file),
    ...sheets.flatMap((sheet) => drawnChecks(sheet, read, sheet.file, limitsInArt(job, asDrawn, ground))),
    ...plan.findings,
    ...mends,
    ...layFindings(plan, ground, jobFile),
    ...filmFindings(job, plan, ground, jobFile),
    ...stencilFindings(job, jobFile),
  ];
  return {
    artwork,
    ground,
    plan: kept(withBridges(withFilms(plan, job.layers), job, ground, jobFile)),
    colours: tile.layers.map(({ colour }) => colour),
    job,
    jobFile,
    findings: told,
    ...(mended ? { mended } : {}),
  };
}

/** The plan with its tile as it lies until the pictures are drawn. */
const kept = (plan: PatternPlan): PatternPlan => ({
  ...plan,
  tile: { ...plan.tile, layers: keptLayers(plan.tile.layers) },
});

/** The way of a tile that is laid as it is, whether its borders meet or not. */
export const wayAsDrawn = 'as-drawn';

/** The drawings of a job's artwork as one tile. @throws Refused where one can't be read, or they are no tile together. */
function readSheets(
  { job, jobFile, files, tools }: Pick<MakeInput, 'job' | 'jobFile' | 'files' | 'tools'>,
  artwork: Artwork,
): StackedArt {
  const { order } = orderOf(job);
  const { over = [] } = artwork;
  const fonts = fontsOf({ job, files, tools });
  const drawings = [{ file: artwork.file }, ...over].map((sheet) => ({
    ...sheet,
    content: bytesOf(files, sheet.file),
  }));
  // Laid as drawn, a picture is followed across its borders as it goes on in its copies.
  const goesOn = artwork.way === wayAsDrawn;
  const mayStep = over.length === 0 && !saysRepeat(artwork.repeat);
  const options = { ...artwork, fonts, goesOn, mayStep, ...(order ? { order } : {}) };
  const art = readStacked(drawings, tools.normalise, options, order);
  refuseUnknownGround(artwork.ground, art, typedAt(jobFile, 'artwork.ground'));
  return art;
}

/** More curves than this in one wrap is a repeat typed far too small: a cutter would take days, and memory would run out. */
const mostSegments = 1_500_000;

/** More repeats than this are finer than a blade cuts: of a mug's wall each has less than a square mm. Common practice, no source. */
const mostRepeats = 50_000;

/** More copies than this over every place of a drawing are steps typed in the wrong unit: all of them would be merged. */
const mostOver = 400;

function refuseDense(tile: Tile, { repeat }: Artwork, file: TypedIn): void {
  if (!saysRepeat(repeat)) return;
  const over = (tile.width * tile.height) / cellArea(latticeOfRepeat(repeat, tile));
  if (!(over > mostOver)) return;
  const says = `lays ${over.toFixed(0)} copies of the drawing over every place of it; up to ${mostOver} are laid, so give larger steps, or a drawing of one repeat`;
  throw new Refused([stop('too-many-copies', typedAt(file, 'artwork.repeat'), says)]);
}

function refuseTooMany({ tile, lattice, around, up }: PatternPlan, file: TypedIn): void {
  const shapes = tile.layers.flatMap((layer) => layer.shapes);
  const drawn = shapes
    .flatMap(({ contours }) => contours)
    .reduce((sum, contour) => sum + segmentCount(contour), 0);
  // One clean period is a part of what was drawn.
  const share = tile.window ? Math.min(1, cellArea(lattice) / (tile.width * tile.height)) : 1;
  const repeats = around * Math.max(1, up);
  if (repeats > mostRepeats) {
    const says = `${around} around and ${Math.ceil(up)} rows up would be ${repeats.toFixed(0)} repeats, finer than a blade cuts; up to ${mostRepeats} are laid, so give fewer repeats, or a larger tile`;
    throw new Refused([stop('too-many-repeats', typedAt(file, 'artwork.around'), says)]);
  }
  const laid = `${around} around and ${Math.ceil(up)} rows up would be`;
  const lines = drawn * share * repeats;
  if (lines > mostSegments) {
    const says = `${laid} ${(lines / 1e6).toFixed(1)} million lines to cut; up to ${mostSegments / 1e6} million are made, so give fewer repeats, or a simpler tile`;
    throw new Refused([stop('too-many-lines', typedAt(file, 'artwork.around'), says)]);
  }
  const areas = shapes.length * share * repeats;
  if (areas <= mostAreas) return;
  const says = `${laid} ${areas.toFixed(0)} areas, which no cutter cuts in a day; up to ${mostAreas} are laid, so give fewer repeats, or a simpler tile`;
  throw new Refused([stop('too-many-areas', typedAt(file, 'artwork.around'), says)]);
}

export const layerNote = (
  layers: readonly unknown[],
  { file, over = [] }: Pick<Artwork, 'file' | 'over'>,
  isEach = false,
): Finding[] =>
  layers.length < 2
    ? []
    : [
        note(
          'layers',
          { file },
          `${over.length > 0 ? 'and the drawings over it have' : 'has'} ${layers.length} colours, each ${isEach ? 'in a cut file of its own, all with the same register marks' : 'a layer of its own in the cut file'}; cut one layer at a time, each from its own film`,
        ),
      ];

/** The job with its band, and the way its pattern closes, as they were worked out. */
export function resolvedJob(
  job: Job,
  band: Band,
  drawn: Pick<Drawn, 'artwork' | 'plan'> | undefined,
  strips?: Strips,
): Job {
  const { collars } = job;
  const whole = {
    ...job,
    band: { from: band.from, to: band.to },
    ...(collars ? { collars: collarsOn(collars, band) } : {}),
  };
  if (!drawn) return whole;
  const { way, closing } = drawn.plan;
  const { around: _, way: __, ...artwork } = drawn.artwork;
  const { start } = closing;
  // Of a picture that way also says how it is traced.
  const named = way ?? (drawn.artwork.way === wayAsDrawn ? wayAsDrawn : undefined);
  const taken = named !== undefined ? { way: named } : closing.n > 0 ? { around: closing.n } : {};
  return {
    ...whole,
    artwork: {
      ...artwork,
      ...taken,
      ...(start === undefined ? {} : { seamAt: start }),
      ...(strips ? { strips } : {}),
    },
  };
}
