// SVG path data, read and written. Adapter of svgpath (MIT) for reading.
import svgPath from 'svgpath';
import type { Affine } from '../geometry/affine.ts';
import { type Contour, cubic, line, type Segment } from '../geometry/contour.ts';
import { distance, type Point } from '../geometry/point.ts';

interface Parsed {
  readonly err: string;
  readonly segments: readonly (readonly unknown[])[];
}

/** Largest number taken as meant, in user units: past it readers' own numbers run over. */
export const absurd = 1e9;

function faultOf(path: ReturnType<typeof svgPath>): string | undefined {
  const { err, segments } = path as unknown as Parsed;
  if (err) return err.replace(/^SvgPath: /, '');
  for (const segment of segments)
    for (const value of segment)
      if (typeof value === 'number' && !(Math.abs(value) <= absurd)) return `number out of range (${value})`;
  return undefined;
}

/** What is wrong with path data, in the reader's words, or undefined if it is whole. Numbers past 1e9 count as broken. */
export const pathDataFault = (data: string): string | undefined => faultOf(svgPath(data));

/** Contours of path data, moved by `m` if given. Arcs and quadratics become cubics. @throws Error where it has a fault. */
export function parsePathData(data: string, m?: Affine): Contour[] {
  const path = svgPath(data);
  const fault = faultOf(path);
  if (fault !== undefined) throw new Error(`path data: ${fault}`);
  path.abs().unarc().unshort();
  if (m) path.matrix([m.a, m.b, m.c, m.d, m.e, m.f]);
  return contoursOf(path.abs());
}

function contoursOf(path: ReturnType<typeof svgPath>): Contour[] {
  const contours: Contour[] = [];
  let segments: Segment[] = [];
  let start: Point = { x: 0, y: 0 };
  let at = start;
  const finish = (closed: boolean) => {
    if (closed && segments.length > 0 && distance(at, start) > 0) segments.push(line(at, start));
    if (segments.length > 0) contours.push({ closed, segments });
    segments = [];
    at = start;
  };
  const draw = (segment: Segment) => {
    segments.push(segment);
    at = segment.to;
  };
  path.iterate(([command, ...n], _index, x, y) => {
    const v = n as number[];
    const pair = (i: number): Point => ({ x: v[i] ?? x, y: v[i + 1] ?? y });
    switch (command) {
      case 'M':
        finish(false);
        start = pair(0);
        at = start;
        break;
      case 'L':
        draw(line(at, pair(0)));
        break;
      case 'H':
        draw(line(at, { x: v[0] ?? x, y: at.y }));
        break;
      case 'V':
        draw(line(at, { x: at.x, y: v[0] ?? y }));
        break;
      case 'C':
        draw(cubic(at, pair(0), pair(2), pair(4)));
        break;
      case 'Q':
        draw(raised(at, pair(0), pair(2)));
        break;
      default:
        finish(true);
    }
  });
  finish(false);
  return contours;
}

/** A quadratic Bézier as the cubic it equals. */
const raised = (from: Point, control: Point, to: Point): Segment =>
  cubic(
    from,
    { x: (from.x + 2 * control.x) / 3, y: (from.y + 2 * control.y) / 3 },
    { x: (to.x + 2 * control.x) / 3, y: (to.y + 2 * control.y) / 3 },
    to,
  );

/** Steps per mm in the files: a tenth of a micrometre, so that rounding turns no short handle by a tenth of a degree. */
const fine = 1e4;

/** Segments under three steps long are what joining left at a node: written, they would only turn the blade. */
function isSpeck(s: Segment, steps: number): boolean {
  const reach = 3 / steps;
  const near = (p: Point) => Math.abs(p.x - s.from.x) < reach && Math.abs(p.y - s.from.y) < reach;
  return near(s.to) && (s.kind === 'line' || (near(s.c1) && near(s.c2)));
}

/** A number to `steps` per unit, a power of ten: as `String` writes it, but from whole numbers alone, which is faster. */
function decimal(value: number, steps: number): string {
  const count = Math.round(value * steps);
  return count < 0 ? `-${quotient(-count, steps)}` : quotient(count, steps);
}

function quotient(count: number, steps: number): string {
  const whole = Math.floor(count / steps);
  const part = count - whole * steps;
  if (part === 0) return String(whole);
  const digits = String(steps + part);
  let end = digits.length;
  while (digits.charCodeAt(end - 1) === zero) end--;
  return `${whole}.${digits.slice(1, end)}`;
}

const zero = '0'.charCodeAt(0);

/** Path data for contours: absolute M, L, C and Z only, to `steps` per mm. */
export function writePathData(contours: readonly Contour[], steps = fine): string {
  const number = (value: number): string => decimal(value, steps);
  const pair = (p: Point): string => `${number(p.x)} ${number(p.y)}`;
  let data = '';
  for (const { segments, closed } of contours) {
    const [first] = segments;
    if (!first) continue;
    data += `M${pair(first.from)}`;
    segments.forEach((s, i) => {
      const closing = closed && i === segments.length - 1;
      if (isSpeck(s, steps)) return;
      if (s.kind === 'cubic') data += `C${pair(s.c1)} ${pair(s.c2)} ${pair(s.to)}`;
      else if (!closing) data += `L${pair(s.to)}`;
    });
    if (closed) data += 'Z';
  }
  return data;
}
