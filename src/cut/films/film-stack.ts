// Films that go over one another: each lower one grown or shrunk under those above, or with their shape cut from it; a white
// film under a print, and a film around it all to lay it on.
import { boxesMeet, hullBox } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { closedUp, offsetShapes } from '../../geometry/offset.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance, joinTolerance } from '../../geometry/tolerance.ts';
import type { FilmLayer } from '../checks/art-faults.ts';
import { unitedShapes } from '../checks/film-layers.ts';

/** What goes under everything and past it: how far, mm, and the radius its inner corners are rounded to. */
export interface BackingOptions {
  readonly grow: number;
  readonly smooth: number;
}

export interface FilmStackOptions {
  /** `stacked`: a lower film goes on under those above; `knocked-out`: their shape is cut from it. */
  readonly style: 'stacked' | 'knocked-out';
  /**
   * mm, by a layer's name. How far a film goes on under the edge of those above it, half as far from where they end beside it.
   * Negative: how far it stays back from its own edge under them; knocked out, the gap left at theirs.
   */
  readonly spread: (layer: string) => number;
  /** A film under all of them that stays back from the edge of what shows, mm. */
  readonly underlay?: { readonly choke: number; readonly colour: string };
  readonly backing?: BackingOptions & { readonly colour: string };
  /** Whether a backing has no holes, as one under a single motif. */
  readonly isBackingFilled: boolean;
}

/** mm²: less than this is the rounding of areas that only touch. */
const leastArea = 1e-4;

/**
 * The films of layers, from the lowest up, and under them an underlay and a backing where those are asked for. What shows of
 * the stack is what shows of the layers as they were, unless a knocked-out film is to leave a gap. Corners are kept.
 */
export function filmStack(layers: readonly FilmLayer[], options: FilmStackOptions): FilmLayer[] {
  const { style, spread, underlay, backing, isBackingFilled } = options;
  const united = layers.map((layer) => ({ ...layer, shapes: unitedShapes(layer.shapes) }));
  const films = united.map((layer, i) => {
    const above = united.slice(i + 1).flatMap(({ shapes }) => shapes);
    const by = spread(layer.name);
    const cut = style === 'stacked' ? stacked : knockedOut;
    return { ...layer, shapes: above.length === 0 ? layer.shapes : cut(layer.shapes, above, by) };
  });
  if (!underlay && !backing) return films;
  const all = unitedShapes(united.flatMap(({ shapes }) => shapes));
  return [
    ...(backing
      ? [{ name: 'backing', colour: backing.colour, shapes: backingUnder(all, backing, isBackingFilled) }]
      : []),
    ...(underlay
      ? [
          {
            name: 'underlay',
            colour: underlay.colour,
            shapes: offsetShapes(all, -underlay.choke, 'kept'),
          },
        ]
      : []),
    ...films,
  ];
}

/** What goes under shapes: grown past them, gaps and inner corners smoothed; without holes where it is to be filled. */
export function backingUnder(
  shapes: readonly Shape[],
  { grow, smooth }: BackingOptions,
  isFilled: boolean,
): Shape[] {
  const grown = offsetShapes(shapes, grow);
  const smoothed = smooth > 0 ? closedUp(grown, smooth) : grown;
  return isFilled ? smoothed.map(({ contours }) => ({ contours: contours.slice(0, 1) })) : smoothed;
}

/** How far from an edge the films made of it can reach, mm: a kept corner reaches four times as far as its sides. */
export function stackReach(
  layers: readonly string[],
  { spread, underlay, backing }: Pick<FilmStackOptions, 'spread' | 'underlay' | 'backing'>,
): number {
  const most = Math.max(underlay?.choke ?? 0, ...layers.map((name) => Math.abs(spread(name))));
  return 4 * most + (backing ? backing.grow + 2 * backing.smooth : 0);
}

/** A film under others, changed only where they lie over it. */
function stacked(shapes: readonly Shape[], above: readonly Shape[], by: number): readonly Shape[] {
  if (by === 0) return shapes;
  if (by < 0) {
    const shrunk = offsetShapes(shapes, by, 'kept');
    const bare = clippedShapes(near(above, shapes), shrunk, 'difference', chordTolerance);
    return clippedShapes(shapes, bare, 'difference', chordTolerance);
  }
  const under = clippedShapes(
    offsetShapes(shapes, by, 'kept'),
    roomUnder([...shapes, ...above], by / 2),
    'intersection',
    chordTolerance,
  );
  // Where a film above only comes near, nothing of this one shows beside it: no strip of its own is laid there.
  return unitedShapes([...shapes, ...under]).filter((shape) => lieOver([shape], near(shapes, [shape])));
}

/** Drawn edges no further apart than twice this are meant to meet, mm. */
const meeting = joinTolerance;

/** Where a film may go on under others: so far within the edge of all of them that it does not come out beside it. */
const roomUnder = (shapes: readonly Shape[], within: number): readonly Shape[] =>
  offsetShapes(offsetShapes(shapes, meeting, 'kept'), -meeting - within);

/** A film with the shape of others cut from it, but for what it goes on under their edge. */
function knockedOut(shapes: readonly Shape[], above: readonly Shape[], by: number): readonly Shape[] {
  const under = by > 0 ? stacked(shapes, above, by) : shapes;
  return clippedShapes(under, offsetShapes(above, -by, 'kept'), 'difference', chordTolerance);
}

const lieOver = (some: readonly Shape[], others: readonly Shape[]): boolean =>
  clippedShapes(some, others, 'intersection', chordTolerance).some((shape) => shapeArea(shape) > leastArea);

/** The shapes that come near any of the others. */
function near(shapes: readonly Shape[], others: readonly Shape[]): readonly Shape[] {
  const box = hullBox(others.flatMap(({ contours }) => contours));
  return shapes.filter(({ contours }) => boxesMeet(hullBox(contours), box));
}
