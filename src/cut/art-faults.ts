// Everything that is wrong with artwork before the blade: its lines as drawn, and its film as it will be cut.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import type { Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { pointAt } from '../geometry/segment.ts';
import { sliverWidth } from '../geometry/tolerance.ts';
import { doubledLines } from './doubled-lines.ts';
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

/** Lines that edge an area. A stroke wide enough to be film is an area, however its line runs; one that is not was meant for an edge. */
export const edgeLines = (lines: readonly DrawnLine[], { minWidth }: CutLimits): readonly DrawnLine[] =>
  lines.filter(({ stroke }) => stroke === undefined || stroke < minWidth);

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
    ...doubles('doubled-line', lines, (a, b) => a.colour === b.colour),
    ...selfCrossings(lines, widthTolerance).flatMap((fault) => inLine('self-crossing', fault)),
    ...closeNodes(lines, limits.step).flatMap(({ count, ...fault }) =>
      inLine('close-nodes', fault).map((one) => ({ ...one, count })),
    ),
  ];
}

function doubles(
  rule: 'doubled-line' | 'layer-edges',
  lines: readonly DrawnLine[],
  isPair: (a: DrawnLine, b: DrawnLine) => boolean,
): DrawnFault[] {
  return doubledLines(lines, widthTolerance, isPair).flatMap(({ lines: [first, second], at, length }) => {
    const [other, line] = [lines[first], lines[second]];
    return line && other ? [{ rule, at, size: length, line, other }] : [];
  });
}

/** Edges of two layers that lie on one another: told once for any two layers, where they do so farthest. */
export function layerEdges(layers: readonly FilmLayer[]): DrawnFault[] {
  const lines = layers.flatMap(({ colour, shapes }) =>
    shapes.map(({ contours }): DrawnLine => ({ id: undefined, colour, contours })),
  );
  const farthest = new Map<string, DrawnFault>();
  for (const fault of doubles('layer-edges', lines, (a, b) => a.colour !== b.colour)) {
    const key = [fault.line.colour, fault.other?.colour].sort().join(' ');
    const known = farthest.get(key);
    if (!known || known.size < fault.size) farthest.set(key, fault);
  }
  return [...farthest.values()];
}
