// Film that ends on a picture's border: a side that was drawn there, or a cut. What the rest of the picture shows decides.
import { lineThrough } from '../../geometry/regression.ts';
import { standsOnGrid } from './picture-grid.ts';
import { apartOn, type BorderRows, followed, type RowEdge, type RowStretch } from './picture-rows.ts';

/** From one row to the next a channel changes by so much where an edge lies between them. */
const leastStep = 48;

/** Edges shorter than this, px, are corners of others. */
const shortest = 3;

/** Edges stand at one place within this, px; nearer to the end of a row they end there. */
const samePlace = 1.2;

/** An edge within this of square to a border is square to it, px a row; corners within this angle are alike, radians. */
const square = 0.06;
const alike = Math.PI / 45;

/** Slanting edges that meet across a border do so by chance with less than this likelihood where it is known to be where it was drawn. */
const mostChance = 1e-3;

/** An edge whose corners tell of others is at least so long, px. */
const telling = 8;

/**
 * The stretches of a border along which film ends as it was drawn to, px; undefined where some of it may be cut. Film was drawn up to
 * a border where the border is known to be where it was drawn (slanting edges go on across it, or all straight edges stand on one
 * grid with it), and where edges arrive at the ends of each stretch as at some edge inside. `wouldDo` says whether they would do as
 * sides: where they would not, the rest of the picture is not looked at.
 */
export function pictureSides(
  rows: BorderRows,
  wouldDo: (sides: readonly RowStretch[]) => boolean,
): readonly RowStretch[] | undefined {
  const ends = stretchesOn(rows, 0).filter((stretch) => !goesOn(rows, 0, stretch));
  if (ends.length === 0) return [];
  if (!wouldDo(ends)) return undefined;
  if (
    !(
      roundsEnd(rows, ends) ||
      metWithin.some((within) => slantsMeet(rows, within)) ||
      slantsIntoCorners(rows) ||
      cornersTouch(rows, ends) ||
      standsOnGrid(rows.view)
    )
  )
    return undefined;
  let known: readonly number[] | undefined;
  const isKnown = (at: number): boolean => {
    const corner = cornerAt(rows, 0, at);
    if (corner === 'known' || corner === 'round') return true;
    if (corner === undefined) return false;
    known ??= cornersInside(rows);
    return known.some((angle) => Math.abs(angle - corner) <= alike);
  };
  return ends.every(({ from, to }) => isKnown(from) && isKnown(to)) ? ends : undefined;
}

/** Stretches along which the row above a line is lighter than the one below it, or darker. Line k lies above row k; line 0 is the border. */
function stretchesOn({ view: { value, along } }: BorderRows, k: number): readonly RowStretch[] {
  const found: RowStretch[] = [];
  let [from, sign] = [0, 0];
  for (let i = 0; i <= along; i++) {
    const steps = i < along ? [0, 1, 2].map((c) => value(i, k, c) - value(i, k - 1, c)) : [0];
    const most = steps.reduce((best, one) => (Math.abs(one) > Math.abs(best) ? one : best));
    const now = Math.abs(most) >= leastStep ? Math.sign(most) : 0;
    if (now === sign) continue;
    if (sign !== 0 && i - from >= shortest) found.push({ from: from - 0.5, to: i - 0.5 });
    [from, sign] = [i, now];
  }
  return found;
}

/** A round that was cut ends on the border within half a pixel with this likelihood; by chance so many do with less than this. */
const roundByChance = 0.06;
const mostRoundChance = 0.12;

/** Whether rounds end on the border, more of them than a cut meets. */
function roundsEnd(rows: BorderRows, ends: readonly RowStretch[]): boolean {
  const tries = ends.flatMap(({ from, to }) => [from, to]).filter((end) => !isAtCorner(rows, end));
  const hits = tries.filter((end) => cornerAt(rows, 0, end) === 'round').length;
  return hits > 0 && atLeast(hits, tries.length, roundByChance) < mostRoundChance;
}

const isAtCorner = ({ view: { along } }: BorderRows, end: number): boolean =>
  end <= samePlace || end >= along - 1 - samePlace;

/** A round ends shallowly: its edge in the first row stands so far from where half of the pixels end, px. */
const nearRound = 5;

const isRoundAt = (rows: BorderRows, k: number, end: number): boolean =>
  ([-1, 1] as const).some((way) => {
    const row = way === 1 ? k : k - 1;
    const near = rows.edges(row).filter(({ at }) => Math.abs(at - end) <= nearRound);
    return near.some((edge) => runsInto(rows, row, way, edge));
  });

/**
 * Whether an edge ends along a line as a round does that was drawn up to it: its distance from where it ends grows with the square
 * root of that from the line. Where it was cut the root is of a distance from further off.
 */
function runsInto(rows: BorderRows, k: number, way: 1 | -1, edge: RowEdge): boolean {
  const steps = rows.stepsOf(k, way, edge, roundRows) ?? [];
  const [first = 0] = steps;
  if (Math.abs(first) < 1 || steps.some((step) => Math.sign(step) !== Math.sign(first))) return false;
  const out = [0, ...steps].map((_, n) => steps.slice(0, n).reduce((sum, step) => sum + step, 0));
  const misses = cutOff.map((off) =>
    missOf(
      out,
      out.map((_, n) => Math.sqrt(n + 0.5 + off)),
    ),
  );
  const best = Math.min(...misses);
  return misses.indexOf(best) <= drawnUpTo && best <= leastCurved * (misses.at(-1) ?? 0);
}

/** A round is followed over so many rows; that it was cut so far off the line is held against it, px, and the first two of these are none. */
const roundRows = 6;
const cutOff = [0, 0.5, 1, 2, 4, 8, 16, 64];
const drawnUpTo = 1;

/** It misses by this share of what a straight edge would miss by, or less. */
const leastCurved = 0.25;

/** What is left, in squares, of places along a straight line through them and others. */
function missOf(places: readonly number[], others: readonly number[]): number {
  const { intercept, slope } = lineThrough(others, places);
  return places.reduce((sum, at, i) => sum + (at - intercept - slope * (others[i] ?? 0)) ** 2, 0);
}

/** The shallower an edge, the more its way changes from row to row: by this share. */
const bends = 0.25;

/** Whether a stretch is only how far a slanting edge goes on from one row to the next. */
function goesOn(rows: BorderRows, k: number, { from, to }: RowStretch): boolean {
  const pairs = [
    [from, to],
    [to, from],
  ] as const;
  return pairs.some(([above, below]) =>
    rows.edges(k - 1).some((edge) => {
      if (Math.abs(edge.at - above) > samePlace) return false;
      const slope = rows.slopeOf(k - 1, -1, edge);
      return (
        slope !== undefined &&
        Math.abs(below - above - slope) <= samePlace + bends * Math.abs(slope) &&
        rows.edges(k).some(({ at, rises }) => rises === edge.rises && Math.abs(at - below) <= samePlace)
      );
    }),
  );
}

/** Whether so many slanting edges go on across the border that it is not by chance. */
function slantsMeet(rows: BorderRows, within: number): boolean {
  const { along } = rows.view;
  const below = rows.edges(0);
  let [met, all] = [0, 0];
  for (const edge of rows.edges(-1)) {
    const slope = rows.slopeOf(-1, -1, edge);
    if (slope === undefined || Math.abs(slope) < square) continue;
    all++;
    const isMet = ({ at, rises }: RowEdge): boolean =>
      rises === edge.rises && Math.abs(apartOn(along, at, edge.at + slope)) <= within;
    if (below.some(isMet)) met++;
  }
  const chance = Math.min(1, (below.length * 2 * within) / along);
  return met > 0 && atLeast(met, all, chance) < mostChance;
}

/** Corners touch by chance with less than this likelihood, all of them. */
const mostTouchChance = 0.025;

/** Whether film that ends on the border does so where slanting edges from both sides touch by corners, light and dark changing sides. */
function cornersTouch(rows: BorderRows, ends: readonly RowStretch[]): boolean {
  const { along } = rows.view;
  const [above, below] = [rows.edges(-1), rows.edges(0)];
  const places = ends.flatMap(({ from, to }) => [from, to]).filter((end) => !isAtCorner(rows, end));
  const touches = (end: number): boolean => {
    const edge = above.find(({ at }) => Math.abs(apartOn(along, at, end)) <= samePlace);
    const slope = edge && rows.slopeOf(-1, -1, edge);
    if (!edge || slope === undefined || Math.abs(slope) < square) return false;
    return below.some(
      ({ at, rises }) => rises !== edge.rises && Math.abs(apartOn(along, at, edge.at + slope)) <= touchWithin,
    );
  };
  const chance = Math.min(1, (below.length * 2 * touchWithin) / along);
  // Stretches on both sides of one place end there both.
  const count = new Set(places.map((end) => Math.round(end / samePlace))).size;
  return count > 0 && places.every(touches) && chance ** count < mostTouchChance;
}

const touchWithin = 0.8;

/** A slanting edge runs into a corner within this, px. */
const intoCorner = 0.75;

/** Whether on both sides of a border slanting edges run into the picture's corners: a crop's hardly do on one. */
const slantsIntoCorners = (rows: BorderRows): boolean =>
  ([1, -1] as const).every((way) => {
    const row = way === 1 ? 1 : -2;
    return rows.edges(row).some((edge) => {
      const slope = rows.slopeOf(row, way, edge);
      if (slope === undefined || Math.abs(slope) < 2 * square) return false;
      return Math.abs(apartOn(rows.view.along, edge.at + 1.5 * slope, -0.5)) <= intoCorner;
    });
  });

/** Slanting edges meet within the one of these, px, or the other, where a JPEG moved them. */
const metWithin = [0.8, 1.2];

/** The likelihood of at least so many hits among so many tries. Source: the binomial distribution. */
function atLeast(hits: number, tries: number, chance: number): number {
  let [sum, ways] = [0, 1];
  for (let n = 0; n <= tries; n++) {
    if (n >= hits) sum += ways * chance ** n * (1 - chance) ** (tries - n);
    ways = (ways * (tries - n)) / (n + 1);
  }
  return sum;
}

/** How edges arrive at the end of a stretch on a line: as they always may, at an angle to it, radians, or in no way that is told. */
function cornerAt(rows: BorderRows, k: number, end: number): 'known' | 'round' | number | undefined {
  if (isAtCorner(rows, end)) return 'known';
  const near = (edges: readonly RowEdge[]) => edges.find(({ at }) => Math.abs(at - end) <= samePlace);
  const [above, below] = [near(rows.edges(k - 1)), near(rows.edges(k))];
  if (above && below) return 'known';
  if (isRoundAt(rows, k, end)) return 'round';
  const slope = above ? rows.slopeOf(k - 1, -1, above) : below && rows.slopeOf(k, 1, below);
  if (slope === undefined) return undefined;
  return Math.abs(slope) <= square ? 'known' : Math.atan2(1, Math.abs(slope));
}

/** The angles at which edges arrive at the ends of edges that lie along rows inside the picture, radians. */
function cornersInside(rows: BorderRows): readonly number[] {
  const { size } = rows.view;
  const found: number[] = [];
  for (let k = followed; k <= size - followed; k++)
    for (const { from, to } of stretchesOn(rows, k))
      for (const end of to - from >= telling && !goesOn(rows, k, { from, to }) ? [from, to] : []) {
        const corner = cornerAt(rows, k, end);
        if (typeof corner === 'number') found.push(corner);
      }
  return found;
}
