// Which films the layers of art in a cut file are cut from: one a colour.
import type { Drawing, DrawnGroup } from '../../drawing/drawing.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

/** Each layer's film, by its colour. Layers of a piece that lie on one another are two films, though of one colour. */
export function filmsOfArt(
  art: readonly DrawnGroup[],
): readonly { readonly film: string; readonly group: DrawnGroup }[] {
  const films: { film: string; group: DrawnGroup }[] = [];
  for (const group of art) {
    const { colour = '' } = group;
    const isTaken = (film: string) => films.some((one) => one.film === film && lieOver(one.group, group));
    let film = colour;
    for (let i = 2; isTaken(film); i++) film = `${colour} (${i})`;
    films.push({ film, group });
  }
  return films;
}

/** mm²: less than this is the rounding of areas that only touch. */
const leastOver = 0.01;

const lieOver = ({ paths: one }: DrawnGroup, { paths: other }: DrawnGroup): boolean =>
  clippedShapes(one, other, 'intersection', chordTolerance).reduce(
    (sum, shape) => sum + shapeArea(shape),
    0,
  ) > leastOver;

/** The layers of art that a cut file holds. */
export const artOf = ({ groups }: Drawing): DrawnGroup[] =>
  groups.filter(({ role, paths }) => role === 'artwork' && paths.length > 0);
