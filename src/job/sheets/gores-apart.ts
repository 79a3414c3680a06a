// The gores of one cut file as pieces of their own: they are laid on sheets apart, closer than they are drawn.
import { readSvg } from '../../deliver/read-svg.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import type { Drawing, DrawnGroup } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/box.ts';
import { tightBox } from '../../geometry/measure.ts';
import { ownersByOutline } from '../../prove/written/gore-pieces.ts';
import type { PieceToNest } from './films-to-cut.ts';

/** The art of each gore: what lies nearest to its outline. */
export function ownedArt(drawing: Drawing, boxes: readonly Box[]): (gore: number) => Drawing {
  const owner = ownersByOutline(boxes);
  const groups = drawing.groups.filter(({ role }) => role === 'artwork');
  const owners = groups.map(({ paths }) => paths.map(({ contours }) => owner(contours)));
  return (gore) => ({
    ...drawing,
    groups: groups.map(
      (group, i): DrawnGroup => ({
        ...group,
        paths: group.paths.filter((_, path) => owners[i]?.[path] === gore),
      }),
    ),
  });
}

/** Each gore of a cut file by the id of its outline, `gore-1` and so on, as it stands in that file. */
export function goresApart(cut: string): readonly PieceToNest[] {
  const drawing = readSvg(cut, 'wrap.cut.svg');
  const outlines = drawing.groups
    .filter(({ role }) => role === 'outline')
    .flatMap(({ paths }) => paths)
    .filter(({ id }) => id !== undefined);
  const art = ownedArt(
    drawing,
    outlines.map(({ contours }) => tightBox(contours)),
  );
  return outlines.map((path, i) => {
    const { id = '' } = path;
    const own = art(i);
    const groups = [...own.groups, { role: 'outline' as const, paths: [path] }];
    return {
      stem: id,
      cut: writeSvg({ ...own, groups }, { title: id, filled: false, asRead: true }),
      turned: 0,
    };
  });
}
