// Adapter: booleans of polygons on an integer grid, by clipper2-ts (BSL-1.0).
// Chosen because it survives shared edges and identical copies, which is what a seam is made of, and runs
// without start-up both in Node and in a browser.
import {
  Clipper,
  Clipper64,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  PathType,
  type Point64,
  PolyTree64,
} from 'clipper2-ts';

/** A corner on the grid: whole numbers. */
export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

export type GridRing = readonly GridPoint[];

/** An outer ring with its holes. Outer rings run counter-clockwise with y up, holes clockwise. */
export interface GridRegion {
  readonly outer: GridRing;
  readonly holes: readonly GridRing[];
}

export type ClipOperation = 'union' | 'intersection' | 'difference';
/** `positive`: what is gone around more often counter-clockwise, with y up, than clockwise. */
export type Fill = 'nonzero' | 'evenodd' | 'positive';

const fills = {
  nonzero: FillRule.NonZero,
  evenodd: FillRule.EvenOdd,
  positive: FillRule.Positive,
} as const;

const operations = {
  union: ClipType.Union,
  intersection: ClipType.Intersection,
  difference: ClipType.Difference,
} as const;

interface TreeNode {
  readonly polygon?: readonly Point64[] | null;
  readonly count: number;
  child(index: number): unknown;
}

const children = (node: TreeNode): TreeNode[] =>
  Array.from({ length: node.count }, (_, i) => node.child(i) as TreeNode);

function collect(node: TreeNode, into: GridRegion[]): void {
  for (const outer of children(node)) {
    const holes = children(outer);
    into.push({ outer: outer.polygon ?? [], holes: holes.map((hole) => hole.polygon ?? []) });
    for (const hole of holes) collect(hole, into);
  }
}

/** Combine polygons; the rings are only read. Both sides are read by the same fill rule. */
export function clipPolygons(
  operation: ClipOperation,
  subject: readonly GridRing[],
  clip: readonly GridRing[],
  fill: Fill,
): GridRegion[] {
  const engine = new Clipper64();
  for (const ring of subject) engine.addPath(ring as Point64[], PathType.Subject);
  for (const ring of clip) engine.addPath(ring as Point64[], PathType.Clip);
  const tree = new PolyTree64();
  engine.execute(operations[operation], fills[fill], tree);
  const regions: GridRegion[] = [];
  collect(tree as unknown as TreeNode, regions);
  return regions;
}

/** Triangles that fill an outline which does not cross itself: a constrained Delaunay triangulation. */
export const triangulate = (outline: GridRing): readonly GridRing[] =>
  Clipper.triangulate([outline as Point64[]]).solution;

/** Outlines grown by a distance in grid units, their corners rounded by chords with no more than the given sagitta. */
export const grownRings = (rings: readonly GridRing[], by: number, sagitta: number): readonly GridRing[] =>
  Clipper.inflatePaths(rings as Point64[][], by, JoinType.Round, EndType.Polygon, 2, sagitta);
