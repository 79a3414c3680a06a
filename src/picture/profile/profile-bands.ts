// What is marked beside the wall of a section: where film lies flat, and what has to be kept clear.
import type { Band } from '../../blank/flat-band.ts';
import { grow } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { measuredLength } from '../../lengths/length.ts';
import { areaText, ink, lineText, plateText, spread, stepOf } from '../profile-ink.ts';
import { besideWall, mirrored, offWall, type Part, type Sheet, twoLines } from './profile-sheet.ts';
import type { ProfileSubject } from './profile-subject.ts';

/** Flat bands: bars as straight as the straightedge that finds them, laid on the right wall, with their figures. */
export function flatPart(subject: ProfileSubject, sheet: Sheet): Part {
  const { put, em, units } = sheet;
  const bands = [...subject.flatBands].reverse();
  const starts = bands.map((band) =>
    offWall(subject, leaderAlong(band, stepOf(units, 2.6 * em)), barTo * em),
  );
  const rows = spread(
    starts.map(({ y }) => y),
    2.9 * em,
  );
  const widest = Math.max(...subject.rings.map(({ radius }) => radius)) + 5.5 * em;
  const x = widest + 1.5 * em;
  let reach = widest;
  // Its figures are told beside the picture then.
  if (sheet.isNarrow)
    return {
      text: bands.map((band) => areaText(straightBar(subject, band, em), ink.flat)).join(''),
      reach: 0,
    };
  const text = bands.map((band, i) => {
    const [start, row] = [starts[i], rows[i]];
    if (!start || row === undefined) return '';
    const style = { size: em, fill: ink.flat, anchor: 'left' } as const;
    const [name, figures] = twoLines(sheet, row - 0.2 * em, row + 1.1 * em);
    const { from, to } = band;
    const range = `flat ${measuredLength(from, units)} to ${measuredLength(to, units)}`;
    const words = [
      put(range, { x, y: name }, style),
      put(`${measuredLength(to - from, units)} along`, { x, y: figures }, { ...style, size: 0.86 * em }),
    ];
    reach = Math.max(reach, ...words.map(({ box }) => box.maxX));
    const leader = lineText([start, { x: x - 0.5 * em, y: row }], {
      colour: ink.flat,
      width: em * 0.06,
    });
    return (
      areaText(straightBar(subject, band, em), ink.flat) + leader + words.map((word) => word.text).join('')
    );
  });
  return { text: text.join(''), reach };
}

/** Where bars begin and end off the wall, in letters. */
const [barFrom, barTo] = [0.25, 0.95];

function straightBar(subject: ProfileSubject, { from, to }: Band, em: number): Point[] {
  const [foot, lip] = [offWall(subject, from, 0), offWall(subject, to, 0)];
  const length = Math.hypot(lip.x - foot.x, lip.y - foot.y);
  const [up, out] = [
    { x: (lip.x - foot.x) / length, y: (lip.y - foot.y) / length },
    { x: (foot.y - lip.y) / length, y: (lip.x - foot.x) / length },
  ];
  // Bars that meet end to end are told apart by a hair.
  const at = (p: Point, along: number, off: number): Point => ({
    x: p.x + along * up.x + off * em * out.x,
    y: p.y + along * up.y + off * em * out.y,
  });
  const hair = Math.min(0.08 * em, length / 4);
  return [at(foot, hair, barFrom), at(lip, -hair, barFrom), at(lip, -hair, barTo), at(foot, hair, barTo)];
}

/** Where on a band the line to its figures begins: at its middle, but between two figures of the scale along the wall. */
function leaderAlong({ from, to }: Band, step: number): number {
  const middle = (from + to) / 2;
  const between = (Math.floor(middle / step) + 0.5) * step;
  return between > from && between < to ? between : middle;
}

/** How far inside the wall the line of a job's band runs, in letters: past the hatches of the lip zone. */
const bandInside = 2.2;

/** The band of a job: a line inside the right wall from end to end, and its name on the axis. */
export function bandPart(subject: ProfileSubject, sheet: Sheet): string {
  const { put, em } = sheet;
  const { band } = subject;
  if (!band) return '';
  const pen = { colour: ink.wall, width: em * 0.14 };
  const inside = besideWall(subject, band.from, band.to, -bandInside * em);
  const ends = [band.from, band.to].map((along) =>
    lineText([offWall(subject, along, 0), offWall(subject, along, -(bandInside + 0.6) * em)], pen),
  );
  const at = offWall(subject, (band.from + band.to) / 2, -(bandInside + 0.8) * em);
  const style = { size: em, fill: ink.wall, anchor: 'right' } as const;
  const [name, figures] = twoLines(sheet, at.y - 0.2 * em, at.y + 1.1 * em);
  const words = [
    put('band', { x: at.x, y: name }, style),
    put(band.says, { x: at.x, y: figures }, { ...style, size: 0.86 * em }),
  ];
  const plates = words.map(({ box }) => plateText(grow(box, 0.3 * em), ink.body));
  return lineText(inside, pen) + ends.join('') + plates.join('') + words.map(({ text }) => text).join('');
}

/** Places to keep clear: bars beside the left wall, each with the letter that its note begins with. */
export function keepOutPart(subject: ProfileSubject, { put, em }: Sheet): string {
  const length = subject.rings.at(-1)?.along ?? 0;
  return subject.keepOuts
    .map(({ along, letter }, i) => {
      const [from, to] = along ? [Math.max(0, along.from), Math.min(length, along.to)] : [0, length];
      const off = (0.6 + 0.9 * i) * em;
      const bar = [
        ...besideWall(subject, from, to, off),
        ...besideWall(subject, from, to, off + 0.45 * em).reverse(),
      ];
      const top = offWall(subject, to, off + 0.2 * em);
      const words = put(
        letter,
        { x: -top.x, y: top.y - 0.5 * em },
        { size: 0.86 * em, fill: ink.keepOut, anchor: 'middle' },
      );
      return areaText(mirrored(bar), ink.keepOut, 0.75) + words.text;
    })
    .join('');
}
