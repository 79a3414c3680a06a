// Do the sheets hold the very pieces that were proved: each as often as it is needed, none over another or off its sheet?
import { type Affine, compose, inverse, movePoint, moveSegment } from '../../geometry/affine.ts';
import { boxesMeet } from '../../geometry/box.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { signedArea, tightBox } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { clipPolygons } from '../../geometry/polygon-clip.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check, largest } from '../check.ts';
import { type DeliveredFile, groupsIn } from '../written/delivered-file.ts';
import { readPath } from '../written/path-reader.ts';
import { samplesOn } from '../written/samples.ts';
import { SegmentStarts } from '../written/segment-starts.ts';

/** What the sheets are to be. All mm. */
export interface AskedSheets {
  readonly across: number;
  /** Endless where it is a roll. */
  readonly up: number;
  readonly margin: number;
  readonly mirror: boolean;
  /** Vessels alike. */
  readonly batch: number;
}

/** A sheet as delivered, and how often it is to be cut. */
export interface DeliveredSheet {
  readonly file: DeliveredFile;
  readonly times: number;
}

const asIs: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Curves of a role of a file; what can't be read is not there, which its own checks say. */
function curvesIn(
  file: DeliveredFile,
  role: string,
  layers?: ReadonlySet<string | undefined>,
): readonly Contour[] {
  const groups = groupsIn(file, role).filter(({ layer }) => layers === undefined || layers.has(layer));
  return groups.flatMap(({ paths }) =>
    paths.flatMap(({ data }) => {
      try {
        return readPath(data, file.toTrue ?? asIs);
      } catch {
        return [];
      }
    }),
  );
}

const segmentsOf = (contours: readonly Contour[]): readonly Segment[] =>
  contours.flatMap(({ segments }) => segments);

const layersIn = (file: DeliveredFile): ReadonlySet<string | undefined> =>
  new Set(groupsIn(file, 'artwork').map(({ layer }) => layer));

/** A layer of a piece as it is looked for on a sheet that has a layer of this name. */
interface FoundLayer {
  readonly layer: string | undefined;
  /** How many segments it has. */
  readonly art: number;
  /** How far they are from those of the piece's own file, mm. */
  readonly off: number;
  /** Whether any of them is there. */
  readonly isThere: boolean;
}

/** A piece found on a sheet. */
interface Found {
  readonly stem: string;
  readonly outline: Contour;
  readonly isMirrored: boolean;
  /** How far its outline is from that of its own file, mm. */
  readonly off: number;
  readonly layers: readonly FoundLayer[];
}

/** A sheet, and what was found on it. */
interface LookedAt extends DeliveredSheet {
  readonly found: readonly Found[];
}

/** The frame of an outline: its origin at the first node, x towards the second; mirrored where it runs the other way. */
function frameOf(contour: Contour, mirrored: boolean): Affine {
  const [from, to] = [contour.segments[0]?.from, contour.segments[0]?.to];
  if (!from || !to) return asIs;
  const length = distance(from, to);
  const [a, b] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const side = mirrored ? -1 : 1;
  return { a, b, c: -b * side, d: a * side, e: from.x, f: from.y };
}

const turnsLeft = (contour: Contour): boolean => signedArea(contour) > 0;

/** The file that an outline's id names, before its copy's number. */
const stemOf = (id: string | undefined): string => (id ?? '').replace(/\.\d+(?:-\d+)?$/, '');

const isNumbered = (id: string | undefined): boolean => /\.\d+$/.test(id ?? '');

/** How far nodes are from their likes, one for one; those that have none count as far. */
function nodesOff(nodes: readonly Point[], wanted: readonly Point[]): number {
  if (nodes.length !== wanted.length) return Number.NaN;
  return largest(nodes.map((node, i) => distance(node, wanted[i] ?? { x: Number.NaN, y: 0 })));
}

/** The pieces of one sheet. */
function piecesOn(file: DeliveredFile, parts: ReadonlyMap<string, DeliveredFile>): Found[] {
  const layers = layersIn(file);
  const art = new SegmentStarts(segmentsOf(curvesIn(file, 'artwork')));
  return groupsIn(file, 'outline').flatMap(({ paths }) =>
    paths
      .filter(({ id }) => isNumbered(id))
      .flatMap(({ id, data }): Found[] => {
        const stem = stemOf(id);
        const part = parts.get(stem);
        const [outline] = curvesIn(
          { ...file, groups: [{ role: 'outline', layer: undefined, paths: [{ id, data }] }] },
          'outline',
        );
        const own = part && curvesIn(part, 'outline')[0];
        if (!outline) return [];
        if (!part || !own) return [{ stem, outline, isMirrored: false, off: Number.NaN, layers: [] }];
        const isMirrored = turnsLeft(outline) !== turnsLeft(own);
        const move = compose(inverse(frameOf(own, false)), frameOf(outline, isMirrored));
        const nodes = own.segments.map(({ from }) => movePoint(move, from));
        const off = nodesOff(
          nodes,
          outline.segments.map(({ from }) => from),
        );
        const ownLayers = [...layersIn(part)].filter((layer) => layers.has(layer));
        return [
          {
            stem,
            outline,
            isMirrored,
            off,
            layers: ownLayers.map((layer) => layerOn(art, part, layer, move)),
          },
        ];
      }),
  );
}

/** How near a line's like is looked for, mm. */
const reach = 5 * precision;

/** A layer of a piece's own file, moved to where the piece lies, held against the art of the sheet. */
function layerOn(
  art: SegmentStarts,
  part: DeliveredFile,
  layer: string | undefined,
  move: Affine,
): FoundLayer {
  const own = segmentsOf(curvesIn(part, 'artwork', new Set([layer])));
  const offs = own.map((segment) => art.nearest(moveSegment(move, segment), reach));
  return { layer, art: own.length, off: largest(offs), isThere: offs.some((apart) => apart <= reach) };
}

/**
 * Sheets without the layers that are not there, and that lie elsewhere as often as they are wanted: vessels of a list may have a layer of one
 * name in films of their own, so that a sheet has that of others.
 */
function withoutLaidElsewhere(sheets: readonly LookedAt[], batch: number): readonly LookedAt[] {
  const laid = new Map<string, number>();
  const keyOf = (stem: string, layer: string | undefined) => JSON.stringify([stem, layer]);
  for (const { found, times } of sheets)
    for (const { stem, layers } of found)
      for (const { layer, isThere } of layers) {
        const key = keyOf(stem, layer);
        if (isThere) laid.set(key, (laid.get(key) ?? 0) + times);
      }
  const isElsewhere = (stem: string, { layer, isThere }: FoundLayer) =>
    !isThere && (laid.get(keyOf(stem, layer)) ?? 0) >= batch;
  return sheets.map((sheet) => ({
    ...sheet,
    found: sheet.found.map((piece) => ({
      ...piece,
      layers: piece.layers.filter((layer) => !isElsewhere(piece.stem, layer)),
    })),
  }));
}

/** Grid units a mm, and mm² that are no overlap: what rounding of two borders side by side can come to. */
const gridPerMm = 1e4;
const leastOverlap = 0.01;

/** How many pairs of pieces of a sheet lie over one another. */
function overlaps(found: readonly Found[]): number {
  const rings = found.map(({ outline }) => ({
    box: tightBox([outline]),
    ring: samplesOn([outline]).map(({ x, y }) => ({
      x: Math.round(x * gridPerMm),
      y: Math.round(y * gridPerMm),
    })),
  }));
  return rings.reduce(
    (sum, one, i) =>
      sum +
      rings.slice(i + 1).filter((other) => {
        if (!boxesMeet(one.box, other.box)) return false;
        const common = clipPolygons('intersection', [one.ring], [other.ring], 'nonzero');
        const area = common.reduce((total, { outer }) => total + Math.abs(ringArea(outer)), 0);
        return area / gridPerMm ** 2 > leastOverlap;
      }).length,
    0,
  );
}

const ringArea = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + (p.x * q.y - p.y * q.x) / 2;
  }, 0);

/** How far pieces of a sheet are past the margin, and the file larger than the sheet, mm. */
function pastMargin({ units }: DeliveredFile, found: readonly Found[], { across, up, margin }: AskedSheets) {
  const box = tightBox(found.map(({ outline }) => outline));
  const long = Math.min(up, units.up);
  const past = [
    margin - box.minX,
    margin - box.minY,
    box.maxX - (across - margin),
    box.maxY - (long - margin),
  ];
  return Math.max(0, units.across - across, units.up - up, ...past);
}

const plainWrap = /wrap(?:-\w+)?$/;
const motif = /^(?:item|lettering)-\d+$/;

/** Whether a piece without art may be the paper that a vessel's motifs are laid by: those of a list have its folder before their names. */
function isTemplate(stem: string, parts: ReadonlyMap<string, DeliveredFile>): boolean {
  const folder = stem.replace(plainWrap, '');
  return (
    plainWrap.test(stem) &&
    [...parts.keys()].some((name) => name.startsWith(folder) && motif.test(name.slice(folder.length)))
  );
}

/** Rows of the sheets, whose pieces come from `parts`, by the stems of their files. */
export function sheetChecks(
  sheets: readonly DeliveredSheet[],
  parts: ReadonlyMap<string, DeliveredFile>,
  asked: AskedSheets,
): Check[] {
  const looked = withoutLaidElsewhere(
    sheets.map((sheet) => ({ ...sheet, found: piecesOn(sheet.file, parts) })),
    asked.batch,
  );
  const counts = [...parts.entries()].map(([stem, part]) => {
    // A piece lies on a sheet for each of its layers; one sheet holds several where they are one film.
    const own = layersIn(part);
    const laid = (isOne: (piece: Found) => boolean) =>
      looked.reduce(
        (sum, { found, times }) =>
          sum + times * found.filter((piece) => piece.stem === stem && isOne(piece)).length,
        0,
      );
    if (own.size === 0) {
      const all = laid(() => true);
      return all === 0 && isTemplate(stem, parts) ? 0 : Math.abs(all - asked.batch);
    }
    const each = [...own].map((layer) =>
      Math.abs(laid(({ layers }) => layers.some((one) => one.layer === layer)) - asked.batch),
    );
    const strange = laid(({ layers }) => layers.length === 0);
    return each.reduce((sum, count) => sum + count, strange);
  });
  const strangers = looked.map(({ file, found }) =>
    Math.abs(
      segmentsOf(curvesIn(file, 'artwork')).length -
        found.reduce((sum, { layers }) => sum + layers.reduce((all, { art }) => all + art, 0), 0),
    ),
  );
  const faults = looked.reduce((sum, { file }) => sum + file.faults.length, 0);
  const all = looked.flatMap(({ found }) => found);
  const count = (rule: string, value: number, says: string): Check =>
    atMost({ rule, value, limit: 0, unit: 'count', says });
  return [
    count('sheet-files', faults, 'things on the sheets that are not plain paths in mm'),
    count(
      'sheet-pieces',
      [...counts, ...strangers].reduce((sum, value) => sum + value, 0),
      'pieces, and lines of art, that the sheets have more or fewer than the batch takes',
    ),
    atMost({
      rule: 'sheet-lines',
      value: largest(all.flatMap(({ off, layers }) => [off, ...layers.map((layer) => layer.off)])),
      limit: precision,
      unit: 'mm',
      says: 'lines of a piece on its sheet off those of its own file',
    }),
    count(
      'sheet-mirror',
      all.filter(({ isMirrored }) => isMirrored !== asked.mirror).length,
      asked.mirror ? 'pieces that are not mirrored, as this film is to be' : 'pieces that are mirrored',
    ),
    count(
      'sheet-overlap',
      looked.reduce((sum, { found }) => sum + overlaps(found), 0),
      'pairs of pieces that lie over one another',
    ),
    atMost({
      rule: 'sheet-margin',
      value: largest(looked.map(({ file, found }) => pastMargin(file, found, asked))),
      limit: precision,
      unit: 'mm',
      says: 'pieces past the margin of their sheet',
    }),
  ];
}
