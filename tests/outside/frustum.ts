// A frustum as the sources state one, laid flat by us.
import { signedArea } from '../../src/geometry/measure.ts';
import { type FlatWall, flatWall, sweep } from '../../src/unroll/flat-wall.ts';
import { outline, slantRadii, type Template, templateOf } from '../../src/unroll/template.ts';

export interface LaidFrustum {
  readonly wall: FlatWall;
  readonly template: Template;
  readonly slant: number;
  readonly innerRadius: number;
  readonly outerRadius: number;
  readonly sectorDeg: number;
  /** From the template's own outline. */
  readonly lateralArea: number;
}

/** A frustum of a foot diameter, a lip diameter and a slant length, in the source's own unit. */
export function laidBySlant(foot: number, lip: number, slant: number): LaidFrustum {
  const wall = flatWall((foot + lip) / 4, (lip - foot) / 2 / slant, slant / 2);
  const template = templateOf(wall, { band: { from: 0, to: slant }, trim: { lip: 0, foot: 0 }, overlap: 0 });
  const { inner, outer } = slantRadii(template);
  return {
    wall,
    template,
    slant,
    innerRadius: inner,
    outerRadius: outer,
    sectorDeg: (Math.abs(sweep(wall)) * 180) / Math.PI,
    lateralArea: Math.abs(signedArea(outline(template))),
  };
}

/** The same by vertical height. */
export const laidByHeight = (foot: number, lip: number, height: number): LaidFrustum =>
  laidBySlant(foot, lip, Math.hypot(height, (lip - foot) / 2));
