// The reveal: the vessel with the mask on it, sprayed; and with the mask pulled and the decal laid.
import type { Blank } from '../../blank/blank.ts';
import type { DrawnGroup } from '../../drawing/drawing.ts';
import { moveContour } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { outline } from '../../unroll/template.ts';
import type { NamedFile, WrittenPiece } from '../deliverables.ts';
import type { Draft } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { laidMask } from '../parts/masks.ts';
import type { JobTools } from '../tools.ts';
import { pictureFiles } from './picture-files.ts';
import { drawRolled, rolledSubject } from './rolled.ts';

/** Both pictures; none where the job has no mask. */
export function revealPictures(
  input: MakeInput,
  drafts: readonly Draft[],
  blank: Blank,
  [written, ...parts]: readonly WrittenPiece[],
  { words, ...tools }: Pick<JobTools, 'words' | 'onWhite'>,
): NamedFile[] {
  const laid = laidMask(input, drafts);
  const [draft] = drafts;
  if (!laid || !draft || !written) return [];
  const { mask, border } = laid;
  const { template } = draft.plan;
  const toFile = (contour: Contour) => moveContour(draft.toFile, contour);
  const film = { contours: [toFile(border)] };
  const bare = { contours: [toFile(outline(template))] };
  const painted = (layer: string, colour: string, paths: DrawnGroup['paths']): DrawnGroup => ({
    role: 'artwork',
    layer,
    colour,
    paths,
  });
  const sprayed = painted(
    'sprayed',
    mask.sprayed,
    clippedShapes([bare], [film], 'difference', chordTolerance),
  );
  const subject = rolledSubject(draft, blank, written, parts);
  const { groups } = subject.drawing;
  const outlines = groups.filter(({ role }) => role !== 'artwork');
  const decal = groups.filter(({ role }) => role === 'artwork');
  const shown = [
    ['reveal-before', [...outlines, sprayed, painted('mask', mask.film, [film])]],
    ['reveal-after', [...outlines, sprayed, ...decal]],
  ] as const;
  return shown.flatMap(([stem, of]) => {
    const picture = drawRolled({ ...subject, drawing: { ...subject.drawing, groups: of } }, words);
    return pictureFiles(stem, picture, tools);
  });
}
