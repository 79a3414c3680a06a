// Motifs moved whole that would lie on one another.
import { moveContour } from '../geometry/affine.ts';
import { hullBox, movedBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import { chorded } from '../geometry/chords.ts';
import { chordTolerance, joinTolerance } from '../geometry/tolerance.ts';
import { turnMotion } from '../unroll/flat-wall.ts';
import { ChordedEdge, edgesApart } from './contour-touch.ts';
import type { Lay } from './lay.ts';
import type { PlacedMotif } from './lay-motifs.ts';

/** Two motifs whose edges touch or cross, and where; counted all around. */
export interface Collision {
  readonly turn: number;
  readonly along: number;
  readonly times: number;
}

const still = { x: 0, y: 0 };

/** A motif's edges on the sheet, so many periods further around. */
function edgesOf({ layers }: PlacedMotif, lay: Lay, turns: number): readonly ChordedEdge[] {
  const motion = turnMotion(lay.wall, turns);
  return layers.flatMap((shapes) =>
    shapes.flatMap(({ contours }) =>
      contours.map((contour) => {
        const moved = turns === 0 ? contour : moveContour(motion, contour);
        return new ChordedEdge(chorded(moved, chordTolerance), hullBox([moved]));
      }),
    ),
  );
}

/** Motifs of one period that touch one another, or those of the next period. Only edges count: a dot may lie in a ring. */
export function collisionsOf(placed: readonly PlacedMotif[], lay: Lay, parts: number): readonly Collision[] {
  const width = lay.around / parts;
  const copies = placed.flatMap((motif, of) =>
    [0, 1].map((shift) => ({ of, shift, box: movedBox(motif.box, { x: shift * width, y: 0 }) })),
  );
  const index = new BoxIndex(copies.length, (add) => {
    for (const { box } of copies) add(box.minX, box.minY, box.maxX, box.maxY);
  });
  const known = new Map<number, readonly ChordedEdge[]>();
  const edges = (at: number): readonly ChordedEdge[] => {
    const { of = 0, shift = 0 } = copies[at] ?? {};
    const motif = placed[of];
    const own = known.get(at) ?? (motif ? edgesOf(motif, lay, shift / parts) : []);
    known.set(at, own);
    return own;
  };
  return placed.flatMap(({ box }, i) =>
    index.meeting(box.minX, box.minY, box.maxX, box.maxY).flatMap((at): Collision[] => {
      const { of = 0, shift = 0 } = copies[at] ?? {};
      const isOnce = shift === 1 || of > i;
      if (!isOnce || !touch(edges(2 * i), edges(at))) return [];
      const turn = (box.minX + box.maxX) / 2 / lay.around;
      const along = lay.toAlong((box.minY + box.maxY) / 2);
      return [{ turn: turn - Math.floor(turn), along, times: parts }];
    }),
  );
}

const touch = (ours: readonly ChordedEdge[], theirs: readonly ChordedEdge[]): boolean =>
  ours.some((edge) => theirs.some((other) => edgesApart(edge, other, still, joinTolerance) < Infinity));
