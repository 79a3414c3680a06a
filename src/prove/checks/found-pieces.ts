// The pieces that lie on sheets, each held against the file of its own.
import { type Affine, compose, inverse, movePoint, moveSegment } from '../../geometry/affine.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { signedArea } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { largest } from '../check.ts';
import { type DeliveredFile, groupsIn } from '../written/delivered-file.ts';
import { readPath } from '../written/path-reader.ts';
import { SegmentStarts } from '../written/segment-starts.ts';

/** A sheet as delivered, and how often it is to be cut. */
export interface DeliveredSheet {
  readonly file: DeliveredFile;
  readonly times: number;
}

const asIs: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Curves of a role of a file; what can't be read is not there, which its own checks say. */
export function curvesIn(
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

export const segmentsOf = (contours: readonly Contour[]): readonly Segment[] =>
  contours.flatMap(({ segments }) => segments);

export const layersIn = (file: DeliveredFile): ReadonlySet<string | undefined> =>
  new Set(groupsIn(file, 'artwork').map(({ layer }) => layer));

/** A layer of a piece as it is looked for on a sheet that has a layer of this name. */
export interface FoundLayer {
  readonly layer: string | undefined;
  /** How many segments it has. */
  readonly art: number;
  /** How far they are from those of the piece's own file, mm. */
  readonly off: number;
  /** Whether any of them is there. */
  readonly isThere: boolean;
}

/** A piece found on a sheet. */
export interface Found {
  readonly stem: string;
  readonly outline: Contour;
  readonly isMirrored: boolean;
  /** How far its outline is from that of its own file, mm. */
  readonly off: number;
  readonly layers: readonly FoundLayer[];
}

/** A sheet, and what was found on it. */
export interface LookedAt extends DeliveredSheet {
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
export function piecesOn(file: DeliveredFile, parts: ReadonlyMap<string, DeliveredFile>): Found[] {
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
export function withoutLaidElsewhere(sheets: readonly LookedAt[], batch: number): readonly LookedAt[] {
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
