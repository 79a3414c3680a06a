// Writing a drawing as an SVG that a cutter takes: millimetres, plain paths, roles, nothing else.
import type { Drawing, DrawnGroup, DrawnPath, Role } from '../drawing/drawing.ts';
import { writePathData } from '../drawing/path-data.ts';
import { seenOnPaper } from '../drawing/seen-on-paper.ts';

/** Line colours for the eye; a cutter goes by the roles. Ours: dark for the blade, cool for what guides. */
export const colours: Readonly<Record<Role, string>> = {
  outline: '#1c1c1c',
  artwork: '#1c1c1c',
  relief: '#1c1c1c',
  seam: '#8a2f6b',
  trim: '#2a6f4e',
  'flat-limit': '#b3541e',
  register: '#3a5a8c',
  note: '#4d4d4d',
};

/**
 * How lines of a guide are dashed, mm, so that their kind shows without colour: dash, gap and so on, and where in that
 * the line begins. A finished edge that is also a flat limit has the dots of the one in the gaps of the other.
 */
export const dashes: Readonly<
  Partial<Record<Role, { readonly pattern: readonly number[]; readonly from: number }>>
> = {
  relief: { pattern: [1.2, 0.8], from: 0 },
  seam: { pattern: [6, 1.2, 1, 1.2], from: 0 },
  trim: { pattern: [4, 2], from: 0 },
  'flat-limit': { pattern: [0.8, 2.2], from: 1.4 },
  note: { pattern: [2.4, 0.8, 0.5, 0.8, 0.5, 0.8], from: 0 },
};

/** The role whose lines these are drawn like: their own, but for samples. */
export const lookOf = ({ role, like }: DrawnGroup): Role => like ?? role;

/** Its own colour is told beside it where that would not be seen. */
const strokeText = (colour: string): string => {
  const seen = seenOnPaper(colour);
  return `stroke="${escapeXml(seen)}"${seen === colour ? '' : ` data-colour="${escapeXml(colour)}"`}`;
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

/**
 * Steps per mm of roles that are written otherwise than the rest. Words are for reading: a hundredth of a mm is plenty. By a seam line a whole
 * piece is laid true: of a band 1.5 mm high that line is as long, and what rounding turns it by is a hundred times as much across the piece.
 */
const steps: Readonly<Partial<Record<Role, number>>> = { note: 100, seam: 1e7 };

/** Notes that are lines are measured by, as the outline of a decal that a window follows. */
const stepsOf = ({ role, lines }: DrawnGroup): number | undefined => (lines ? undefined : steps[role]);

function pathText({ id, contours }: DrawnPath, fineness: number | undefined, asRead: boolean): string {
  const name = id === undefined ? '' : ` id="${escapeXml(id)}"`;
  return `<path${name} d="${writePathData(contours, fineness, { asRead })}"/>`;
}

function dashText(group: DrawnGroup): string {
  const dash = dashes[lookOf(group)];
  if (!dash) return '';
  const start = dash.from === 0 ? '' : ` stroke-dashoffset="${dash.from}"`;
  return ` stroke-dasharray="${dash.pattern.join(' ')}"${start}`;
}

const pathsText = (group: DrawnGroup, asRead: boolean): string =>
  group.paths.map((path) => pathText(path, stepsOf(group), asRead)).join('\n');

function groupText(group: DrawnGroup, paths: string, filled: boolean): string {
  const layer = group.layer === undefined ? '' : ` data-layer="${escapeXml(group.layer)}"`;
  const paint =
    filled && group.colour !== undefined
      ? `fill="${escapeXml(group.colour)}" fill-opacity="${artworkOpacity}" fill-rule="evenodd"`
      : 'fill="none"';
  const like = group.like === undefined ? '' : ` data-like="${group.like}"`;
  const about = `${layer}${like}${group.apart ? ' data-apart="true"' : ''}`;
  if (group.role === 'note' && filled && !group.lines)
    return `<g data-role="note"${about} fill="${colours.note}">\n${paths}\n</g>\n`;
  const colour = group.colour ?? colours[lookOf(group)];
  const line = `${strokeText(colour)} stroke-width="${lineWidth}"${filled ? dashText(group) : ''}`;
  return `<g data-role="${group.role}"${about} ${paint} ${line}>\n${paths}\n</g>\n`;
}

export interface WriteOptions {
  /** The file's title, for people who open it. */
  readonly title: string;
  /** Whether artwork is filled with its colour: for guides, never for what the blade follows. */
  readonly filled: boolean;
  /** Whether its lines were read from such a file: then every one of them is written again. */
  readonly asRead?: boolean;
}

/** The lines of groups as text, once they were written. */
export type WrittenGroups = Map<DrawnGroup, string>;

/**
 * The text of an SVG file: width and height in mm, one user unit is 1 mm. Same drawing, same bytes. `written`: of groups that another
 * drawing has too the lines are written once, where both are given the same.
 */
export function writeSvg(
  drawing: Drawing,
  { title, filled, asRead = false }: WriteOptions,
  written: WrittenGroups = new Map(),
): string {
  const textOf = (group: DrawnGroup): string => {
    const paths = written.get(group) ?? pathsText(group, asRead);
    written.set(group, paths);
    return groupText(group, paths, filled);
  };
  const [width, height] = [size(drawing.width), size(drawing.height)];
  const groups = drawing.groups.filter(({ paths }) => paths.length > 0);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n` +
    `<title>${escapeXml(title)}</title>\n` +
    `${groups.map(textOf).join('')}</svg>\n`
  );
}
