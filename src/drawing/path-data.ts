// SVG path data, read and written. Adapter of svgpath (MIT) for reading.
import svgPath from 'svgpath';
import { type Affine, moveContour } from '../geometry/affine.ts';
import { type Contour, cubic, line, type Segment } from '../geometry/contour.ts';
import { distance, type Point } from '../geometry/point.ts';
import { type PlainPath, plainPath } from './plain-path.ts';

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
export const pathDataFault = (data: string): string | undefined =>
  plainPath(data, absurd) ? undefined : faultOf(svgPath(data));

/** Path data that can't be read. */
export class PathFault extends Error {}

/** Contours of path data, moved by `m` if given. Arcs and quadratics become cubics. @throws PathFault where it has a fault. */
export function parsePathData(data: string, m?: Affine): Contour[] {
  const plain = plainPath(data, absurd);
  const contours = (plain && drawnContours(plain)) ?? anyContours(data);
  return m ? contours.map((contour) => moveContour(m, contour)) : contours;
}

/** Contours of path data of any kind, by the library. */
function anyContours(data: string): Contour[] {
  const path = svgPath(data);
  const fault = faultOf(path);
  if (fault !== undefined) throw new PathFault(`path data: ${fault}`);
  const commands: string[] = [];
  const numbers: number[] = [];
  path
    .abs()
    .unarc()
    .unshort()
    .abs()
    .iterate(([command, ...values]) => {
      commands.push(command);
      numbers.push(...(values as number[]));
    });
  return drawnContours({ commands, numbers }) ?? [];
}

/** The contours of commands that all are absolute, with no short forms; undefined where one is not. */
function drawnContours({ commands, numbers }: PlainPath): Contour[] | undefined {
  const contours: Contour[] = [];
  let segments: Segment[] = [];
  let start: Point = { x: 0, y: 0 };
  let at = start;
  let next = 0;
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
  const number = (): number => numbers[next++] ?? 0;
  const pair = (): Point => ({ x: number(), y: number() });
  for (const command of commands) {
    switch (command) {
      case 'M':
        finish(false);
        start = pair();
        at = start;
        break;
      case 'L':
        draw(line(at, pair()));
        break;
      case 'H':
        draw(line(at, { x: number(), y: at.y }));
        break;
      case 'V':
        draw(line(at, { x: at.x, y: number() }));
        break;
      case 'C':
        draw(cubic(at, pair(), pair(), pair()));
        break;
      case 'Q':
        draw(raised(at, pair(), pair()));
        break;
      case 'Z':
      case 'z':
        finish(true);
        break;
      default:
        return undefined;
    }
  }
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

/** The lines of a contour without specks; a closed one still ends where it begins. */
function withoutSpecks({ segments, closed }: Contour, steps: number): readonly Segment[] {
  const kept = segments.filter((s) => !isSpeck(s, steps));
  const [first, last] = [segments[0], kept.at(-1)];
  if (!closed || !first || !last || kept.length === segments.length) return kept;
  return [...kept.slice(0, -1), { ...last, to: first.from }];
}

/**
 * Path data for contours: absolute M, L, C and Z only, to `steps` per mm. `asRead`: they were read from such data, so that every
 * line stays, however a piece is turned; else specks are left out.
 */
export function writePathData(
  contours: readonly Contour[],
  steps = fine,
  { asRead = false }: { readonly asRead?: boolean } = {},
): string {
  const number = (value: number): string => decimal(value, steps);
  const pair = (p: Point): string => `${number(p.x)} ${number(p.y)}`;
  let data = '';
  for (const contour of contours) {
    const { closed } = contour;
    const [first] = contour.segments;
    if (!first) continue;
    const segments = asRead ? contour.segments : withoutSpecks(contour, steps);
    data += `M${pair(first.from)}`;
    segments.forEach((s, i) => {
      const closing = closed && i === segments.length - 1;
      if (s.kind === 'cubic') data += `C${pair(s.c1)} ${pair(s.c2)} ${pair(s.to)}`;
      else if (!closing) data += `L${pair(s.to)}`;
    });
    if (closed) data += 'Z';
  }
  return data;
}
