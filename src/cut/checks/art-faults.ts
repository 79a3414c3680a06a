// Everything that is wrong with artwork before the blade: its lines as drawn, and its film as it will be cut.
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { contourLength } from '../../geometry/arc-length.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { signedArea } from '../../geometry/measure.ts';
import { cross, type Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';
import { precision, sliverWidth } from '../../geometry/tolerance.ts';
import { type DoublingOptions, doubledLines } from './doubled-lines.ts';
import { type FilmFault, filmFaults } from './film-faults.ts';
import type { CutLimits } from './limits.ts';
import { closeNodes, openLines, selfCrossings } from './line-faults.ts';

export interface FilmLayer {
  readonly name: string;
  readonly colour: string;
  /** Areas that overlap nowhere. */
  readonly shapes: readonly Shape[];
}

/** A fault of drawn lines. */
export interface DrawnFault {
  readonly rule:
    | 'stroke-without-area'
    | 'open-line'
    | 'doubled-line'
    | 'self-crossing'
    | 'close-nodes'
    | 'layer-edges';
  readonly at: Point;
  /** mm between ends, of doubling, between nodes, or of a stroke's width; of crossings, how many. */
  readonly size: number;
  readonly line: DrawnLine;
  /** The line that it runs along. */
  readonly other?: DrawnLine;
  /** Of an open line: mm to the nearest end of another. */
  readonly nearest?: number;
  /** Of close nodes: how many. */
  readonly count?: number;
  /** How far apart lines may lie that were taken for one, mm. */
  readonly apart?: number;
}

export interface LayerFault extends FilmFault {
  readonly layer: string;
}

/** Sagitta of chords where widths are measured, mm: widths are right to twice that. */
export const widthTolerance = 0.002;

export const layerFaults = (layers: readonly FilmLayer[], limits: CutLimits): LayerFault[] =>
  layers.flatMap(({ name, shapes }) =>
    filmFaults(shapes, { limits, tolerance: widthTolerance }).map((fault) => ({ ...fault, layer: name })),
  );

/** Lines are drawn this wide, 1 pt, where a blade is to follow them; wider ones are drawn to be seen, mm. Common practice, no source. */
const widestEdge = 25.4 / 72;

/** Lines that edge an area: a stroke wide enough to be seen as one is an area of its own, however its line runs. */
export const edgeLines = (lines: readonly DrawnLine[], { minWidth }: CutLimits): readonly DrawnLine[] =>
  lines.filter(({ stroke, contours }) =>
    stroke === undefined ? contours.some(fillsSomething) : stroke < Math.min(minWidth, widestEdge),
  );

/** Whether an area is filled where a line without an area is only there to be stroked. */
function fillsSomething(contour: Contour): boolean {
  const [first, last] = [contour.segments[0], contour.segments.at(-1)];
  if (contour.closed || !first || !last) return contour.closed;
  const area = Math.abs(signedArea(contour) + cross(last.to, first.from) / 2);
  return area > sliverWidth * contourLength(contour);
}

/** A stroke thinner than what edges are told apart by was meant for an edge, and is no area. */
const isHairline = ({ stroke }: DrawnLine): boolean => stroke !== undefined && stroke < sliverWidth;

function hairlineFault(line: DrawnLine): DrawnFault[] {
  const [first] = line.contours[0]?.segments ?? [];
  return first
    ? [{ rule: 'stroke-without-area', at: pointAt(first, 0.5), size: line.stroke ?? 0, line }]
    : [];
}

/** The faults of lines as they were drawn. */
export function drawnFaults(drawn: readonly DrawnLine[], limits: CutLimits): DrawnFault[] {
  const lines = edgeLines(drawn, limits);
  const lineAt = (i: number): DrawnLine[] => lines.slice(i, i + 1);
  const inLine = (rule: DrawnFault['rule'], fault: { line: number; at: Point; size: number }): DrawnFault[] =>
    lineAt(fault.line).map((line) => ({ rule, at: fault.at, size: fault.size, line }));
  return [
    ...drawn.filter(isHairline).flatMap(hairlineFault),
    ...openLines(lines).flatMap(({ nearest, ...fault }) =>
      inLine('open-line', fault).map((one) => ({ ...one, ...(nearest === undefined ? {} : { nearest }) })),
    ),
    ...doubles('doubled-line', lines, { isPair: (a, b) => a.colour === b.colour }),
    ...selfCrossings(lines, widthTolerance).flatMap((fault) => inLine('self-crossing', fault)),
    ...closeNodes(lines, limits.step).flatMap(({ count, ...fault }) =>
      inLine('close-nodes', fault).map((one) => ({ ...one, count })),
    ),
  ];
}

function doubles(
  rule: 'doubled-line' | 'layer-edges',
  lines: readonly DrawnLine[],
  options: Omit<DoublingOptions, 'tolerance'>,
): DrawnFault[] {
  const found = doubledLines(lines, { tolerance: widthTolerance, ...options });
  return found.flatMap(({ lines: [first, second], at, length }) => {
    const [other, line] = [lines[first], lines[second]];
    return line && other ? [{ rule, at, size: length, line, other, apart: options.apart ?? precision }] : [];
  });
}

/** Edges of two layers this near each other are told, mm: no hand lays film as closely. Common practice, no source. */
const layersNear = 0.1;

/** Edges of two layers that lie on one another, or all but: told once for any two layers, where they do so farthest. */
export function layerEdges(layers: readonly FilmLayer[]): DrawnFault[] {
  if (new Set(layers.map(({ colour }) => colour)).size < 2) return [];
  const lines = layers.flatMap(({ colour, shapes }) =>
    shapes.map(({ contours }): DrawnLine => ({ id: undefined, colour, contours })),
  );
  const isPair = (a: DrawnLine, b: DrawnLine) => a.colour !== b.colour;
  const farthest = new Map<string, DrawnFault>();
  // Those that lie on one another are told as that.
  for (const apart of [precision, layersNear])
    for (const fault of doubles('layer-edges', lines, { isPair, apart })) {
      const key = [fault.line.colour, fault.other?.colour].sort().join(' ');
      const known = farthest.get(key);
      if (!known || (known.apart === apart && known.size < fault.size)) farthest.set(key, fault);
    }
  return [...farthest.values()];
}
