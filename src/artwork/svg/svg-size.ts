// How large an SVG says it is: real-world width and height, and the map from its user units to millimetres.
import { type Affine, compose, translation } from '../../geometry/affine.ts';
import { inMm, mostLength } from '../../lengths/length.ts';

/** mm per CSS pixel. */
const px = 25.4 / 96;

/** mm per unit. Source: CSS Values and Units, absolute lengths: 1in = 2.54cm = 96px = 72pt = 6pc. */
const mmPer: Readonly<Record<string, number>> = {
  '': px,
  px,
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  q: 0.25,
};

/** Most letters of a length: past them it is no number that anybody typed, and looking it through takes the square of its letters. */
export const mostOfLength = 200;

/** An SVG length in mm; undefined if it is missing, relative (%, em) or no length at all. */
export function svgLength(text: string | undefined): number | undefined {
  if ((text?.length ?? 0) > mostOfLength) return undefined;
  const match = /^\s*\+?(\d*\.?\d+(?:e[+-]?\d+)?)\s*([a-z%]*)\s*$/i.exec(text ?? '');
  const unit = mmPer[(match?.[2] ?? '?').toLowerCase()];
  if (!match || unit === undefined) return undefined;
  return Number(match[1]) * unit;
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function parseViewBox(text: string | undefined): ViewBox | undefined {
  const numbers = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x, y, width, height] = numbers;
  if (numbers.length !== 4 || numbers.some((n) => !Number.isFinite(n))) return undefined;
  if (x === undefined || y === undefined || width === undefined || height === undefined) return undefined;
  return width > 0 && height > 0 ? { x, y, width, height } : undefined;
}

/** Lengths that need something around the drawing to mean anything: as if they had been left out. */
const isRelative = (text: string): boolean =>
  text.length <= mostOfLength &&
  /^\s*(?:auto|\+?(?:\d+\.?\d*|\.\d+)\s*(?:%|em|rem|ex|ch|v[a-z]+))\s*$/i.test(text);

/** What is wrong with the size of a root element as typed, or undefined. */
export function frameFault(
  attributes: Readonly<Record<string, string>>,
): { readonly key: 'width' | 'height' | 'viewBox'; readonly says: string } | undefined {
  for (const key of ['width', 'height'] as const) {
    const typed = attributes[key];
    if (typed === undefined || isRelative(typed)) continue;
    const mm = svgLength(typed);
    if (mm === undefined || !(mm > 0))
      return { key, says: 'is not a size above zero; give one such as "60mm"' };
    if (!(mm <= mostLength)) return { key, says: `is too large; up to ${inMm(mostLength)} is read` };
  }
  const isBroken = attributes.viewBox !== undefined && parseViewBox(attributes.viewBox) === undefined;
  return isBroken
    ? { key: 'viewBox', says: 'is not four numbers, the last two above zero; give one such as "0 0 60 40"' }
    : undefined;
}

/** The tile's size in mm, and the map of its user units to mm from its own top left corner. */
export interface SvgFrame {
  readonly width: number;
  readonly height: number;
  readonly toMm: Affine;
  /** False where the file gives no real-world size and its view box was taken as px. */
  readonly sized: boolean;
}

/** The frame of a root element's attributes; undefined where it gives no size at all or one that is not above zero. */
export function svgFrame(attributes: Readonly<Record<string, string>>): SvgFrame | undefined {
  const viewBox = parseViewBox(attributes.viewBox);
  const width = svgLength(attributes.width);
  const height = svgLength(attributes.height);
  const ratio = viewBox ? viewBox.height / viewBox.width : undefined;
  const across = width ?? (height !== undefined && ratio ? height / ratio : (viewBox?.width ?? 0) * px);
  const up = height ?? (ratio === undefined ? 0 : across * ratio);
  if (!(across > 0 && up > 0)) return undefined;
  const sized = width !== undefined || height !== undefined;
  const toMm = viewBox
    ? fitted(viewBox, across, up, attributes.preserveAspectRatio ?? '')
    : { a: px, b: 0, c: 0, d: px, e: 0, f: 0 };
  return { width: across, height: up, toMm, sized };
}

/** Source: SVG 2, 'preserveAspectRatio': alignment by the named third of the room left over; meet unless slice. */
export function fitted(box: ViewBox, width: number, height: number, preserve: string): Affine {
  const [sx, sy] = [width / box.width, height / box.height];
  const home = translation(-box.x, -box.y);
  if (/none/.test(preserve)) return compose(home, { a: sx, b: 0, c: 0, d: sy, e: 0, f: 0 });
  const s = /slice/.test(preserve) ? Math.max(sx, sy) : Math.min(sx, sy);
  const share = (axis: 'x' | 'Y') =>
    new RegExp(`${axis}Min`).test(preserve) ? 0 : new RegExp(`${axis}Max`).test(preserve) ? 1 : 0.5;
  const e = (width - box.width * s) * share('x');
  const f = (height - box.height * s) * share('Y');
  return compose(home, { a: s, b: 0, c: 0, d: s, e, f });
}
