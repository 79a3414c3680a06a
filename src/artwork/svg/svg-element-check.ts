// Faults of one element of an SVG file that a reader would cut short or drop in silence.
import { absurd, pathDataFault } from '../../drawing/path-data.ts';
import type { XmlElement } from '../../drawing/xml.ts';
import { type Finding, look, stop, type Where } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import { mostOfLength } from './svg-size.ts';
import { contextPaint, fixedStroke, styleAttributeFindings } from './svg-style-check.ts';

const transformName = /(?:matrix|translate|scale|rotate|skewX|skewY)/y;
const notOfNumbers = /[^-+.\deE\s,]/;

/** Attributes that give a shape its size or place; those of `sizes` may not be below zero (SVG 2, 10.2 to 10.4). */
const places: Readonly<Record<string, readonly string[]>> = {
  rect: ['x', 'y'],
  circle: ['cx', 'cy'],
  ellipse: ['cx', 'cy'],
  use: ['x', 'y'],
};
const sizes: Readonly<Record<string, readonly string[]>> = {
  rect: ['width', 'height', 'rx', 'ry'],
  circle: ['r'],
  ellipse: ['rx', 'ry'],
};

interface Uncut {
  readonly rule: string;
  readonly says: string;
}
const text: Uncut = {
  rule: 'text',
  says: 'is text, which has no outline to cut; turn text into outlines in your drawing program',
};

/** Elements that show something, but nothing with an edge to cut. */
const uncut: Readonly<Record<string, Uncut>> = {
  text,
  flowRoot: text,
  image: {
    rule: 'raster',
    says: 'is a picture made of pixels; trace it to areas in your drawing program',
  },
  foreignObject: { rule: 'foreign', says: 'holds something that is not SVG; draw it as areas' },
};

/** All that is wrong with one element, whatever stands inside it. */
export function elementFindings(element: XmlElement, where: Where): Finding[] {
  const { attributes, name } = element;
  const wrong = uncut[name];
  return [
    ...pathFindings(element, where),
    ...numberFindings(element, where),
    ...transformFindings(attributes, where),
    ...clipFindings(attributes, where),
    ...strokeFindings(attributes, where),
    ...(attributes.style === undefined ? [] : styleAttributeFindings(attributes.style, where)),
    ...(name === 'use' ? outsideFindings(attributes.href ?? attributes['xlink:href'], where) : []),
    ...(wrong ? [stop(wrong.rule, where, wrong.says)] : []),
  ];
}

function pathFindings({ name, attributes }: XmlElement, where: Where): Finding[] {
  if (name === 'path' && attributes.d !== undefined) {
    const fault = pathDataFault(attributes.d);
    return fault === undefined
      ? []
      : [stop('broken-path', where, `path data can't be read: ${fault}; draw this path again or repair it`)];
  }
  if ((name !== 'polygon' && name !== 'polyline') || wholePairs(attributes.points ?? '')) return [];
  const says = 'points are not whole pairs of numbers; draw this shape again or repair it';
  return [stop('broken-path', where, says)];
}

function wholePairs(points: string): boolean {
  const parts = points
    .trim()
    .split(/[\s,]+|(?<=[\d.])(?=-)/)
    .filter((part) => part !== '');
  return parts.length % 2 === 0 && parts.every((part) => Math.abs(Number(part)) <= absurd);
}

function numberFindings({ name, attributes }: XmlElement, where: Where): Finding[] {
  const signed = (places[name] ?? []).map((key) => ({ key, least: -absurd }));
  const unsigned = (sizes[name] ?? []).map((key) => ({ key, least: 0 }));
  return [...signed, ...unsigned].flatMap(({ key, least }) => {
    const typed = attributes[key];
    if (typed === undefined || typed.trim() === 'auto') return [];
    const number =
      typed.length > mostOfLength
        ? undefined
        : /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(?:[a-z]*|%)\s*$/i.exec(typed)?.[1];
    const value = number === undefined ? Number.NaN : Number(number);
    if (value >= least && value <= absurd) return [];
    return [
      stop(
        'broken-shape',
        where,
        `${key} ${shown(typed)} is not a length; draw this shape again or repair it`,
      ),
    ];
  });
}

function transformFindings(attributes: XmlElement['attributes'], where: Where): Finding[] {
  const { transform, 'transform-origin': origin } = attributes;
  const found: Finding[] = [];
  if (transform !== undefined && !(isTransformList(transform) && numbersOf(transform).every(isMeant)))
    found.push(stop('broken-transform', where, `transform ${shown(transform)} can't be read; repair it`));
  if (origin !== undefined) {
    const says =
      "has a transform-origin, which is not followed; write the transform about the drawing's own origin";
    found.push(stop('style-transform', where, says));
  }
  return found;
}

/** Step by step, each letter looked at once: a pattern for all of it came back over its spaces, and had no room for a million steps. */
function isTransformList(text: string): boolean {
  const list = text.trim();
  const isSpace = (at: number): boolean => /^\s$/.test(list.charAt(at));
  let at = 0;
  const overSpaces = () => {
    while (isSpace(at)) at++;
  };
  while (at < list.length && list !== 'none') {
    transformName.lastIndex = at;
    if (!transformName.test(list)) return false;
    at = transformName.lastIndex;
    overSpaces();
    const end = list.indexOf(')', at);
    if (list[at] !== '(' || end < 0 || notOfNumbers.test(list.slice(at + 1, end))) return false;
    at = end + 1;
    overSpaces();
    if (list[at] === ',') at++;
    overSpaces();
  }
  return true;
}

const numbersOf = (list: string): number[] =>
  (list.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);

const isMeant = (value: number): boolean => Math.abs(value) <= absurd;

function clipFindings(attributes: XmlElement['attributes'], where: Where): Finding[] {
  const clip = attributes['clip-path'];
  if (clip === undefined || /^\s*(?:$|none|url\s*\(|inherit)/i.test(clip)) return [];
  const says = `clips by ${shown(clip)}, which is not followed; use a clip path element`;
  return [stop('clip-shape', where, says)];
}

/** Lengths of a stroke: a number past all is no length to the reader, which then draws the stroke a unit wide, or solid. */
const strokeLengths = ['stroke-width', 'stroke-dasharray', 'stroke-dashoffset'] as const;

function strokeFindings(attributes: XmlElement['attributes'], where: Where): Finding[] {
  const says = [
    ...strokeLengths
      .filter((key) => numbersOf(attributes[key] ?? '').some((length) => !isMeant(length)))
      .map((key) => `${key} ${shown(attributes[key])} is past all lengths; give the stroke the one you mean`),
    ...(attributes['vector-effect']?.trim() === 'non-scaling-stroke' ? [fixedStroke] : []),
    ...(attributes.pathLength === undefined ? [] : [measuredDashes]),
    ...([attributes.fill, attributes.stroke].some((paint) => /^\s*context-/.test(paint ?? ''))
      ? [contextPaint]
      : []),
  ];
  return says.map((words) => stop('stroke-unread', where, words));
}

/** Told only where there are dashes. */
export const measuredDashes =
  'measures its dashes by a pathLength of its own, which is not followed; take it away and give the dashes true lengths';

/** Nothing is ever fetched: what another file would show is missing, and the maker is told. */
function outsideFindings(reference: string | undefined, where: Where): Finding[] {
  if (reference === undefined || reference.trim().startsWith('#')) return [];
  const says = `shows ${shown(reference)} from another file, which is not fetched; copy the shape into this file`;
  return [look('outside-reference', where, says)];
}
