// Motifs moved whole that would lie on one another.
import { moveContour } from '../../geometry/affine.ts';
import { hullBox, movedBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { chorded } from '../../geometry/chords.ts';
import { chordTolerance, joinTolerance } from '../../geometry/tolerance.ts';
import { turnMotion, type WallPoint } from '../../unroll/flat-wall.ts';
import { ChordedEdge, edgesApart } from '../lay/contour-touch.ts';
import type { Lay } from '../lay/lay.ts';
import type { PlacedMotif } from '../lay/lay-motifs.ts';

/** A motif moved whole: which of the drawn ones it is, and where on the wall its middle stands. */
export interface StandingMotif extends PlacedMotif {
  readonly drawn: number;
  readonly at: WallPoint;
}

/** Two motifs whose edges touch or cross, or of which one lies in the other's film: which two of those drawn, where their middles stand, and how often that comes again all around. */
export interface Collision {
  readonly drawn: readonly [number, number];
  readonly one: WallPoint;
  readonly other: WallPoint;
  readonly times: number;
}

const still = { x: 0, y: 0 };

/** A motif's edges, layer by layer. */
type Edges = readonly (readonly ChordedEdge[])[];

/** A motif's edges on the sheet, so many periods further around. */
function edgesOf({ layers }: PlacedMotif, lay: Lay, turns: number): Edges {
  const motion = turnMotion(lay.wall, turns);
  return layers.map((shapes) =>
    shapes.flatMap(({ contours }) =>
      contours.map((contour) => {
        const moved = turns === 0 ? contour : moveContour(motion, contour);
        return new ChordedEdge(chorded(moved, chordTolerance), hullBox([moved]));
      }),
    ),
  );
}

/** Motifs of one period that lie on one another, or on those of the next period. A dot may lie in a ring, and in film of another layer. */
export function collisionsOf(
  placed: readonly StandingMotif[],
  lay: Lay,
  parts: number,
): readonly Collision[] {
  const width = lay.around / parts;
  const copies = placed.flatMap((motif, of) =>
    [0, 1].map((shift) => ({ of, shift, box: movedBox(motif.box, { x: shift * width, y: 0 }) })),
  );
  const index = new BoxIndex(copies.length, (add) => {
    for (const { box } of copies) add(box.minX, box.minY, box.maxX, box.maxY);
  });
  const known = new Map<number, Edges>();
  const edges = (at: number): Edges => {
    const { of = 0, shift = 0 } = copies[at] ?? {};
    const motif = placed[of];
    const own = known.get(at) ?? (motif ? edgesOf(motif, lay, shift / parts) : []);
    known.set(at, own);
    return own;
  };
  return placed.flatMap(({ box, drawn, at: one }, i) =>
    index.meeting(box.minX, box.minY, box.maxX, box.maxY).flatMap((k): Collision[] => {
      const { of = 0, shift = 0 } = copies[k] ?? {};
      const other = placed[of];
      const isOnce = shift === 1 || of > i;
      if (!other || !isOnce || !meet(edges(2 * i), edges(k))) return [];
      const at = { ...other.at, turn: other.at.turn + shift / parts };
      return [{ drawn: [drawn, other.drawn], one, other: at, times: parts }];
    }),
  );
}

const meet = (ours: Edges, theirs: Edges): boolean =>
  touch(ours.flat(), theirs.flat()) || lieIn(ours, theirs) || lieIn(theirs, ours);

const touch = (ours: readonly ChordedEdge[], theirs: readonly ChordedEdge[]): boolean =>
  ours.some((edge) => theirs.some((other) => edgesApart(edge, other, still, joinTolerance) < Infinity));

/** Of motifs whose edges touch nowhere, whether some film of the first lies in film of the second, layer by layer. */
const lieIn = (film: Edges, within: Edges): boolean =>
  film.some((edges, layer) =>
    edges.some((edge) => {
      const at = { x: edge.x(0), y: edge.y(0) };
      return (within[layer] ?? []).filter((other) => other.holds(at)).length % 2 === 1;
    }),
  );
