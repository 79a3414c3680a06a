// Items of a job: single drawings, each laid at a place of its own.
import { readTile } from '../../artwork/tile.ts';
import { motifName } from '../../drawing/motif-name.ts';
import { moveContour } from '../../geometry/affine.ts';
import { type Box, boxCorners, boxOfPoints } from '../../geometry/box.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { fontsOf } from '../artwork/drawing-fonts.ts';
import { motifFilms, orderOf } from '../artwork/layer-films.ts';
import type { MakeInput } from '../make-input.ts';
import { bytesOf } from '../typed/named-files.ts';
import { cutApart, type PlacedMotif } from '../typed/placed-motif.ts';
import type { Item } from '../typed/resolved-job.ts';

/** The motif of an item. @throws Refused where its drawing can't be cut. */
export function itemMotif(
  { job, files, tools, recall }: Pick<MakeInput, 'job' | 'files' | 'tools' | 'recall'>,
  item: Item,
  index: number,
): PlacedMotif {
  const { file, across, at, lay, clear } = item;
  const order = orderOf(job);
  const options = { across, ...order, fonts: fontsOf({ job, files, tools }) };
  const read = () => readTile(bytesOf(files, file), file, tools.normalise, options);
  const { tile, findings } = recall?.of('item', JSON.stringify([file, across, order]), read) ?? read();
  const size = { across, up: item.up ?? (across * tile.height) / tile.width };
  const [a, d] = [across / tile.width, size.up / tile.height];
  const move = { a, b: 0, c: 0, d, e: -across / 2, f: -size.up / 2 };
  const frame = boxOfPoints([
    { x: -across / 2, y: -size.up / 2 },
    { x: across / 2, y: size.up / 2 },
  ]);
  const layers = tile.layers.map((layer) => ({
    ...layer,
    shapes: within(
      frame,
      filledShapes(
        layer.shapes.flatMap(({ contours }) => contours.map((contour) => moveContour(move, contour))),
        'nonzero',
        chordTolerance,
      ),
    ),
  }));
  const films = motifFilms(layers, job.layers);
  const name = motifName('item', index);
  return {
    name,
    key: `items[${index}]`,
    says: file,
    told: { file },
    motif: { layers: named(name, films), frame },
    size,
    at,
    lay,
    isApart: cutApart(job, item.apart),
    ...(clear === undefined ? {} : { clear }),
    findings,
  };
}

/** What stands past a drawing's edges is not shown, and not cut. */
function within(frame: Box, shapes: readonly Shape[]): readonly Shape[] {
  const { minX, minY, maxX, maxY } = tightBox(shapes.flatMap(({ contours }) => contours));
  const isInside = minX >= frame.minX && minY >= frame.minY && maxX <= frame.maxX && maxY <= frame.maxY;
  return isInside
    ? shapes
    : clippedShapes(shapes, [{ contours: [polygon(boxCorners(frame))] }], 'intersection', chordTolerance);
}

/** A motif's layers by its own name; with their colours where there are several. */
const named = <L extends { readonly name: string }>(name: string, layers: readonly L[]): L[] =>
  layers.map((layer) => ({ ...layer, name: layers.length === 1 ? name : `${name} ${layer.name}` }));
