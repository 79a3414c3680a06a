// Crops of patterns whose lattice is known: what a maker buys and has cut to size.
import { moveContour, rotation } from '../../src/geometry/affine.ts';
import { boxCorners } from '../../src/geometry/box.ts';
import { type Contour, polygon, type Segment, type Shape } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import type { Point } from '../../src/geometry/point.ts';
import { clippedShapes } from '../../src/geometry/regions.ts';
import { chordTolerance } from '../../src/geometry/tolerance.ts';
import { type Lattice, step, stepsIn } from '../../src/pattern/lattice/lattice.ts';
import { blob, circle } from '../geometry/drawn.ts';

export interface CropOptions {
  readonly lattice: Lattice;
  readonly motifs: readonly Contour[];
  readonly width: number;
  readonly height: number;
  /** Where the crop's corner stands in the pattern. */
  readonly at?: Point;
  /** How far each copy may stand off its place, mm, and each node: rounding of files. */
  readonly jitter?: number;
  readonly noise?: number;
  readonly random: () => number;
  /** Whether shapes are really cut at the crop's edge, or reach past it. */
  readonly cut?: boolean;
}

/** Motifs of a period: blobs and dots of several sizes, scattered over it. */
export function motifsIn(lattice: Lattice, count: number, random: () => number): Contour[] {
  const size = Math.sqrt(Math.abs(lattice.a.x * lattice.b.y - lattice.a.y * lattice.b.x) / count) * 0.35;
  return Array.from({ length: count }, (_, i) => {
    const [u, v] = [random(), random()];
    const centre = { x: u * lattice.a.x + v * lattice.b.x, y: u * lattice.a.y + v * lattice.b.y };
    return i % 3 === 2 ? circle(centre, size * (0.5 + 0.5 * random())) : blob(random, centre, size);
  });
}

export const turnedLattice = ({ a, b }: Lattice, angle: number): Lattice => {
  const turn = (p: Point): Point => {
    const m = rotation(angle);
    return { x: m.a * p.x + m.c * p.y, y: m.b * p.x + m.d * p.y };
  };
  return { a: turn(a), b: turn(b) };
};

/** Every node and handle moved a hair, the same for a node that two segments share. */
function noisy(contour: Contour, noise: number, random: () => number): Contour {
  const hair = () => (random() - 0.5) * 2 * noise;
  const moved = contour.segments.map(({ from }) => ({ x: from.x + hair(), y: from.y + hair() }));
  const near = (p: Point): Point => ({ x: p.x + hair(), y: p.y + hair() });
  const segments = contour.segments.map((s, i): Segment => {
    const from = moved[i] ?? s.from;
    const to = moved[(i + 1) % moved.length] ?? s.to;
    return s.kind === 'line' ? { ...s, from, to } : { ...s, from, c1: near(s.c1), c2: near(s.c2), to };
  });
  return { ...contour, segments };
}

/** The shapes a crop shows. */
export function cropOf(options: CropOptions): Shape[] {
  const { lattice, motifs, width, height, at = { x: 0, y: 0 }, jitter = 0, noise = 0, random } = options;
  const shapes = motifs.flatMap((motif) => {
    const box = tightBox([motif]);
    const reach = {
      minX: at.x - box.maxX,
      minY: at.y - box.maxY,
      maxX: at.x + width - box.minX,
      maxY: at.y + height - box.minY,
    };
    return [...stepsIn(lattice, reach)].map(({ i, j }): Shape => {
      const by = step(lattice, i, j);
      const [dx, dy] = [(random() - 0.5) * 2 * jitter, (random() - 0.5) * 2 * jitter];
      const copy = moveContour({ a: 1, b: 0, c: 0, d: 1, e: by.x - at.x + dx, f: by.y - at.y + dy }, motif);
      return { contours: [noise > 0 ? noisy(copy, noise, random) : copy] };
    });
  });
  if (options.cut === false) return shapes;
  const frame = polygon(boxCorners({ minX: 0, minY: 0, maxX: width, maxY: height }));
  return shapes.flatMap((shape) =>
    clippedShapes([shape], [{ contours: [frame] }], 'intersection', chordTolerance),
  );
}
