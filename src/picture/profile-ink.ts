// Lines and words of the picture of a profile.
import { writePathData } from '../drawing/path-data.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { type Box, boxCorners } from '../geometry/box.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import type { Units } from '../lengths/length.ts';
import { millimetres, picturePath } from './rolled-path.ts';

/** Calm colours on the same ground as the rolled picture; the marks have those of the guides. */
export const ink = {
  ground: '#eeedea',
  body: '#dcdfdf',
  wall: '#38434a',
  words: '#4b5459',
  quiet: '#8d959a',
  station: '#3a5a8c',
  flat: '#2a6f4e',
  lipZone: '#b3541e',
  keepOut: '#8a2f6b',
  stretch: '#3f7f9c',
  gather: '#b98a2f',
  over: '#b3402e',
} as const;

/** A pen: its colour and width, and how it is dashed, mm. */
export interface Pen {
  readonly colour: string;
  readonly width: number;
  readonly dashes?: readonly number[];
}

export function lineText(points: readonly Point[], { colour, width, dashes }: Pen): string {
  const dashed = dashes ? ` stroke-dasharray="${dashes.map(millimetres).join(' ')}"` : '';
  return `<path fill="none" stroke="${colour}" stroke-width="${millimetres(width)}"${dashed} d="${picturePath(points, false)}"/>\n`;
}

export const areaText = (points: readonly Point[], fill: string, opacity = 1): string =>
  `<path fill="${fill}"${opacity === 1 ? '' : ` fill-opacity="${millimetres(opacity)}"`} d="${picturePath(points, true)}"/>\n`;

/** A plate that words stand on, over lines that pass under them. */
export const plateText = (box: Box, fill: string): string => areaText(boxCorners(box), fill);

export const dotText = ({ x, y }: Point, radius: number, fill: string): string =>
  `<circle cx="${millimetres(x)}" cy="${millimetres(y)}" r="${millimetres(radius)}" fill="${fill}"/>\n`;

/** Words in place: as text of the picture, and the box they take. */
export interface PlacedWords {
  readonly text: string;
  readonly box: Box;
}

export interface WordStyle {
  /** Size of the letters, mm. */
  readonly size: number;
  readonly fill: string;
  /** Which end of the words is at the place; the baseline always is. */
  readonly anchor: 'left' | 'middle' | 'right';
}

export type PutWords = (text: string, at: Point, style: WordStyle) => PlacedWords;

/** Steps per mm that letters of a size are drawn to: a hundredth of it at the most, for pictures of small things are small. */
const stepsOf = (size: number): number => 10 ** Math.max(2, Math.ceil(Math.log10(100 / size)));

/** Words of a maker's own, or figures, put in place as outlines. */
export const wordsWith =
  (caption: DrawWords): PutWords =>
  (text, at, { size, fill, anchor }) => {
    const contours = caption(text, size);
    if (contours.length === 0) return { text: '', box: { minX: at.x, maxX: at.x, minY: at.y, maxY: at.y } };
    const box = tightBox(contours);
    const reference = { left: box.minX, middle: (box.minX + box.maxX) / 2, right: box.maxX }[anchor];
    const by = { x: at.x - reference, y: at.y };
    return {
      text: `<path fill="${fill}" d="${writePathData(shifted(contours, by), stepsOf(size))}"/>\n`,
      box: {
        minX: box.minX + by.x,
        maxX: box.maxX + by.x,
        minY: box.minY + by.y,
        maxY: box.maxY + by.y,
      },
    };
  };

/** How wide words of a size come out, mm. */
export const widthsOf =
  (put: PutWords, size: number) =>
  (text: string): number => {
    const { box } = put(text, { x: 0, y: 0 }, { size, fill: ink.words, anchor: 'left' });
    return box.maxX - box.minX;
  };

/** Steps a scale may have, mm. */
const candidates: Readonly<Record<Units, readonly number[]>> = {
  mm: [1, 2, 5, 10, 20, 50, 100, 200, 500],
  in: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 20].map((inches) => inches * 25.4),
};

/** The smallest step of a scale that is at least so wide, mm. */
export const stepOf = (units: Units, least: number): number =>
  candidates[units].find((step) => step >= least) ?? 500;

/** Marks of a scale from 0 to an end, mm. */
export const marksTo = (end: number, step: number): readonly number[] =>
  Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, i) => i * step);

/** A figure beside a scale, without its unit. */
export const figure = (mm: number, units: Units): string =>
  String(Math.round((units === 'mm' ? mm : mm / 25.4) * 1e4) / 1e4);

/**
 * Places for labels that would like to be at `wanted` (in ascending order) but need a gap between them: as near as can be,
 * by least squares. Source: pool adjacent violators, isotonic regression; from memory.
 */
export function spread(wanted: readonly number[], gap: number): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((place, i) => {
    let pool = { sum: place - i * gap, count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  return pools
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((place, i) => place + i * gap);
}

/** A size at which words are no wider than there is room. */
export const fittedSize = (put: PutWords, text: string, size: number, room: number): number =>
  Math.min(size, (size * room) / Math.max(room, widthsOf(put, size)(text)));
