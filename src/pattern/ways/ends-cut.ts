// Which ends of a band, cut straight, go through film by a way to close.
import type { Tile } from '../../artwork/tile.ts';
import { type Box, boxCorners } from '../../geometry/box.ts';
import { tightBox } from '../../geometry/measure.ts';
import { cellArea, gcd, step } from '../lattice/lattice.ts';
import type { BandEnd } from '../lay/edge-slivers.ts';
import type { Way } from './ways.ts';

/** Where film stands in a drawing so high, mm as drawn, y down: the boxes of its shapes. */
export interface FilmBoxes {
  readonly height: number;
  readonly boxes: readonly Box[];
}

/** Film that reaches no further past an edge than this is not cut by it as far as anyone sees, mm on the wall. */
const reaches = 0.1;

/** What goes on in the tile's copies is taken as reaching so far past its border, drawn mm. */
const goesOnBy = 0.5;

/** `endsThere`: whether film at the upper and lower border ends there, in sides drawn so; else it goes on in the copies. */
export function filmBoxes({ layers, height }: Tile, endsThere: boolean): FilmBoxes {
  const boxes = layers.flatMap(({ shapes }) => shapes.map(({ contours }) => tightBox(contours)));
  const goesOn = (box: Box): Box => ({
    ...box,
    minY: box.minY < reaches ? Math.min(box.minY, -goesOnBy) : box.minY,
    maxY: box.maxY > height - reaches ? Math.max(box.maxY, height + goesOnBy) : box.maxY,
  });
  return { height, boxes: endsThere ? boxes : boxes.map(goesOn) };
}

/**
 * The ends at which a straight edge cuts film; `patternHeight` of the laid pattern lies between them, mm. Copies of what stands at one
 * height stand above it by whole multiples of one distance: the lattice's area over the once around, times what its two counts share.
 * Boxes are looked at, so that leaning film may be told as cut though it is passed by.
 */
export function endsCut(
  { kind, lattice, closing }: Pick<Way, 'kind' | 'lattice' | 'closing'>,
  { height, boxes }: FilmBoxes,
  patternHeight: number,
): readonly BandEnd[] {
  const { n, m, lean, scaleUp, foot = 0 } = closing;
  const around = step(lattice, n, m);
  const apart = (cellArea(lattice) * gcd(n, m)) / Math.hypot(around.x, around.y);
  const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
  // Above the foot edge, drawn mm, once the pattern is turned level.
  const heightsOf = (box: Box) => {
    const heights = boxCorners(box).map(({ x, y }) => sin * x + cos * (height - foot - y));
    return { from: Math.min(...heights), to: Math.max(...heights) };
  };
  // Two rows of mirrored tiles: the lower one stands on its head.
  const isMirroredUp = kind === 'mirrored' && Math.abs(lattice.b.y) > 1.5 * height;
  const standing = boxes.map(heightsOf);
  const film = isMirroredUp
    ? standing.flatMap(({ from, to }) => [
        { from: from + height, to: to + height },
        { from: height - to, to: height - from },
      ])
    : standing;
  const least = reaches / scaleUp;
  const isCut = (edge: number): boolean =>
    film.some(({ from, to }) => {
      const below = Math.ceil((edge - least - from) / apart) - 1;
      return below * apart > edge + least - to;
    });
  const at = { foot: isCut(0), lip: isCut(patternHeight / scaleUp) };
  return (['foot', 'lip'] as const).filter((end) => at[end]);
}
