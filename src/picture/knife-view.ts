// Places of a drawing under a lens: the wanted line, the way of the knife's axis, and what its tip cuts.
import type { DrawWords } from '../drawing/words.ts';
import type { Contour } from '../geometry/contour.ts';
import { distance, type Point } from '../geometry/point.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { areaText, fittedSize, ink, lineText, type Pen, wordsWith } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

export interface KnifePlace {
  readonly says: string;
  readonly at: Point;
}

export interface KnifeSubject {
  readonly title: string;
  readonly wanted: readonly Contour[];
  /** Open: each from where the blade comes down to where it lifts. */
  readonly axis: readonly Contour[];
  /** Points of the tip's way, close together, stroke by stroke. */
  readonly tip: readonly (readonly Point[])[];
  readonly places: readonly KnifePlace[];
  /** Radius of what a lens shows, mm. */
  readonly reach: number;
}

/** Radius of a lens on the page, and what is clear around it, mm. */
const lens = 40;
const gap = 8;
const top = 16;
const under = 34;

/** Sagitta of chords, as a share of what a lens shows. */
const sagitta = 1e-3;

const pens = {
  wanted: { colour: '#b9c4cb', width: 2.2 },
  axis: { colour: '#2f5f8c', width: 0.5, dashes: [2, 1] },
  tip: { colour: '#b3402e', width: 0.5 },
} as const satisfies Readonly<Record<string, Pen>>;

const means = {
  wanted: 'the line that is wanted',
  axis: 'the axis of the knife',
  tip: 'what its tip cuts',
} as const;

/** Points of a contour close enough together for a lens. */
const pointsOf = ({ segments }: Contour, reach: number): Point[] =>
  segments.flatMap((s, i) => {
    const count = Math.max(s.kind === 'line' ? 40 : 8, chordCount(s, sagitta * reach));
    return Array.from({ length: count + (i === 0 ? 1 : 0) }, (_, k) =>
      pointAt(s, (k + (i === 0 ? 0 : 1)) / count),
    );
  });

/** Where the piece of a line from a point inside a circle to one outside leaves it. */
function leaves(inside: Point, outside: Point, middle: Point, radius: number): Point {
  let [low, high] = [0, 1];
  const at = (t: number): Point => ({
    x: inside.x + t * (outside.x - inside.x),
    y: inside.y + t * (outside.y - inside.y),
  });
  for (let i = 0; i < 30; i++) {
    const t = (low + high) / 2;
    if (distance(at(t), middle) <= radius) low = t;
    else high = t;
  }
  return at(low);
}

/** The stretches of a line that lie within a circle. */
function withinLens(points: readonly Point[], middle: Point, radius: number): readonly (readonly Point[])[] {
  const stretches: Point[][] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    const isIn = distance(p, middle) <= radius;
    const wasIn = before !== undefined && distance(before, middle) <= radius;
    if (isIn && !wasIn) stretches.push(before ? [leaves(p, before, middle, radius), p] : [p]);
    else if (isIn) stretches.at(-1)?.push(p);
    else if (wasIn && before) stretches.at(-1)?.push(leaves(before, p, middle, radius));
  });
  return stretches;
}

const ring = (middle: Point, radius: number): Point[] =>
  Array.from({ length: 97 }, (_, i) => ({
    x: middle.x + radius * Math.cos((i * Math.PI) / 48),
    y: middle.y + radius * Math.sin((i * Math.PI) / 48),
  }));

/** The text of the picture: mm, y down, words as outlines. Same input, same bytes. */
export function knifeView({ title, places, reach, ...drawn }: KnifeSubject, caption: DrawWords): string {
  const put = wordsWith(caption);
  const width = places.length * (2 * lens + gap) + gap;
  const height = top + 2 * lens + under;
  const lines = {
    wanted: drawn.wanted.map((contour) => pointsOf(contour, reach)),
    axis: drawn.axis.map((contour) => pointsOf(contour, reach)),
    tip: drawn.tip,
  };
  const say = (text: string, at: Point, anchor: 'left' | 'middle') =>
    put(text, at, { size: 3.6, fill: ink.words, anchor }).text;
  const lenses = places.map(({ says, at }, i) => {
    const middle = { x: gap + lens + i * (2 * lens + gap), y: top + lens };
    const zoom = lens / reach;
    const placed = (p: Point): Point => ({
      x: middle.x + zoom * (p.x - at.x),
      y: middle.y + zoom * (p.y - at.y),
    });
    const shown = (['wanted', 'axis', 'tip'] as const).flatMap((kind) =>
      lines[kind].flatMap((points) =>
        withinLens(points, at, reach).map((stretch) => lineText(stretch.map(placed), pens[kind])),
      ),
    );
    return (
      areaText(ring(middle, lens), '#fff') +
      shown.join('') +
      lineText(ring(middle, lens), { colour: ink.quiet, width: 0.4 }) +
      say(says, { x: middle.x, y: middle.y + lens + 6 }, 'middle')
    );
  });
  const legend = (['wanted', 'axis', 'tip'] as const).map((kind, i) => {
    const at = { x: gap + i * 68, y: height - 15 };
    return (
      lineText([at, { x: at.x + 12, y: at.y }], pens[kind]) +
      say(means[kind], { x: at.x + 14, y: at.y + 1.2 }, 'left')
    );
  });
  const scaled = say(`across a lens: ${millimetres(2 * reach)} mm`, { x: gap, y: height - 5 }, 'left');
  const box = `${millimetres(width)}mm" height="${millimetres(height)}mm" viewBox="0 0 ${millimetres(width)} ${millimetres(height)}"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${box}>\n<title>The way of the knife</title>\n` +
    `<rect width="${millimetres(width)}" height="${millimetres(height)}" fill="${ink.ground}"/>\n` +
    `${put(title, { x: gap, y: 9 }, { size: fittedSize(put, title, 4.5, width - 2 * gap), fill: ink.words, anchor: 'left' }).text}${lenses.join('')}${legend.join('')}${scaled}</svg>\n`
  );
}
