// A delivered SVG as the proof sees it: its size, its groups and their path data, and what no cutter could follow.
import { readXml, type XmlElement, XmlFault } from '../../drawing/xml.ts';
import type { Affine } from '../../geometry/affine.ts';
import { LineBounds } from './line-bounds.ts';

/** The files of one piece, as text; one that is missing is left out. */
export interface PieceText {
  readonly stem: string;
  readonly cut?: string;
  readonly guide?: string;
  /** Cut files of its layers, where each has one of its own; `cut` is then no file. */
  readonly layers?: readonly { readonly stem: string; readonly cut: string }[];
}

export interface DeliveredPath {
  readonly id: string | undefined;
  readonly data: string;
}

export interface DeliveredGroup {
  readonly role: string;
  readonly layer: string | undefined;
  readonly paths: readonly DeliveredPath[];
}

export interface DeliveredFile {
  readonly name: string;
  /** Numbers of the view box: user units. */
  readonly units: { readonly across: number; readonly up: number };
  /** What one user unit is on paper, mm, as the file's own size says; 1 in every file of ours. */
  readonly perUnit: { readonly across: number; readonly up: number };
  readonly groups: readonly DeliveredGroup[];
  /** From its numbers to true mm, where it is made for a machine that is off; left out where they are the same. */
  readonly toTrue?: Affine;
  /** What is not plain paths in mm, one line each. */
  readonly faults: readonly string[];
}

/** mm to a unit of length of CSS; a bare number is in px (CSS Values and Units 4, 6.2: 96 px are an inch). */
const unitSize: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

function millimetres(text: string | undefined): number {
  const match = /^\s*(\d*\.?\d+(?:e[-+]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '');
  return match ? Number(match[1]) * (unitSize[(match[2] ?? '').toLowerCase()] ?? Number.NaN) : Number.NaN;
}

const plainElements = new Set(['svg', 'title', 'desc', 'g', 'path']);
const bending = ['transform', 'style', 'class', 'clip-path', 'mask', 'filter'];

/** What an element has that is more than a plain path. */
function elementFaults({ name, attributes, line }: XmlElement): string[] {
  const place = `line ${line}`;
  if (!plainElements.has(name)) return [`${place}: a ${name}, where only paths belong`];
  return bending
    .filter((attribute) => Object.hasOwn(attributes, attribute))
    .map((attribute) => `${place}: a ${name} with ${attribute}`);
}

interface OpenGroup {
  readonly role: string;
  readonly layer: string | undefined;
  readonly paths: DeliveredPath[];
}

/**
 * Read a delivered file. Never throws for what the file holds: a file that can't be read has that as its fault, and so has one of more
 * lines than are ever written, whose paths are then left out.
 */
export function readDelivered(text: string, name: string): DeliveredFile {
  const groups: OpenGroup[] = [];
  const faults: string[] = [];
  const open: (OpenGroup | undefined)[] = [];
  const bounds = new LineBounds();
  let past: string | undefined;
  let root: Readonly<Record<string, string>> = {};
  try {
    readXml(text, {
      open: (element, depth) => {
        const { attributes } = element;
        if (depth === 1) root = attributes;
        faults.push(...elementFaults(element));
        const group = openedGroup(element) ?? open.at(-1);
        if (group && group !== open.at(-1)) groups.push(group);
        open.push(group);
        if (element.name !== 'path') return;
        past ??= bounds.faultOf(attributes.d ?? '', areaOf(root));
        if (group) group.paths.push({ id: attributes.id, data: attributes.d ?? '' });
        else faults.push(`line ${element.line}: a path outside every group`);
      },
      close: () => {
        open.pop();
      },
    });
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    faults.push(`line ${fault.line}: ${fault.message}`);
  }
  if (past !== undefined) faults.push(past);
  return { name, ...sizeOf(root, faults), groups: past === undefined ? groups : [], faults };
}

/** Of the view box, square units; none is never too full. */
function areaOf({ viewBox = '' }: Readonly<Record<string, string>>): number {
  const [, , across = Number.NaN, up = Number.NaN] = viewBox.split(/[\s,]+/).map(Number);
  return across * up;
}

function openedGroup({ name, attributes }: XmlElement): OpenGroup | undefined {
  const role = attributes['data-role'];
  return name === 'g' && role !== undefined
    ? { role, layer: attributes['data-layer'], paths: [] }
    : undefined;
}

function sizeOf(
  root: Readonly<Record<string, string>>,
  faults: string[],
): Pick<DeliveredFile, 'units' | 'perUnit'> {
  const [left, top, across, up] = (root.viewBox ?? '').split(/[\s,]+/).map(Number);
  const size = { across: millimetres(root.width), up: millimetres(root.height) };
  if (across === undefined || up === undefined || !(across > 0 && up > 0)) {
    faults.push('no view box');
    return { units: { across: 0, up: 0 }, perUnit: { across: Number.NaN, up: Number.NaN } };
  }
  if (left !== 0 || top !== 0) faults.push('a view box that does not begin at 0 0');
  return { units: { across, up }, perUnit: { across: size.across / across, up: size.up / up } };
}

/** The groups of a role. */
export const groupsIn = (file: DeliveredFile, role: string): readonly DeliveredGroup[] =>
  file.groups.filter((group) => group.role === role);

/** The path of an id within a role. */
export const pathNamed = (file: DeliveredFile, role: string, id: string): DeliveredPath | undefined =>
  groupsIn(file, role)
    .flatMap(({ paths }) => paths)
    .find((path) => path.id === id);
