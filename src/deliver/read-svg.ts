// Reading a delivered SVG back as a drawing, in mm, so that it can be measured.
import { type Drawing, type DrawnGroup, type DrawnPath, type Role, roles } from '../drawing/drawing.ts';
import { parsePathData } from '../drawing/path-data.ts';
import { readXml, XmlFault, type XmlHandlers } from '../drawing/xml.ts';
import { Refused, stop } from '../finding.ts';
import type { Contour } from '../geometry/contour.ts';
import { keptContour } from '../geometry/kept-contour.ts';

const isRole = (text: string | undefined): text is Role => roles.some((role) => role === text);

interface OpenGroup {
  readonly role: Role;
  readonly layer: string | undefined;
  readonly colour: string | undefined;
  readonly lines: boolean;
  readonly like: string | undefined;
  readonly apart: boolean;
  readonly paths: DrawnPath[];
}

const millimetres = (text: string | undefined): number => {
  const match = /^(\d+(?:\.\d+)?)mm$/.exec(text ?? '');
  return match ? Number(match[1]) : Number.NaN;
};

/**
 * The drawing a delivered file holds. @throws Refused where it is not such a file: no size in mm, a view box that is
 * not in mm, or path data that can't be read. `only`: the roles whose paths are wanted; all if left out.
 */
export function readSvg(text: string, file: string, only?: readonly Role[]): Drawing {
  const groups: OpenGroup[] = [];
  let width = Number.NaN;
  let height = Number.NaN;
  let viewBox = '';
  const refuse = (says: string): never => {
    throw new Refused([stop('unreadable', { file }, says)]);
  };
  const handlers: XmlHandlers = {
    open: ({ name, attributes }, depth) => {
      if (depth === 1) {
        width = millimetres(attributes.width);
        height = millimetres(attributes.height);
        viewBox = attributes.viewBox ?? '';
      }
      const role = attributes['data-role'];
      if (name === 'g' && isRole(role))
        groups.push({
          role,
          layer: attributes['data-layer'],
          colour: attributes['data-colour'] ?? attributes.stroke,
          lines: role === 'note' && attributes.fill === 'none',
          like: attributes['data-like'],
          apart: attributes['data-apart'] === 'true',
          paths: [],
        });
      if (name !== 'path') return;
      const group = groups.at(-1);
      if (!group || (only && !only.includes(group.role))) return;
      group.paths.push({
        ...(attributes.id === undefined ? {} : { id: attributes.id }),
        contours: parsed(attributes.d ?? '', refuse),
      });
    },
  };
  readingXml(text, file, handlers);
  const [, , boxWidth, boxHeight] = viewBox.split(' ').map(Number);
  if (!(Math.abs((boxWidth ?? 0) - width) < 1e-9 && Math.abs((boxHeight ?? 0) - height) < 1e-9))
    refuse('is not in millimetres: width and height in mm must equal the view box');
  return { width, height, groups: groups.map(asGroup) };
}

/** The walk of a text, its faults told by file and place. */
function readingXml(text: string, file: string, handlers: XmlHandlers): void {
  try {
    readXml(text, handlers);
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    const { line, column, message } = fault;
    throw new Refused([stop('unreadable', { file, line, column }, `can't be read as SVG: ${message}`)]);
  }
}

function parsed(data: string, refuse: (says: string) => never): Contour[] {
  try {
    return parsePathData(data).map(keptContour);
  } catch (fault) {
    return refuse(`has ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

const asGroup = ({ role, layer, colour, lines, like, apart, paths }: OpenGroup): DrawnGroup => ({
  role,
  paths,
  ...(layer === undefined ? {} : { layer }),
  ...(lines ? { lines } : {}),
  ...(isRole(like) ? { like } : {}),
  ...(apart ? { apart } : {}),
  ...(colour === undefined || role !== 'artwork' ? {} : { colour }),
});
