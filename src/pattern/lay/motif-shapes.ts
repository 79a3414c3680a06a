// A motif's film as areas, in the laid pattern, each layer's own.
import type { Source } from '../../geometry/chords.ts';
import { combine } from '../../geometry/combine.ts';
import type { Shape } from '../../geometry/contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { segmentsOf, toShapes } from '../../geometry/rebuild.ts';
import { chordTolerance, joinTolerance, sliverWidth } from '../../geometry/tolerance.ts';
import type { Run } from '../../geometry/traced.ts';
import { step } from '../lattice/lattice.ts';
import type { LaidPeriod } from '../tile/cell.ts';
import type { Motif } from './motifs.ts';

export interface MotifShapes {
  /** One list a layer, in the order of the layers. */
  readonly layers: readonly (readonly Shape[])[];
  /** Stretches of tile border that stayed visible: there the tile does not join itself. */
  readonly gaps: readonly { readonly layer: number; readonly at: Point; readonly length: number }[];
}

/** The motif as it stands at its own place, what overlaps or touches merged. */
export function shapesOfMotif(motif: Motif, layers: readonly LaidPeriod[]): MotifShapes {
  const drawn = layers.map((period, layer) => layerOf(motif, period, layer));
  return {
    layers: drawn.map(({ shapes }) => shapes),
    gaps: drawn.flatMap(({ gaps }) => gaps),
  };
}

function layerOf({ edges }: Motif, { contours, lattice }: LaidPeriod, layer: number) {
  const own = edges.flatMap(({ layer: of, family, i, j }) => {
    const contour = of === layer ? contours[family] : undefined;
    return contour ? [{ ...contour, by: step(lattice, i, j) }] : [];
  });
  if (own.length === 0) return { shapes: [], gaps: [] };
  const sources = own.map(({ chords, by, borders }): Source => {
    return { chords, by, isEdge: (segment) => borders.has(segment) };
  });
  const isBorder = ({ source, segment }: Run): boolean => own[source]?.borders.has(segment) === true;
  const isOpen = (run: Run): boolean => distance(run.from, run.to) >= joinTolerance;
  const merged = combine(sources, [], { operation: 'union', fill: 'nonzero', tolerance: chordTolerance });
  const joined = <T extends { readonly runs: readonly Run[] }>(ring: T): T => ({
    ...ring,
    runs: ring.runs.filter((run) => !isBorder(run) || isOpen(run)),
  });
  const regions = merged.map(({ outer, holes }) => ({ outer: joined(outer), holes: holes.map(joined) }));
  const gaps = regions
    .flatMap(({ outer, holes }) => [outer, ...holes].flatMap(({ runs }) => runs))
    .filter(isBorder)
    .map(({ from, to }) => ({ layer, at: from, length: distance(from, to) }));
  return { shapes: toShapes(regions, segmentsOf(sources), sliverWidth), gaps };
}
