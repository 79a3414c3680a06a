// Delivered gores put on their wall: read, told apart, each laid in the frame of its own middle line.
import { type Affine, moveContour } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { type DeliveredFile, groupsIn } from './delivered-file.ts';
import { asIs, frameOf, type ProvedLayer, Reading, type ReadPiece, straightLine } from './piece.ts';

/** A gore in the frame of its middle line: x to its right, y up it from the foot end of the finished band. */
export interface ProvedGore {
  /** In the order of their turns, from 1. */
  readonly number: number;
  readonly outline: readonly Contour[];
  readonly layers: readonly ProvedLayer[];
  /** Length of the drawn middle line, mm. */
  readonly middle: number;
  readonly place: Affine;
}

export interface ProvedGores {
  /** The files as they are, in their own numbers. */
  readonly sheet: ReadPiece;
  readonly gores: readonly ProvedGore[];
  /** Around each gore's outline, in the files' numbers. */
  readonly boxes: readonly Box[];
}

/** Which gore art belongs to: the one whose outline it is nearest to from side to side, for gores lie apart. */
export const ownersByOutline =
  (boxes: readonly Box[]) =>
  (shape: readonly Contour[]): number => {
    const { minX, maxX } = tightBox(shape);
    const away = boxes.map((box) => Math.max(box.minX - maxX, minX - box.maxX));
    return away.indexOf(Math.min(...away));
  };

/** The gores of two files, as many as have a middle line on the guide and an outline in the cut file. */
export function readGores(cut: DeliveredFile, guide: DeliveredFile, count: number): ProvedGores {
  const reading = new Reading();
  const outlines = groupsIn(cut, 'outline').flatMap(({ paths }) =>
    paths.flatMap(({ id, data }) => [{ id, contours: reading.path(cut, data, asIs) }]),
  );
  const layers = groupsIn(cut, 'artwork').map((group, i) => ({
    name: group.layer ?? `layer ${i + 1}`,
    shapes: group.paths.map(({ data }) => reading.path(cut, data, asIs)),
  }));
  const sheet: ReadPiece = {
    cut,
    guide,
    place: asIs,
    outline: outlines.flatMap(({ contours }) => contours),
    layers,
    faults: reading.faults,
  };
  const found = Array.from({ length: count }, (_, i) => {
    const outline = outlines.find(({ id }) => id === `gore-${i + 1}`)?.contours ?? [];
    const line = straightLine(guide, `gore-${i + 1}-middle`, 'register');
    return outline.length === 0 || !line ? [] : [{ number: i + 1, outline, line }];
  }).flat();
  const boxes = found.map(({ outline }) => tightBox(outline));
  const ownerOf = ownersByOutline(boxes);
  const owners = layers.map(({ shapes }) => shapes.map(ownerOf));
  const gores = found.map(({ number, outline, line }, i): ProvedGore => {
    const place = frameOf(line);
    const moved = (contours: readonly Contour[]) => contours.map((contour) => moveContour(place, contour));
    return {
      number,
      place,
      middle: Math.hypot(line[1].x - line[0].x, line[1].y - line[0].y),
      outline: moved(outline),
      layers: layers.map(({ name, shapes }, layer) => ({
        name,
        shapes: shapes.filter((_, shape) => owners[layer]?.[shape] === i).map(moved),
      })),
    };
  });
  return { sheet, gores, boxes };
}

/** Each gore of a cut file as a file of its own, by the id of its outline: sheets hold gores apart. */
export function goresByName({
  sheet: { cut, layers },
  boxes,
}: ProvedGores): ReadonlyMap<string, DeliveredFile> {
  const ownerOf = ownersByOutline(boxes);
  const art = groupsIn(cut, 'artwork');
  const owners = layers.map(({ shapes }) => shapes.map(ownerOf));
  return new Map(
    boxes.map((_, i) => {
      const id = `gore-${i + 1}`;
      const outline = groupsIn(cut, 'outline').map((group) => ({
        ...group,
        paths: group.paths.filter((path) => path.id === id),
      }));
      const own = art.map((group, layer) => ({
        ...group,
        paths: group.paths.filter((__, shape) => owners[layer]?.[shape] === i),
      }));
      return [id, { ...cut, groups: [...own.filter(({ paths }) => paths.length > 0), ...outline] }] as const;
    }),
  );
}
