// Does the film cover the band all the way round, and lap over itself by enough everywhere?
import type { Band } from '../blank/flat-band.ts';
import { precision } from '../geometry/tolerance.ts';
import type { Asked } from './asked.ts';
import { atLeast, atMost, type Check, largest } from './check.ts';
import type { ProvedPiece } from './piece.ts';
import { girthOf, type RolledPoint, rollUp } from './rolled-cone.ts';
import { samplesOn } from './samples.ts';

/** Heights looked at on each piece. */
const heights = 200;

/** From one turn to another. */
type Stretch = readonly [number, number];

/** Stretches of a piece's film at a height, by its rolled outline. */
function stretchesAt(outline: readonly RolledPoint[][], along: number): Stretch[] {
  const turns = outline
    .flatMap((points) =>
      points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length] ?? p;
        if (p.along > along === q.along > along) return [];
        return p.turn + ((q.turn - p.turn) * (along - p.along)) / (q.along - p.along);
      }),
    )
    .sort((a, b) => a - b);
  return turns.flatMap((turn, i) => (i % 2 === 0 ? [[turn, turns[i + 1] ?? turn] as const] : []));
}

/** What part of the turns from `low` to `high` no stretch covers; stretches go round, so each counts once a turn on. */
function bareTurns(stretches: readonly Stretch[], [low, high]: Stretch): number {
  const around = stretches
    .flatMap(([from, to]) => [-1, 0, 1].map((by): Stretch => [from + by, to + by]))
    .sort((a, b) => a[0] - b[0]);
  let bare = 0;
  let reached = low;
  for (const [from, to] of around) {
    if (from > reached) bare += Math.max(0, Math.min(from, high) - reached);
    reached = Math.max(reached, to);
    if (reached >= high) return bare;
  }
  return bare + high - reached;
}

interface Row {
  readonly along: number;
  readonly girth: number;
  /** The turns that are to be covered. */
  readonly wanted: Stretch;
  readonly stretches: readonly Stretch[];
}

/** A piece's film at heights close together from one end of its finished band to the other. */
function rowsOf(piece: ProvedPiece): Row[] {
  const { cone, band, beside, outline } = piece;
  const rolled = outline.map((contour) => samplesOn([contour]).map((p) => rollUp(cone, p)));
  const inside = Math.min(precision, (band.to - band.from) / 4);
  return Array.from({ length: heights + 1 }, (_, i) => {
    const along = band.from + inside + ((band.to - band.from - 2 * inside) * i) / heights;
    const girth = girthOf(cone, along);
    const side = (beside + precision) / girth;
    return {
      along,
      girth,
      wanted: beside === 0 ? [0, 1] : [side, 1 - side],
      stretches: stretchesAt(rolled, along),
    };
  });
}

/** mm up the wall between what the pieces cover and the band's ends, and between one another. */
function gapsUp(pieces: readonly ProvedPiece[], band: Band): number[] {
  const ends = pieces
    .map(({ cone, outline }) => samplesOn(outline).map((p) => rollUp(cone, p).along))
    .filter((alongs) => alongs.length > 0)
    .map((alongs) => ({ from: Math.min(...alongs), to: Math.max(...alongs) }));
  if (ends.length === 0) return [band.to - band.from];
  const between = ends.slice(1).map((end, i) => end.from - (ends[i]?.to ?? 0));
  return [(ends[0]?.from ?? 0) - band.from, band.to - (ends.at(-1)?.to ?? 0), ...between];
}

export function coverChecks(pieces: readonly ProvedPiece[], asked: Asked): Check[] {
  const rows = pieces.flatMap(rowsOf);
  const holes = [
    ...rows.map(({ stretches, wanted, girth }) => bareTurns(stretches, wanted) * girth),
    ...gapsUp(pieces, asked.band),
  ];
  const covered = atMost({
    rule: 'coverage',
    value: largest(holes),
    limit: precision,
    unit: 'mm',
    says: 'wall left bare in the finished band, at its widest',
  });
  if (asked.clear !== undefined) return [covered];
  const laps = rows.map(
    ({ stretches, girth }) => (stretches.reduce((sum, [from, to]) => sum + to - from, 0) - 1) * girth,
  );
  return [
    covered,
    atLeast(
      {
        rule: 'overlap',
        value: laps.length === 0 ? Number.NaN : Math.min(...laps),
        limit: asked.overlap,
        unit: 'mm',
        says: 'overlap at the seam, at its narrowest',
      },
      precision,
    ),
  ];
}
