// The paths of a normalised SVG as they were drawn, before any area is made of them: for checks of the lines themselves.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { parsePathData } from '../drawing/path-data.ts';
import { readXml, type XmlElement } from '../drawing/xml.ts';
import { type Affine, compose, determinant } from '../geometry/affine.ts';
import { isHidden, parseMatrix } from './svg-paint.ts';

/** Elements whose paths are not drawn where they stand. */
const undrawn: ReadonlySet<string> = new Set(['defs', 'clipPath', 'mask', 'pattern', 'marker', 'symbol']);

interface Level {
  readonly toMm: Affine;
  readonly drawn: boolean;
  readonly id: string | undefined;
}

const isPainted = (paint: string | undefined, opacity: string | undefined): paint is string =>
  paint !== undefined && paint !== 'none' && opacity !== '0';

function lineOf({ attributes }: XmlElement, { toMm, id }: Level): DrawnLine[] {
  if (isHidden(attributes)) return [];
  const fill = attributes.fill ?? '#000000';
  const { stroke } = attributes;
  const filled = isPainted(fill, attributes['fill-opacity']);
  const stroked = isPainted(stroke, attributes['stroke-opacity']);
  if (!filled && !stroked) return [];
  const width = Number(attributes['stroke-width'] ?? 1) * Math.sqrt(Math.abs(determinant(toMm)));
  return [
    {
      id: attributes.id ?? id,
      colour: filled ? fill : (stroke ?? fill),
      ...(filled ? {} : { stroke: width }),
      contours: parsePathData(attributes.d ?? '', toMm),
    },
  ];
}

/** The paths that a normalised SVG draws, in painting order, by `toMm` in mm. Clip paths are left aside. */
export function drawnLines(normalised: string, toMm: Affine): DrawnLine[] {
  const lines: DrawnLine[] = [];
  const levels: Level[] = [{ toMm, drawn: true, id: undefined }];
  readXml(normalised, {
    open: (element) => {
      const { name, attributes } = element;
      const outer = levels.at(-1) ?? { toMm, drawn: true, id: undefined };
      const own = parseMatrix(attributes.transform);
      const level = {
        toMm: own ? compose(own, outer.toMm) : outer.toMm,
        drawn: outer.drawn && !undrawn.has(name) && attributes.opacity !== '0',
        id: attributes.id ?? outer.id,
      };
      levels.push(level);
      if (name === 'path' && level.drawn) lines.push(...lineOf(element, level));
    },
    close: () => {
      levels.pop();
    },
  });
  return lines;
}
