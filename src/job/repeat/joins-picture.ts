// The picture of a tile among its own copies: where its borders do not meet, the worst numbered first, and by how much.
import type { DrawWords } from '../../drawing/words.ts';
import { type Box, boxCorners, boxesMeet, grow, liesIn } from '../../geometry/box.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { inMm, type Units } from '../../lengths/length.ts';
import { stepsIn } from '../../pattern/lattice/lattice.ts';
import { inspectedPicture } from '../../picture/inspected.ts';
import { drawnLength, metInWords, openInWords } from '../closing/way-words.ts';
import type { RepeatDescription } from './repeat.ts';

/** How much of its copies is seen around a tile, as a share of its longer side. */
const seenShare = 0.2;

/** What lies past the tile's frame by more than this share of its longer side is never seen. */
const pastFrame = 0.01;

/** Shapes as far as a frame shows them: a stroke far past it would be drawn in full in every copy, and takes minutes. */
const shownIn = (shapes: readonly Shape[], frame: Box): readonly Shape[] =>
  shapes.flatMap((shape) => {
    const box = tightBox(shape.contours);
    if (!boxesMeet(box, frame)) return [];
    if (liesIn(box, frame)) return [shape];
    return clippedShapes(
      [shape],
      [{ contours: [polygon(boxCorners(frame))] }],
      'intersection',
      chordTolerance,
    );
  });

/** The text of joins.svg. */
export function joinsPicture(
  { tile, study }: Pick<RepeatDescription, 'tile' | 'study'>,
  file: string,
  words: DrawWords,
  units: Units,
): string {
  const { width, height, layers } = tile;
  const { borders, lattice, jump } = study;
  const seen = seenShare * Math.max(width, height);
  const frame = grow({ minX: 0, minY: 0, maxX: width, maxY: height }, pastFrame * Math.max(width, height));
  const around = { minX: -width - seen, maxX: width + seen, minY: -height - seen, maxY: height + seen };
  const open = borders.open.map((stretch) => ({
    at: stretch.at,
    rule: 'does-not-meet',
    says: `${placeInWords(stretch.at)}: ${openInWords(stretch)}`,
  }));
  const bends = borders.kinks.map(({ at, layer, angle }) => ({
    at,
    rule: 'bends',
    says: `${placeInWords(at)}: an edge of ${layer} goes on ${degrees(angle).toFixed(1)}° off its direction`,
  }));
  const met = borders.open.length === 0 ? [metInWords(study)] : [];
  const jumps =
    jump === undefined ? [] : [`its borders meet, but its spacing jumps there by ${drawnLength(jump)}`];
  return inspectedPicture(
    {
      title: `${file} among its own copies: ${study.joins ? 'it joins' : 'it does not join'}`,
      width,
      height,
      layers: layers.map(({ colour, shapes }) => ({ colour, shapes: shownIn(shapes, frame), strong: true })),
      lines: [],
      marks: [...open, ...bends].map((mark, i) => ({ ...mark, number: i + 1 })),
      notes: [...met, ...jumps],
      copies: { steps: stepsIn(lattice, around).flatMap(({ i, j, at }) => (i || j ? [at] : [])), seen },
    },
    words,
    units,
  );
}

const placeInWords = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `${inMm(x)} across, ${inMm(y)} down`;
