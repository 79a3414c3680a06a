// The pen that a stroked path of a normalised SVG is drawn with.
import type { XmlElement } from '../../drawing/xml.ts';
import type { Dashes } from '../../geometry/dashes.ts';
import type { Cap, Join, Pen } from '../../geometry/stroke.ts';

const isOneOf = <T extends string>(names: readonly T[], text: string | undefined): text is T =>
  names.some((name) => name === text);

const caps: readonly Cap[] = ['butt', 'round', 'square'];
const joins: readonly Join[] = ['miter', 'round', 'bevel'];

/** The pen, in the path's own units; undefined where the path has no stroke that covers anything. */
export function penOf(attributes: XmlElement['attributes']): Pen | undefined {
  const { stroke = 'none' } = attributes;
  const width = Number(attributes['stroke-width'] ?? 1);
  if (stroke === 'none' || attributes['stroke-opacity'] === '0' || !(width > 0)) return undefined;
  const [cap, join] = [attributes['stroke-linecap'], attributes['stroke-linejoin']];
  const dashes = dashesOf(attributes);
  return {
    width,
    cap: isOneOf(caps, cap) ? cap : 'butt',
    join: isOneOf(joins, join) ? join : 'miter',
    miterLimit: Number(attributes['stroke-miterlimit'] ?? 4),
    ...(dashes ? { dashes } : {}),
  };
}

/** The reader has made the number of lengths even. Lengths that add up to nothing are no dashes. */
function dashesOf(attributes: XmlElement['attributes']): Dashes | undefined {
  const lengths = (attributes['stroke-dasharray'] ?? '')
    .split(/[\s,]+/)
    .filter((part) => part !== '')
    .map(Number);
  const sum = lengths.reduce((total, length) => total + length, 0);
  if (!(sum > 0) || lengths.some((length) => !(length >= 0)) || lengths.length % 2 === 1) return undefined;
  const offset = Number(attributes['stroke-dashoffset'] ?? 0);
  return { lengths, offset: Number.isFinite(offset) ? offset : 0 };
}
