// The scales of a section: heights on its left, distances along the wall on the wall itself.
import { type Box, boxesMeet, grow } from '../../geometry/box.ts';
import { figure, ink, lineText, marksTo, plateText, stepOf } from '../profile-ink.ts';
import { offWall, type Part, type Sheet } from './profile-sheet.ts';
import type { ProfileSubject } from './profile-subject.ts';

/** The scale of heights: upright, left of all else. */
export function heightScale(
  subject: ProfileSubject,
  { put, em, units, isNarrow }: Sheet,
  clear: number,
): Part {
  // What was read at each height stands there in words.
  if (isNarrow) return { text: '', reach: clear };
  const height = subject.rings.at(-1)?.height ?? 0;
  const x = -clear - 2 * em;
  const pen = { colour: ink.words, width: em * 0.07 };
  const at = (mm: number, long: number) =>
    lineText(
      [
        { x, y: -mm },
        { x: x - long, y: -mm },
      ],
      pen,
    );
  const labelled = stepOf(units, 2.6 * em);
  let reach = -x;
  const figures = marksTo(height, labelled).map((mm) => {
    const words = put(
      figure(mm, units),
      { x: x - 1.2 * em, y: -mm + 0.3 * em },
      { size: 0.86 * em, fill: ink.words, anchor: 'right' },
    );
    reach = Math.max(reach, -words.box.minX);
    return at(mm, 0.8 * em) + words.text;
  });
  const small = marksTo(height, stepOf(units, 0.45 * em)).map((mm) => at(mm, 0.4 * em));
  const name = put(
    `height, ${units}`,
    { x, y: -height - 1.6 * em },
    { size: 0.86 * em, fill: ink.words, anchor: 'right' },
  );
  const line = lineText(
    [
      { x, y: 0 },
      { x, y: -height },
    ],
    pen,
  );
  return {
    text: line + small.join('') + figures.join('') + name.text,
    reach: Math.max(reach, -name.box.minX),
  };
}

/** The scale along the wall: marks that stand on the right wall, with figures. */
export function alongScale(subject: ProfileSubject, { put, em, units, isNarrow }: Sheet): string {
  const length = subject.rings.at(-1)?.along ?? 0;
  const pen = { colour: ink.words, width: em * 0.07 };
  const mark = (mm: number, long: number) =>
    lineText([offWall(subject, mm, 1.3 * em), offWall(subject, mm, 1.3 * em + long)], pen);
  const kept: Box[] = [];
  const figures = marksTo(length, stepOf(units, 2.6 * em)).map((mm) => {
    const style = { size: 0.86 * em, fill: ink.words, anchor: 'left' } as const;
    // In an inner corner figures crowd: one that meets another stands further out, its mark as much longer.
    for (const away of [2.4, 3.9, 5.4, 6.9]) {
      const at = offWall(subject, mm, away * em);
      const words = put(figure(mm, units), { x: at.x, y: at.y + 0.3 * em }, style);
      if (kept.some((box) => boxesMeet(box, words.box))) continue;
      kept.push(grow(words.box, 0.5 * em));
      const plate = plateText(grow(words.box, 0.15 * em), ink.ground);
      return mark(mm, (away - 1.6) * em) + plate + words.text;
    }
    return mark(mm, 0.8 * em);
  });
  const small = marksTo(length, stepOf(units, 0.45 * em)).map((mm) => mark(mm, 0.4 * em));
  const top = offWall(subject, length, 1.3 * em);
  const name = put(
    `${isNarrow ? 'along' : 'along the wall'}, ${units}`,
    { x: top.x, y: -(subject.rings.at(-1)?.height ?? 0) - 1.6 * em },
    { size: 0.86 * em, fill: ink.words, anchor: 'left' },
  );
  return small.join('') + figures.join('') + name.text;
}
