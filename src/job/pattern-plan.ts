// How a job's pattern closes around its template, and what the maker should know of it.
import type { Tile } from '../artwork/tile.ts';
import { type Finding, look, note, Refused, stop } from '../finding.ts';
import { degrees } from '../lengths/angle.ts';
import { formatLength } from '../lengths/length.ts';
import { type Closing, closingOf, leanSeen, levelCount, repeatsAround, rowsUp } from '../pattern/closing.ts';
import { type Lattice, latticeOf } from '../pattern/lattice.ts';
import { conformalLay, evenLay, type Lay, type LayStart } from '../pattern/lay.ts';
import type { Mismatch } from '../pattern/wrap.ts';
import type { Template } from '../unroll/template.ts';
import type { Artwork, Job, Repeat } from './resolved-job.ts';
import { type TypedIn, typedAt } from './typed-at.ts';

export interface PatternPlan {
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly around: number;
  readonly up: number;
  readonly findings: readonly Finding[];
}

/** A change of scale past this shows on a motif, and past the second the wrong count or size was probably typed. */
const scaleSeen = 0.15;
const scaleAbsurd = 0.5;

/** The lattice of a repeat; a side left out is the tile's own. */
const latticeOfRepeat = (repeat: Repeat, tile: Tile): Lattice =>
  repeat.kind === 'lattice'
    ? { a: repeat.a, b: repeat.b }
    : latticeOf({ ...repeat, across: repeat.across ?? tile.width, up: repeat.up ?? tile.height });

/** What a pattern is fitted to: the sheet's girth at the middle of the whole band, and the band's length, mm. */
export interface PatternGround {
  readonly girth: number;
  readonly bandLength: number;
}

/** How the artwork is spread over one piece. */
export const layOn = (artwork: Artwork, { wall, band }: Template, start: LayStart): Lay =>
  (artwork.lay === 'conformal' ? conformalLay : evenLay)(wall, band.from, start);

/** @throws Refused where the pattern can't go around. */
export function planPattern(
  tile: Tile,
  artwork: Artwork,
  edges: Job['edges'],
  { girth, bandLength }: PatternGround,
  file: TypedIn,
): PatternPlan {
  const lattice = latticeOfRepeat(artwork.repeat, tile);
  const closing = closingOf(lattice, {
    girth,
    bandLength,
    scale: artwork.scale,
    wholeRows: edges === 'whole-rows',
    ...(artwork.around === undefined ? {} : { around: artwork.around }),
  });
  if (!closing) throw new Refused([notAround(artwork, girth, file)]);
  return {
    lattice,
    closing,
    around: repeatsAround(closing),
    up: rowsUp(lattice, closing, bandLength),
    findings: closingFindings(lattice, closing, file),
  };
}

const notAround = (artwork: Artwork, girth: number, file: TypedIn): Finding =>
  artwork.around === undefined
    ? stop(
        'no-closing',
        typedAt(file, 'artwork.repeat'),
        `no whole number of repeats comes near the girth of ${formatLength(girth, 'mm')}; give "around", or artwork drawn smaller`,
      )
    : stop(
        'no-closing',
        typedAt(file, 'artwork.around'),
        `${artwork.around} repeats of this lattice climb the wall instead of going around it; give its first step along the girth`,
      );

function closingFindings(lattice: Lattice, closing: Closing, file: TypedIn): Finding[] {
  const found: Finding[] = [];
  const where = typedAt(file, 'artwork.around');
  const level = levelCount(lattice);
  const count = repeatsAround(closing);
  const leans = Math.abs(closing.lean) > 1e-9;
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
        `${count} around make the pattern ${(scale * 100).toFixed(0)} % of its drawn size at the middle of the band`,
      ),
    );
  return found;
}

/** What the laid pattern showed: borders where the tile does not meet its own copy. */
export function joinFindings(mismatches: readonly Mismatch[], file: string): Finding[] {
  const [first, ...rest] = [...mismatches].sort((a, b) => b.length - a.length);
  if (!first) return [];
  const others = rest.length === 0 ? '' : ` and at ${rest.length} more places`;
  return [
    look(
      'does-not-join',
      { file, turn: first.turn, along: first.along },
      `the tile does not meet its own copy: an edge of ${first.length.toFixed(2)} mm stays open along its border${others}; check the repeat, or use artwork drawn to repeat`,
    ),
  ];
}
