// What goes to the cutter: the lines that are wanted, as this machine has to be told them.
import { readSvg } from '../../deliver/read-svg.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import { type Drawing, type DrawnGroup, movedGroups } from '../../drawing/drawing.ts';
import type { Point } from '../../geometry/point.ts';
import { cutterMarks } from '../../sheet/cutter-marks.ts';
import { firstHeading, type Knife, knifePath, turnedBack } from '../../sheet/knife-path.ts';
import { knifeOf } from '../blade/knife.ts';
import type { WrittenPiece } from '../deliverables.ts';
import type { NestedSheets } from '../sheets/nest-sheets.ts';
import type { Cutter } from '../typed/material.ts';
import { type Correction, correctionInWords, correctionOf } from '../typed/measured.ts';

/**
 * A group of lines as the axis goes: each path as open strokes. The blade points to the right when it first comes down,
 * and is brought round to the right again after the last of them, so that groups can be cut in any order.
 */
function axisGroup(group: DrawnGroup, knife: Knife): DrawnGroup {
  let at: Point = firstHeading;
  const paths = group.paths.map((path) => {
    const { strokes, heading } = knifePath(path.contours, knife, at);
    at = heading;
    return { ...path, contours: strokes };
  });
  const last = paths.at(-1);
  if (!last) return group;
  const settled = { ...last, contours: turnedBack(last.contours, at, knife.offset) };
  return { ...group, paths: [...paths.slice(0, -1), settled] };
}

const withMarks = (drawing: Drawing, { marks, margin }: Cutter, page: Drawing): Drawing => ({
  ...drawing,
  groups: [...drawing.groups, ...cutterMarks(marks, page, margin)],
});

/** A drawing that comes out true on a machine which makes it too large or too small. */
const corrected = (drawing: Drawing, { across, up }: Correction): Drawing => ({
  width: drawing.width * across,
  height: drawing.height * up,
  groups: movedGroups(drawing.groups, { a: across, b: 0, c: 0, d: up, e: 0, f: 0 }),
});

/** Whether files are the same for a cutter as the lines themselves. */
export const isPlain = (cutter: Cutter): boolean =>
  !knifeOf(cutter) && cutter.marks === 'none' && !correctionOf(cutter.measured);

/**
 * A piece's files as the cutter takes them: the way of its knife's axis, corrected by what its test piece measured, and
 * the marks that it looks for on the guide.
 */
export function forCutter<P extends WrittenPiece>(piece: P, name: string, cutter: Cutter): P {
  const knife = knifeOf(cutter);
  if (isPlain(cutter)) return piece;
  const correction = correctionOf(cutter.measured);
  const drawing = readSvg(piece.cut, `${piece.stem}.cut.svg`);
  const guide = readSvg(piece.guide, `${piece.stem}.guide.svg`);
  const groups = knife ? drawing.groups.map((group) => axisGroup(group, knife)) : drawing.groups;
  const cut = correction ? corrected({ ...drawing, groups }, correction) : { ...drawing, groups };
  const title = [
    `${name}: cut`,
    ...(knife ? ['for the axis of the knife'] : []),
    ...(correction ? [`corrected for one cutter: ${correctionInWords(correction)}`] : []),
  ].join(', ');
  return {
    ...piece,
    cut: writeSvg(cut, { title, filled: false, asRead: !knife }),
    guide: writeSvg(withMarks(guide, cutter, drawing), {
      title: `${name}: guide`,
      filled: true,
      asRead: true,
    }),
  };
}

/** What is to be cut of a piece, by its guide: there all lines stand as they are wanted. */
export function cutOfGuide(guide: string, file: string, name: string): string {
  const drawing = readSvg(guide, file);
  const groups = drawing.groups.filter(({ role }) => ['artwork', 'relief', 'outline'].includes(role));
  return writeSvg({ ...drawing, groups }, { title: `${name}: cut`, filled: false, asRead: true });
}

/** Sheets as the cutter takes them. Each has a guide of its own where the cutter looks for marks, or follows an axis. */
export function sheetsForCutter(nested: NestedSheets, name: string, cutter: Cutter): NestedSheets {
  if (isPlain(cutter)) return nested;
  const texts = nested.texts.map((text) => forCutter({ ...text, guide: text.cut }, name, cutter));
  const files = nested.files.flatMap((file, i) => {
    const { stem, cut, guide } = texts[i] ?? { stem: '', cut: '', guide: '' };
    return [
      { ...file, content: cut },
      { ...file, file: `${stem}.guide.svg`, role: 'sheet-guide', content: guide },
    ];
  });
  return { ...nested, texts, files };
}
