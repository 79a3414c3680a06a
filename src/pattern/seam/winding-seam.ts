// A seam through the gaps of a pattern: found, made smooth, and measured beside the best straight one.
import type { Shape } from '../../geometry/contour.ts';
import { tightestRadius } from '../../geometry/tightest.ts';
import { girthAt, toFlat } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import { type Winding, windingLine, windingTurn } from '../../unroll/winding.ts';
import { type CountedLine, type FilmCut, filmCut } from './film-crossed.ts';
import { windingField } from './winding-field.ts';
import { windingPath } from './winding-path.ts';

export interface WindingOptions {
  /** The piece with straight ends, and the film on it. */
  readonly template: Template;
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  /** Whether all of that film comes again around the wall, as a pattern without motifs does. */
  readonly isPeriodic: boolean;
  /** How many times the pattern is the same around. */
  readonly parts: number;
  /** How far from film the seam stays where it can, mm. */
  readonly clear: number;
  /** How far the finish goes on past the start at the least, mm. */
  readonly overlap: number;
}

/** What a knife and a hand follow well, mm: the line is planned to turn no more tightly. Common practice, no source. */
const knifeRadius = 3;

/** From one knot of the path to the next, mm up the wall at the most; and the rows of the field in it. */
const step = { most: 0.75, rows: 4 } as const;

/** The line leans from upright by up to 3 mm around to the mm up. */
const steepest = 3;

/** Of what does not come again half the wall about turn 0 is looked at, or of a narrow one all, mm. */
const leastLooked = 100;

/** In how many equal parts the wall is, of which one is looked at. */
function partsLooked({ template: { wall }, isPeriodic, parts }: WindingOptions): number {
  if (isPeriodic) return parts;
  return girthAt(wall, wall.reference) / 2 >= leastLooked ? 2 : 1;
}

/** The seam that crosses the least film: as near to turn 0 as the pattern has it. */
export function windingSeam(options: WindingOptions): Winding {
  const { template, layers, isPeriodic, clear, overlap } = options;
  const { wall, piece, band } = template;
  const parts = partsLooked(options);
  const knots = Math.ceil((piece.to - piece.from) / step.most);
  const up = (piece.to - piece.from) / knots;
  const [widest, narrowest] = [
    Math.max(girthAt(wall, piece.from), girthAt(wall, piece.to)),
    Math.min(girthAt(wall, band.from), girthAt(wall, band.to)),
  ];
  // A column is what the slope changes by from knot to knot at the most: it bounds the radius.
  const columns = Math.ceil((widest * knifeRadius) / (parts * up * up));
  const field = windingField({
    template,
    layers,
    isPeriodic,
    parts,
    clear,
    columns,
    rows: knots * step.rows,
  });
  const { columns: path } = windingPath(field, {
    rowsPerStep: step.rows,
    steepest: Math.floor((steepest * up) / (widest / (parts * columns))),
  });
  const found = path.map((column) => ((column + 0.5) / columns - 0.5) / parts);
  const mean = found.reduce((sum, turn) => sum + turn, 0) / found.length;
  const away = isPeriodic ? Math.round(mean * parts) / parts : 0;
  return {
    from: piece.from,
    step: up,
    turns: found.map((turn) => turn - away),
    lap: overlap / narrowest,
  };
}

/** A seam that goes straight up at a turn, and laps as another does. */
export const straightAt = (winding: Winding, turn: number): Winding => ({
  ...winding,
  turns: winding.turns.map(() => turn),
});

/** Past the run-off of the art, so that a line begins and ends outside of all film, mm. */
const outside = 1.5;

/** Steps in which a line is measured, mm up the wall. */
const measured = 0.1;

/** A line up the sheet, by its turn at each height; it counts within the finished band. */
function lineBy({ wall, piece, band }: Template, turnAt: (along: number) => number): CountedLine {
  const part = (from: number, to: number) => {
    const count = Math.max(1, Math.ceil((to - from) / measured));
    return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / count);
  };
  const below = part(piece.from - outside, band.from);
  const within = part(band.from, band.to);
  const above = part(band.to, piece.to + outside);
  const points = [...below, ...within, ...above, piece.to + outside].map((along) =>
    toFlat(wall, { turn: turnAt(along), along }),
  );
  return { points, first: below.length, last: below.length + within.length };
}

/** What a winding seam cuts of the film laid around it. */
export const windingCut = (
  template: Template,
  winding: Winding,
  layers: readonly { readonly shapes: readonly Shape[] }[],
): FilmCut =>
  filmCut(
    lineBy(template, (along) => windingTurn(winding, along)),
    layers,
  );

/** The least radius the seam turns on, mm. */
export const windingRadius = ({ wall, piece }: Template, winding: Winding): number =>
  tightestRadius(windingLine(wall, winding, piece.from, piece.to));

/** What a straight seam at a turn cuts. */
export const straightCut = (
  template: Template,
  turn: number,
  layers: readonly { readonly shapes: readonly Shape[] }[],
): FilmCut =>
  filmCut(
    lineBy(template, () => turn),
    layers,
  );
