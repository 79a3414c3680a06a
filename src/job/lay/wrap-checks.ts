// The checks before the blade on a wrap as it will be cut: one finding for what is the same in every repeat.
import type { FilmLayer } from '../../cut/checks/art-faults.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import type { WrapFilm } from '../../cut/checks/period-film.ts';
import { isFinished, wrapFaults } from '../../cut/checks/wrap-faults.ts';
import type { Finding, Where } from '../../finding.ts';
import type { Point } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import { ArtGroups } from '../../pattern/lay/art-groups.ts';
import { artPlace, type LaidArt } from '../../pattern/lay/art-place.ts';
import { girthAt, type WallPoint } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import { drawnFinding, type FilmUse, filmFinding } from '../artwork/fault-words.ts';

export interface WrapCheckInput {
  readonly wrap: WrapFilm;
  readonly art: LaidArt;
  readonly limits: CutLimits;
  readonly use: FilmUse;
  /** From a height on the sheet to the bare wall's. */
  readonly toBare: (on: number) => number;
  /** Where a place lies in the cut file that has it. */
  readonly inFile: (at: WallPoint) => InFile;
  readonly artFile: string;
  /** Whether a place of the wall lies under a cover strip: what is there is seen no more, and not told. */
  readonly isCovered: (at: WallPoint) => boolean;
}

/** A place in a file, mm. */
export interface InFile extends Point {
  readonly file: string;
}

/** A finding with all its places, mm on the sheet; the first is the one it tells. */
export interface WrapCheck {
  readonly finding: Finding;
  readonly places: readonly WallPoint[];
}

/** A piece whole, and what was found on it. */
export interface PieceChecks {
  readonly template: Template;
  readonly layers: readonly FilmLayer[];
  readonly found: readonly WrapCheck[];
}

/** Faults of one kind nearer than this to one another in the drawing are one, seen in several rows, mm drawn. */
const samePlace = 1.5;

/** Places on the wall nearer than this are one, found from both sides of a period's border, mm. */
const sameOnWall = 0.5;

/** Something found at a place, before its copies are counted. */
interface Found {
  readonly at: WallPoint;
  /** Of one kind: only these are put together. */
  readonly key: string;
  readonly size: number;
  readonly tell: (where: Where) => Finding;
}

export function wrapChecks(input: WrapCheckInput): WrapCheck[] {
  const { wrap, limits, use, artFile } = input;
  const { film, edges } = wrapFaults(wrap, limits, use);
  const found: Found[] = [
    ...film.map(({ fault, at }) => ({
      at,
      key: `${fault.rule} ${fault.layer}`,
      size: fault.size,
      tell: (where: Where) => filmFinding(fault, where, limits, use),
    })),
    ...edges.map(({ fault, at }) => ({
      at,
      key: `${fault.rule} ${fault.line.colour} ${fault.other?.colour}`,
      size: -fault.size,
      tell: (where: Where) => drawnFinding(fault, where, limits),
    })),
  ];
  // Only what is of one kind is put together; the worst of each group first, and groups by that.
  const kinds = new Map<string, ArtGroups<Found>>();
  for (const one of found.sort((p, q) => p.size - q.size)) {
    const groups = kinds.get(one.key) ?? new ArtGroups<Found>(input.art.lattice, samePlace);
    kinds.set(one.key, groups);
    groups.add(artPlace(input.art, one.at), one);
  }
  const order = new Map(found.map((one, i) => [one, i]));
  const groups = [...kinds.values()].flatMap(({ all }) => all);
  const first = (group: readonly Found[]): number => (group[0] ? (order.get(group[0]) ?? 0) : 0);
  groups.sort((p, q) => first(p) - first(q));
  return groups.flatMap((group) => grouped(group, input, artFile));
}

/** A group as one finding: told of its worst place, with all the places it comes again at. */
function grouped(group: readonly Found[], input: WrapCheckInput, artFile: string): WrapCheck[] {
  const [worst] = group;
  if (!worst) return [];
  const places = placesOf(group, input);
  const [first] = places;
  if (!first) return [];
  const along = input.toBare(first.along);
  const finding = worst.tell({ ...input.inFile(first), turn: first.turn, along });
  const { x, y } = artPlace(input.art, worst.at);
  const more = places.length - 1;
  const again = more === 0 ? '' : `, and ${more} ${more === 1 ? 'place' : 'places'} more`;
  const on = `at turn ${first.turn.toFixed(3)}, ${inMm(Number(along.toFixed(1)))} along${again}`;
  const drawn = `drawn in ${artFile} at ${Number(x.toFixed(1))}, ${Number(y.toFixed(1))} mm`;
  return [
    { finding: { ...finding, says: `${finding.says} (${on}; ${drawn})`, times: places.length }, places },
  ];
}

/** Everywhere on the finished piece that has what was found in one period, the worst place first. */
function placesOf(group: readonly Found[], { wrap, isCovered }: WrapCheckInput): WallPoint[] {
  const { template, parts } = wrap;
  const own: WallPoint[] = [];
  for (const { at } of group) {
    const isKnown = own.some(({ turn, along }) => {
      const apart = (turn - at.turn) * parts;
      const around = ((apart - Math.round(apart)) / parts) * girthAt(template.wall, along);
      return Math.hypot(around, along - at.along) < sameOnWall;
    });
    if (!isKnown) own.push(at);
  }
  return own.flatMap(({ turn, along }) => {
    const first = ((turn % (1 / parts)) + 1 / parts) % (1 / parts);
    // A place on the seam itself must not be rounded past the end of the wrap: it would be one short.
    const copies = Array.from({ length: parts }, (_, k) => ({ turn: (first + k / parts) % 1, along }));
    return copies.filter((at) => isFinished(template, at) && !isCovered(at));
  });
}
