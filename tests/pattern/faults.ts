// What cut lines may not be: open, run the wrong way, or there twice.
import Flatbush from 'flatbush';
import type { Contour, Shape } from '../../src/geometry/contour.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { cross, distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { dense } from './a-wrap.ts';

/** What is wrong with contours as shapes; empty where nothing is. */
export function shapeFaults(shapes: readonly Shape[]): string[] {
  const faults: string[] = [];
  shapes.forEach(({ contours }, s) => {
    const [outer, ...holes] = contours;
    if (!outer) {
      faults.push(`shape ${s} has no contour`);
      return;
    }
    contours.forEach((contour, c) => {
      if (!contour.closed) faults.push(`shape ${s} contour ${c} is open`);
      contour.segments.forEach((segment, i) => {
        const next = contour.segments[(i + 1) % contour.segments.length];
        const gap = next ? distance(segment.to, next.from) : Infinity;
        if (!(gap <= 1e-9)) faults.push(`shape ${s} contour ${c} jumps ${gap} after segment ${i}`);
        const control = segment.kind === 'cubic' ? [segment.c1, segment.c2] : [];
        for (const p of [segment.from, segment.to, ...control])
          if (!Number.isFinite(p.x + p.y)) faults.push(`shape ${s} contour ${c} has no number`);
      });
    });
    const sense = Math.sign(signedArea(outer));
    const ring = dense(outer, 50);
    holes.forEach((hole, h) => {
      if (Math.sign(signedArea(hole)) !== -sense)
        faults.push(`shape ${s} hole ${h} runs as its outer contour`);
      const s0 = hole.segments[0];
      if (s0 && !isInside(pointAt(s0, 0.37), ring)) faults.push(`shape ${s} hole ${h} is outside`);
    });
  });
  return faults;
}

function isInside(p: Point, ring: readonly Point[]): boolean {
  let inside = false;
  let a = ring.at(-1);
  for (const b of ring) {
    if (a && a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
      inside = !inside;
    a = b;
  }
  return inside;
}

interface Chord {
  readonly a: Point;
  readonly b: Point;
  readonly contour: number;
  readonly index: number;
  readonly count: number;
}

/** Length of line that is cut twice, mm: chords of 0.2 mm that lie within 0.001 mm along another that is no neighbour. */
export function doubledLength(contours: readonly Contour[]): number {
  const chords: Chord[] = contours.flatMap((contour, c) => {
    const points = contour.segments.flatMap((s) => {
      const count = Math.max(s.kind === 'cubic' ? 4 : 1, Math.ceil(distance(s.from, s.to) / 0.2));
      return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
    });
    return points.map((a, index) => ({
      a,
      b: points[(index + 1) % points.length] ?? a,
      contour: c,
      index,
      count: points.length,
    }));
  });
  if (chords.length === 0) return 0;
  const boxes = new Flatbush(chords.length);
  for (const { a, b } of chords)
    boxes.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
  boxes.finish();
  const near = 1e-3;
  const isOn = ({ a, b }: Chord, p: Point): boolean => {
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const long = Math.hypot(dx, dy);
    if (long === 0) return false;
    const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / long;
    return t > -near && t < long + near && Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / long < near;
  };
  let doubled = 0;
  for (const chord of chords) {
    const { a, b, contour, index, count } = chord;
    const long = distance(a, b);
    if (long < 1e-6) continue;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const hits = boxes
      .search(middle.x - near, middle.y - near, middle.x + near, middle.y + near)
      .flatMap((i) => chords[i] ?? [])
      .filter((other) => {
        const apart = Math.abs(other.index - index);
        const isNeighbour = other.contour === contour && Math.min(apart, count - apart) <= 2;
        const along = Math.abs(
          cross({ x: b.x - a.x, y: b.y - a.y }, { x: other.b.x - other.a.x, y: other.b.y - other.a.y }),
        );
        const isParallel = along < 0.05 * long * distance(other.a, other.b);
        return !isNeighbour && isParallel && isOn(other, middle);
      });
    if (hits.length > 0) doubled += long;
  }
  return doubled;
}
