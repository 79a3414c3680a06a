// Film at ends that wind: laid on straight ends that enclose them, then cut off in the waste past the outline.
import type { Shape } from '../../geometry/contour.ts';
import { girthAt, toWall } from '../../unroll/flat-wall.ts';
import { grownTemplate, outline, sideTurns, type Template } from '../../unroll/template.ts';
import { cutOff } from '../lay/cut-off.ts';

/** Heights at which the sides are looked at. */
const heights = 400;

/** Room left to the sides where film counts as whole, mm: control points may lie past the curve, never within it. */
const room = 0.5;

/** Shapes as far as they lie on the piece with its run-off; those clear of its ends stay as they are. */
export function withinEnds(shapes: readonly Shape[], template: Template, runOff: number): readonly Shape[] {
  const { wall } = template;
  const grown = grownTemplate(template, runOff);
  const { from, to } = grown.piece;
  const sides = Array.from({ length: heights + 1 }, (_, i) =>
    sideTurns(grown, from + ((to - from) * i) / heights),
  );
  const beside = room / Math.min(girthAt(wall, from), girthAt(wall, to));
  const first = Math.max(...sides.map(([left]) => left)) + beside;
  const last = Math.min(...sides.map(([, right]) => right)) - beside;
  const isClear = ({ contours: [outer] }: Shape): boolean =>
    (outer?.segments ?? []).every((s) =>
      [s.from, s.to, ...(s.kind === 'cubic' ? [s.c1, s.c2] : [])].every((p) => {
        const { turn } = toWall(wall, p);
        return turn > first && turn < last;
      }),
    );
  const clear = shapes.filter(isClear);
  const near = shapes.filter((shape) => !isClear(shape));
  const border = { contours: [outline(grown)] };
  return [...clear, ...near.flatMap((shape) => cutOff([shape], border))];
}
