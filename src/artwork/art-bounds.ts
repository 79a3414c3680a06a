// How much a drawing may hold, and in what words more is refused.
import { elementName } from '../drawing/xml.ts';
import { Refused, stop, type Where } from '../finding.ts';
import { hullBox } from '../geometry/box.ts';
import type { Contour } from '../geometry/contour.ts';
import { mostToSquareMm } from '../geometry/crowded.ts';
import { mostCrossings } from '../geometry/tangle.ts';
import type { Painted } from './covered.ts';

/**
 * mm: the reader's single-precision numbers are rounded by 6e-8 of themselves, here by 0.006 mm, less than the hundredth that is
 * cut to. Lines of hundreds of metres would also be looked at for minutes.
 */
export const farthest = 1e5;

/** mm: more edges than five kilometres no blade cuts; lines of tens of metres that lie about each other took minutes. */
export const mostEdges = 5e6;

/** More dashes than this in one file are a pattern of lines shorter than any blade can follow, or a slip. */
export const mostDashes = 20_000;

/** Most points of what is clipped, and ten times those of what clips it, each as often as it is: as many take ten seconds at most. */
export const mostClipped = 1_200_000;

/** More areas than this no cutter cuts in a day: a lift of the blade and a second of cutting each. Common practice, no source. */
export const mostAreas = 60_000;

/** More colours than this are films that nobody lays over one another: each is merged, cut and registered by itself. */
export const mostColours = 1000;

export const elementOf = ({ id }: Painted): string =>
  elementName({ name: 'path', attributes: id === undefined ? {} : { id } });

export function tooLong(item: Painted, file: string): Refused {
  const says = `has more than ${mostEdges / 1e6} km of edges, with what is painted before it; draw it smaller, or cut away what lies far outside`;
  return new Refused([stop('too-long', { file, element: elementOf(item) }, says)]);
}

export function tooMany(file: string): Refused {
  const says = `has more than ${mostAreas} areas, which no cutter cuts in a day; leave out the smallest, or unite those of one colour in your drawing program`;
  return new Refused([stop('too-many-areas', { file }, says)]);
}

export function tooColourful(file: string): Refused {
  const says = `has more than ${mostColours} colours, each of which would be a film of its own; draw it in the colours of your films`;
  return new Refused([stop('too-many-colours', { file }, says)]);
}

export function tooTangled(where: Where): Refused {
  const says = `has lines that cross more than ${mostCrossings} times, or lie over or beside each other as thickly, as a scribble or dots that overlap do; take them out, unite them in your drawing program, or give each colour a drawing of its own`;
  return new Refused([stop('too-tangled', where, says)]);
}

export function tooFine(squares: number, file: string): Refused {
  const says = `has more than ${mostToSquareMm} edges to the square mm on ${squares} of them, finer than any blade follows; give the drawing the size it is to have, or draw fewer and larger shapes there`;
  return new Refused([stop('too-fine', { file }, says)]);
}

export function tooManyClipped(item: Painted, file: string): Refused {
  const says = `is clipped by shapes of too many points, with what is clipped before it; simplify its clip path or mask, or cut it in your drawing program`;
  return new Refused([stop('too-many-clipped', { file, element: elementOf(item) }, says)]);
}

export function tooManyDashes(item: Painted, file: string): Refused {
  const says = `is dashed into more than ${mostDashes} pieces, with those before it; make its dashes longer, or draw it solid`;
  return new Refused([stop('too-many-dashes', { file, element: elementOf(item) }, says)]);
}

/** Shapes may reach far past the tile, but not so far that rounding shows inside it. */
export function refuseOutOfRange(item: Painted, contours: readonly Contour[], file: string): void {
  const { minX, minY, maxX, maxY } = hullBox(contours);
  if (contours.length === 0 || [minX, minY, maxX, maxY].every((n) => Math.abs(n) <= farthest)) return;
  throw outOfRange(item, file);
}

export function outOfRange(item: Painted, file: string): Refused {
  const says = `reaches more than ${farthest / 1e3} m away; draw it smaller`;
  return new Refused([stop('out-of-range', { file, element: elementOf(item) }, says)]);
}
