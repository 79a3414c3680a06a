// The ground that bought artwork stands on: a colour behind the pattern that is no film of its own.
import type { StackedArt } from '../../artwork/stacked-tile.ts';
import type { Tile, TileLayer } from '../../artwork/tile.ts';
import { type Finding, note, refuseIfAny, stop, type Where } from '../../finding.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { shown } from '../../lengths/shown.ts';

/** @throws Refused, as said `at`, where a colour is named as the ground that none of the drawings has. */
export function refuseUnknownGround(
  named: readonly string[] = [],
  { tile, grounds }: Pick<StackedArt, 'tile' | 'grounds'>,
  at: Where,
): void {
  const known = [...tile.layers.map(({ colour }) => colour), ...grounds].map(shown).join(', ');
  const unknown = named.filter((colour) => !grounds.includes(colour));
  refuseIfAny(
    unknown.map((colour) =>
      stop('no-such-layer', at, `${shown(colour)} is no colour of the artwork, which has ${known}`),
    ),
  );
}

/** A colour may be the ground where it is so much of the tile, and so much of the rim of it, as shares. */
const leastOfTile = 0.35;
const leastOfRim = 0.6;

/** The rim: this share of the tile's width and height along each border. */
const rimShare = 0.01;

/** What to know of art with a colour, beside others, that may be only what the pattern stands on. */
export function groundFindings(tile: Tile, file: string): readonly Finding[] {
  const layer = tile.layers.length > 1 ? tile.layers.find((one) => isGroundLike(tile, one)) : undefined;
  if (!layer) return [];
  const name = shown(layer.colour);
  const says = `has ${name} from border to border, which is cut as a film of its own; if it is only the ground that the pattern stands on, "ground": ${name} leaves it out`;
  return [note('ground', { file }, says)];
}

const areaOf = (shapes: readonly Shape[]): number => shapes.reduce((sum, one) => sum + shapeArea(one), 0);

function isGroundLike(tile: Tile, { shapes }: TileLayer): boolean {
  const { width, height } = tile;
  if (areaOf(shapes) < leastOfTile * width * height) return false;
  const rim = rimOf(tile);
  return areaOf(clippedShapes(shapes, rim, 'intersection', chordTolerance)) > leastOfRim * areaOf(rim);
}

function rimOf({ width, height }: Tile): Shape[] {
  const [x, y] = [rimShare * width, rimShare * height];
  const box = (left: number, top: number, right: number, bottom: number): Shape => ({
    contours: [
      polygon([
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ]),
    ],
  });
  return [
    box(0, 0, width, y),
    box(0, height - y, width, height),
    box(0, y, x, height - y),
    box(width - x, y, width, height - y),
  ];
}
