// How a job's pattern closes around its template, and what the maker should know of it.
import type { Tile } from '../../artwork/tile.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { inMm } from '../../lengths/length.ts';
import { inPercent } from '../../lengths/percent.ts';
import { motifExtents } from '../../pattern/lattice/bare-rows.ts';
import {
  type Closing,
  closingOf,
  leanSeen,
  levelCount,
  repeatsAround,
  rowsUp,
} from '../../pattern/lattice/closing.ts';
import type { Lattice } from '../../pattern/lattice/lattice.ts';
import { conformalLay, evenLay, type Lay, type LayStart } from '../../pattern/lay/lay.ts';
import type { Mismatch } from '../../pattern/lay/wrap.ts';
import type { PatternTile } from '../../pattern/period/period.ts';
import type { MotifLay } from '../../pattern/rigid/motif.ts';
import type { SeamPlace } from '../../pattern/seam/seam-place.ts';
import { tileOfWay } from '../../pattern/ways/ways.ts';
import type { Template } from '../../unroll/template.ts';
import { type PatternGround, patternHeightOf } from '../plan/pattern-ground.ts';
import type { Artwork, Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import { type ChosenWay, latticeOfRepeat } from './choose-way.ts';
import type { ArtFiles } from './way-words.ts';

export interface PatternPlan {
  /** What is laid: the tile as read, or what its way makes of it. */
  readonly tile: PatternTile;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: MotifLay;
  readonly around: number;
  readonly up: number;
  /** The key of the way that was taken, where it was chosen or the tile does not join. */
  readonly way?: string;
  /** Of a way that covers borders with strips: those up the wall alone, or the level ones between rows too. */
  readonly covers?: 'sides' | 'both';
  /** Where along the drawing the seam is set so that it cuts little; left out, at its left edge or where the job says. */
  readonly seamAt?: SeamPlace;
  readonly findings: readonly Finding[];
}

/** A lean under this, half a hundredth of a degree, climbs 0.02 mm around a cup: what the file's own rounding makes of level rows. */
const leastLean = Math.PI / 36_000;

/** A change of scale past this shows on a motif, and past the second the wrong count or size was probably typed. */
const scaleSeen = 0.15;
const scaleAbsurd = 0.5;

/** How the artwork is spread over one piece; rigid motifs stand where an even lay has their middles. */
export const layOn = (artwork: Artwork, { wall, band }: Template, start: LayStart): Lay =>
  (artwork.lay === 'conformal' ? conformalLay : evenLay)(wall, band.from, start);

/** How artwork goes around: by the way chosen, else by its own steps. @throws Refused where it can't. */
export function planPattern(
  tile: Tile,
  artwork: Artwork,
  ground: PatternGround,
  files: ArtFiles,
  edges: Job['edges'],
  chosen: ChosenWay | undefined,
): PatternPlan {
  const { lay } = artwork;
  const patternHeight = patternHeightOf(lay, ground);
  if (artwork.strips && chosen?.covers === undefined) throw new Refused([stripsWithout(files.job)]);
  if (chosen?.way) {
    const { way, findings } = chosen;
    const { lattice, closing, around, rows } = way;
    const told = [...findings, ...closingFindings(lattice, closing, around, lay, files.job)];
    return {
      tile: tileOfWay(way, tile),
      lattice,
      closing,
      lay,
      around,
      up: rows,
      way: way.key,
      ...(chosen.covers === undefined ? {} : { covers: chosen.covers }),
      findings: told,
    };
  }
  const lattice = latticeOfRepeat(artwork.repeat, tile);
  const closing = closingOf(lattice, {
    girth: ground.girth,
    patternHeight,
    scale: artwork.scale,
    wholeRows: edges === 'whole-rows',
    ...(edges === 'whole-rows' ? { extents: motifExtents(tile) } : {}),
    ...(artwork.around === undefined ? {} : { around: artwork.around }),
  });
  if (!closing) throw new Refused([notAround(artwork, ground.girth, files.job)]);
  const around = repeatsAround(closing);
  return {
    tile,
    lattice,
    closing,
    lay,
    around,
    up: rowsUp(lattice, closing, patternHeight),
    findings: [...(chosen?.findings ?? []), ...closingFindings(lattice, closing, around, lay, files.job)],
  };
}

const stripsWithout = (file: TypedIn): Finding =>
  stop(
    'strips-without',
    typedAt(file, 'artwork.strips'),
    'are for a way that covers borders with strips; name one that "repeat" lists, such as "way": "strip-1", or leave them out',
  );

const notAround = (artwork: Artwork, girth: number, file: TypedIn): Finding =>
  artwork.around === undefined
    ? stop(
        'no-closing',
        typedAt(file, 'artwork.repeat'),
        `no whole number of repeats comes near the girth of ${inMm(girth)}; give "around", or artwork drawn smaller`,
      )
    : stop(
        'no-closing',
        typedAt(file, 'artwork.around'),
        `${artwork.around} repeats of this lattice climb the wall instead of going around it; give its first step along the girth`,
      );

function closingFindings(
  lattice: Lattice,
  closing: Closing,
  count: number,
  lay: MotifLay,
  file: TypedIn,
): Finding[] {
  const found: Finding[] = [];
  const where = typedAt(file, 'artwork.around');
  const level = levelCount(lattice);
  const leans = Math.abs(closing.lean) > leastLean;
  if (leans) {
    const climb = `leans by ${Math.abs(degrees(closing.lean)).toFixed(2)} degrees so that ${count} around meet`;
    const instead = level === undefined ? '' : `; it stands level when the count is a multiple of ${level}`;
    found.push(
      (Math.abs(closing.lean) > leanSeen ? look : note)('lean', where, `the pattern ${climb}${instead}`),
    );
  } else if (level !== undefined && level > 1)
    found.push(
      note(
        'level-count',
        where,
        `with this drop the count around must be ${level === 2 ? 'even' : `a multiple of ${level}`} for level rows; ${count} is`,
      ),
    );
  const scale = closing.scaleAcross;
  const change = Math.abs(Math.log(scale));
  if (change > Math.log(1 + scaleSeen))
    found.push(
      (change > Math.log(1 + scaleAbsurd) ? look : note)(
        'scale',
        where,
        lay === 'rigid'
          ? `${count} around set the motifs ${inPercent(scale, 0)} as far apart as drawn, at the middle of the band`
          : `${count} around make the pattern ${inPercent(scale, 0)} of its drawn size at the middle of the band`,
      ),
    );
  return found;
}

/** What is said where borders stay open under strips. */
export const underStrips = (file: string): Finding =>
  note(
    'under-strips',
    { file },
    'does not meet its own copy; the borders that stay open lie under the cover strips',
  );

/** What the laid pattern showed: borders where the tile does not meet its own copy. */
export function joinFindings(mismatches: readonly Mismatch[], file: string): Finding[] {
  const [first, ...rest] = [...mismatches].sort((a, b) => b.length - a.length);
  if (!first) return [];
  const others = rest.length === 0 ? '' : ` and at ${rest.length} more places`;
  return [
    look(
      'does-not-join',
      { file, turn: first.turn, along: first.along },
      `the tile does not meet its own copy: an edge of ${inMm(first.length)} stays open along its border${others}; check the repeat, or use artwork drawn to repeat`,
    ),
  ];
}
