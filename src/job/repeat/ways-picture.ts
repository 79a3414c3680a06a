// The contact sheet of `repeat`: every way laid on the blank as `make` would, and rolled.

import { turnedTile } from '../../artwork/tile-layer.ts';
import { Refused } from '../../finding.ts';
import { segmentCount } from '../../geometry/kept-contour.ts';
import { inPercent } from '../../lengths/percent.ts';
import { type Way, waysToClose } from '../../pattern/ways/ways.ts';
import { rolledPair } from '../../picture/rolled/rolled.ts';
import { type WayShown, waysSheet } from '../../picture/rolled/ways-sheet.ts';
import { coversOf, studyOf, wayGroundOf } from '../closing/choose-way.ts';
import { draftPieces } from '../lay/make.ts';
import { sheetsRolled } from '../pictures/rolled.ts';
import { groundOf } from '../plan/pattern-ground.ts';
import { planPieces } from '../plan/pieces.ts';
import type { JobTools } from '../tools.ts';
import type { Job, Seam } from '../typed/resolved-job.ts';
import type { RepeatDescription, RepeatInput } from './repeat.ts';

/** What rolling the ways needs beside what `repeat` read. */
export interface WaysPictureInput extends Omit<RepeatInput, 'job'> {
  readonly job: Job & RepeatInput['job'];
  readonly tools: JobTools;
  /** Told before each way is drawn. */
  readonly progress?: (number: number, total: number) => void;
}

/** Curves on the vessels of one sheet, at most: about a minute's work. */
const mostCurves = 250_000;

/** How many of the ways are drawn, the best first: of the finest art not all, for each takes long. At least one. */
export function waysDrawn(
  input: WaysPictureInput,
  { tile, ways }: Pick<RepeatDescription, 'tile' | 'ways'>,
): number {
  const { girth, bandLength } = groundOf(planPieces(input));
  const drawn = tile.layers.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours));
  const inTile = drawn.reduce((sum, contour) => sum + segmentCount(contour), 0);
  const onWall = (inTile * girth * bandLength) / (tile.width * tile.height);
  let curves = 0;
  const past = ways.findIndex(({ closing: { scaleAcross, scaleUp } }) => {
    curves += onWall / (scaleAcross * scaleUp);
    return curves > mostCurves;
  });
  return past < 0 ? ways.length : Math.max(1, past);
}

/** The text of ways.svg. */
export function waysPicture(input: WaysPictureInput, described: RepeatDescription): string {
  const { blank, art, progress } = input;
  const { report, ways } = described;
  const wanted = asItStands(input, described);
  const count = waysDrawn(input, described);
  const shown = ways.map((way, i): WayShown => {
    const isDrawn = i < count;
    if (isDrawn) progress?.(i + 1, count);
    return {
      number: i + 1,
      key: way.key,
      says: inShort(way),
      picture: isDrawn
        ? wayRolled(input, wanted, way.key)
        : { missing: 'not drawn: the art is too fine to draw all' },
      taken: way.key === report.taken,
    };
  });
  return waysSheet(
    { title: `${art.file} on ${blank.name}: the ways it can close`, ways: shown },
    input.tools.words,
  );
}

/** One way alone, from the front and at its seam: the text of an SVG, or why it can't be drawn. */
export type WayPicture = { readonly svg: string } | { readonly missing: string };

/** The picture of the way of a key. */
export function wayPicture(input: WaysPictureInput, described: RepeatDescription, key: string): WayPicture {
  const picture = wayRolled(input, asItStands(input, described), key);
  if ('missing' in picture) return picture;
  const { inside, width, height } = picture;
  const size = `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`;
  return { svg: `<svg xmlns="http://www.w3.org/2000/svg" ${size}>\n${inside}</svg>\n` };
}

type Studied = Pick<RepeatDescription, 'tile' | 'study' | 'ways'>;

const asItStands = (input: WaysPictureInput, described: RepeatDescription): Studied =>
  input.job.shown === 'upside-down' ? turnedWays(input, described) : described;

function wayRolled(input: WaysPictureInput, wanted: Studied, key: string): WayShown['picture'] {
  const way = wanted.ways.find((one) => one.key === key);
  return way ? rolledWay(input, { ...wanted, ways: [way] }) : { missing: 'not with the vessel upside down' };
}

/** The same for a vessel that stands on its lip: artwork is laid on its head. */
function turnedWays(input: WaysPictureInput, { tile: read }: RepeatDescription): Studied {
  const { job } = input;
  const tile = turnedTile(read);
  const study = studyOf(tile, job.artwork.repeat);
  const { around: _, ...free } = job.artwork;
  return {
    tile,
    study,
    ways: waysToClose(tile, study, wayGroundOf(free, job.edges, groundOf(planPieces(input)))),
  };
}

/** Strips lie where they are worked out to; a seam that winds is drawn straight, which shows the same pattern. */
const plainSeam = (seam: Seam): Seam => (seam.style === 'winding' ? { style: 'butt', overlap: 0 } : seam);

/** One way on the vessel, from the front and at its seam; or why it can't be laid. */
function rolledWay(input: WaysPictureInput, { tile, study, ways: [way] }: Studied): WayShown['picture'] {
  if (!way) return { missing: 'no such way' };
  const { job, jobFile, blank, blankFile, art, tools } = input;
  const { items: _, lettering: __, layers: ___, sheet: ____, panels: _____, ...plain } = job;
  const { around: ______, way: _______, ...free } = job.artwork;
  try {
    const drafts = draftPieces({
      job: { ...plain, seam: plainSeam(job.seam), artwork: { ...free, file: art.file } },
      jobFile,
      blank,
      blankFile,
      files: new Map(),
      chosen: {
        tile: job.shown === 'upside-down' ? turnedTile(tile) : tile,
        chosen: { way, findings: [], ...coversOf(study, way) },
      },
      unchecked: true,
      tools,
    });
    const { sheets, vessel } = sheetsRolled(drafts, blank, drafts);
    return rolledPair(sheets, vessel);
  } catch (fault) {
    if (fault instanceof Refused)
      return { missing: `make refuses it: ${fault.findings[0]?.rule.replaceAll('-', ' ') ?? ''}` };
    throw fault;
  }
}

/** Under its picture: size, rows and what it does to a motif, without what the picture shows. */
function inShort({ closing: { scaleAcross, scaleUp }, rows, distortion, kind, lay }: Way): string {
  const size =
    Math.abs(scaleAcross - scaleUp) < 5e-4
      ? `${inPercent(scaleAcross)} of the drawn ${lay === 'rigid' ? 'spacing' : 'size'}`
      : `${lay === 'rigid' ? 'spaced ' : ''}${inPercent(scaleAcross)} around, ${inPercent(scaleUp)} up`;
  const bent = distortion < 5e-4 ? 'no motif bent' : `motifs bent by up to ${inPercent(distortion)}`;
  const border = kind === 'as-drawn' ? '; borders do not meet' : '';
  return `${size}; ${rows.toFixed(1)} rows; ${bent}${border}`;
}
