// Artwork mended: every layer of it, each kind of mend told, and how far an edge moved at most.
import { edgeLines, type FilmLayer } from '../../cut/checks/art-faults.ts';
import { maskLayer, unitedLayer, unitedShapes } from '../../cut/checks/film-layers.ts';
import { type JoinedOutline, joinedOutlines } from '../../cut/checks/join-lines.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import { mendFilm } from '../../cut/mend/mend.ts';
import type { Mend, MendKind } from '../../cut/mend/mend-moves.ts';
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { type Finding, note, type Where } from '../../finding.ts';
import { boxCorners, hullBox } from '../../geometry/box.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { most } from '../../geometry/extremes.ts';
import type { Point } from '../../geometry/point.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { inMm } from '../../lengths/length.ts';
import type { FilmUse } from './fault-words.ts';

export interface ArtToMend {
  readonly width: number;
  readonly height: number;
  /** Merged areas. */
  readonly layers: readonly FilmLayer[];
}

/** Something mended in a layer. */
export type LayerMend = Omit<Mend, 'kind'> & {
  readonly kind: MendKind | 'outline-joined';
  readonly layer: string;
};

export interface MendedArt {
  readonly layers: readonly FilmLayer[];
  readonly mends: readonly LayerMend[];
}

export interface JoinedArt extends MendedArt {
  /** Lines that stayed as they were. */
  readonly left: readonly DrawnLine[];
}

/** Ends farther apart than this are not taken for one broken outline, mm. Common practice, no source. */
const joinReach = 1;

/** Broken outlines closed and filled, in place of what their pieces filled by themselves. */
export function joinArt(art: ArtToMend, lines: readonly DrawnLine[], limits: CutLimits): JoinedArt {
  const joined = joinedOutlines(edgeLines(lines, limits), joinReach);
  const colours = [
    ...new Set([...art.layers.map(({ name }) => name), ...joined.map(({ colour }) => colour)]),
  ];
  const layers = colours.map((name): FilmLayer => {
    const layer = art.layers.find((one) => one.name === name) ?? { name, colour: name, shapes: [] };
    const own = joined.filter(({ colour }) => colour === name);
    return own.length === 0 ? layer : { ...layer, shapes: withOutlines(layer.shapes, own) };
  });
  const mends = joined.map(
    ({ colour, at, gap }): LayerMend => ({ kind: 'outline-joined', at, size: gap, moved: 0, layer: colour }),
  );
  const used = new Set(joined.flatMap(({ pieces }) => pieces));
  return { layers, mends, left: lines.filter(({ contours }) => !contours.every((one) => used.has(one))) };
}

function withOutlines(shapes: readonly Shape[], joined: readonly JoinedOutline[]): Shape[] {
  const drawn = filledShapes(
    joined.flatMap(({ pieces }) => pieces),
    'nonzero',
    chordTolerance,
  );
  const whole = filledShapes(
    joined.map(({ outline }) => outline),
    'evenodd',
    chordTolerance,
  );
  const rest = drawn.length === 0 ? shapes : clippedShapes(shapes, drawn, 'difference', chordTolerance);
  return unitedShapes([...rest, ...whole]);
}

/** Every layer mended; of a mask, what lies around the areas is. */
export function mendArt(art: ArtToMend, limits: CutLimits, use: FilmUse): MendedArt {
  const mended = art.layers.map((layer) => {
    if (use === 'decal') return { layer, ...mendFilm(layer.shapes, limits) };
    const mask = mendFilm(maskLayer(layer, art).shapes, limits);
    return { layer, mends: mask.mends, shapes: bareOf(mask.shapes) };
  });
  return {
    layers: mended.map(({ layer, shapes }) => unitedLayer({ ...layer, shapes })),
    mends: mended.flatMap(({ layer, mends }) => mends.map((mend) => ({ ...mend, layer: layer.name }))),
  };
}

/** What a mask leaves bare within its own border. */
function bareOf(mask: readonly Shape[]): Shape[] {
  const sheet = polygon(boxCorners(hullBox(mask.flatMap(({ contours }) => contours))));
  return clippedShapes([{ contours: [sheet] }], mask, 'difference', chordTolerance);
}

/** The farthest that any edge was moved, mm; what was dropped or joined counts as none. */
export const largestMove = (mends: readonly LayerMend[]): number =>
  most(
    mends.map(({ moved }) => moved),
    0,
  );

const kinds = ['outline-joined', 'thickened', 'gap-closed', 'point-rounded', 'speck-dropped'] as const;

/** What was mended: a note a kind and layer, with its largest one's place and all the places there are. */
export interface MendNote {
  readonly finding: Finding;
  readonly places: readonly Point[];
}

/** `where`: the place of a point of the art as findings tell it. */
export function mendNotes(
  mends: readonly LayerMend[],
  limits: CutLimits,
  where: (p: Point) => Where,
): MendNote[] {
  const layers = [...new Set(mends.map(({ layer }) => layer))];
  return layers.flatMap((layer) =>
    kinds.flatMap((kind) => {
      const own = mends.filter((mend) => mend.kind === kind && mend.layer === layer);
      const [first] = own.sort((a, b) => b.size - a.size);
      if (!first) return [];
      const says = mendWords(kind, own.length, first.size, limits);
      const finding = { ...note(kind, where(first.at), says), size: first.size, times: own.length, layer };
      return [{ finding, places: own.map(({ at }) => at) }];
    }),
  );
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

function mendWords(kind: LayerMend['kind'], count: number, size: number, limits: CutLimits): string {
  switch (kind) {
    case 'outline-joined':
      return `mended: ${counted(count, 'broken outline', 'broken outlines')} closed and filled, across ${inMm(size)} at most`;
    case 'thickened':
      return `mended: film thinner than ${inMm(limits.minWidth)} at ${counted(count, 'place', 'places')} thickened to it; an edge moved by ${inMm(size)} at most`;
    case 'gap-closed':
      return `mended: ${counted(count, 'gap', 'gaps')} under ${inMm(limits.minGap)} closed, the widest ${inMm(2 * size)}; where parts are to stay apart, draw them farther apart`;
    case 'point-rounded':
      return `mended: ${counted(count, 'point', 'points')} under ${degrees(limits.minAngle).toFixed(0)} degrees cut back to a round end, by ${inMm(size)} at most`;
    case 'speck-dropped':
      return `mended: ${counted(count, 'piece', 'pieces')} under ${Number(limits.minPiece.toFixed(2))} mm² dropped, the largest ${size.toFixed(2)} mm²; draw larger what is to stay`;
  }
}
