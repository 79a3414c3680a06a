// Writing a drawing as an SVG that a cutter takes: millimetres, plain paths, roles, nothing else.
import type { Drawing, DrawnGroup, DrawnPath, Role } from '../drawing/drawing.ts';
import { writePathData } from '../drawing/path-data.ts';

/** Line colours for the eye; a cutter goes by the roles. Ours: dark for the blade, cool for what guides. */
export const colours: Readonly<Record<Role, string>> = {
  outline: '#1c1c1c',
  artwork: '#1c1c1c',
  seam: '#8a2f6b',
  trim: '#2a6f4e',
  'flat-limit': '#b3541e',
  register: '#3a5a8c',
  note: '#4d4d4d',
};

/** Hairline that screens and printers still show, mm. */
export const lineWidth = 0.15;

/** Text as it may stand in an SVG: markup escaped, what XML can't hold left out. */
export const escapeXml = (text: string): string =>
  text
    .replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`)
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd]/gu, (c) => ((c.codePointAt(0) ?? 0) > 0xffff ? c : ''));

/** How strongly artwork is filled in guides and prints: lines over it must still show. */
export const artworkOpacity = 0.35;

const size = (mm: number): string => String(Math.round(mm * 1e4) / 1e4);

/** Words are for reading: a hundredth of a mm is plenty. */
const wordSteps = 100;

function pathText({ id, contours }: DrawnPath, role: Role): string {
  const name = id === undefined ? '' : ` id="${escapeXml(id)}"`;
  return `<path${name} d="${role === 'note' ? writePathData(contours, wordSteps) : writePathData(contours)}"/>`;
}

function groupText(group: DrawnGroup, filled: boolean): string {
  const paths = group.paths.map((path) => pathText(path, group.role)).join('\n');
  const layer = group.layer === undefined ? '' : ` data-layer="${escapeXml(group.layer)}"`;
  const paint =
    filled && group.colour !== undefined
      ? `fill="${escapeXml(group.colour)}" fill-opacity="${artworkOpacity}" fill-rule="evenodd"`
      : 'fill="none"';
  if (group.role === 'note' && filled && !group.lines)
    return `<g data-role="note" fill="${colours.note}">\n${paths}\n</g>\n`;
  const line = `stroke="${escapeXml(group.colour ?? colours[group.role])}" stroke-width="${lineWidth}"`;
  return `<g data-role="${group.role}"${layer} ${paint} ${line}>\n${paths}\n</g>\n`;
}

export interface WriteOptions {
  /** The file's title, for people who open it. */
  readonly title: string;
  /** Whether artwork is filled with its colour: for guides, never for what the blade follows. */
  readonly filled: boolean;
}

/** The text of an SVG file: width and height in mm, one user unit is 1 mm. Same drawing, same bytes. */
export function writeSvg(drawing: Drawing, { title, filled }: WriteOptions): string {
  const [width, height] = [size(drawing.width), size(drawing.height)];
  const groups = drawing.groups.filter(({ paths }) => paths.length > 0);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n` +
    `<title>${escapeXml(title)}</title>\n` +
    `${groups.map((group) => groupText(group, filled)).join('')}</svg>\n`
  );
}
