// Does a mask stay as far from the decal as was asked, do its two ends meet on the wall, and does its window lie behind the decal?
import { moveContour } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { holdsPoint } from '../../geometry/inside.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked, AskedMask } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { readFiles } from '../written/cutter-file.ts';
import { groupsIn, type PieceText } from '../written/delivered-file.ts';
import { type ProvedPiece, placePiece, Reading } from '../written/piece.ts';
import { onward, rollUp } from '../written/rolled-cone.ts';
import { samplesOf, samplesOn } from '../written/samples.ts';

/** A piece that goes around as the wrap does, and the decal as its guide shows it. */
interface MaskPiece {
  readonly piece: ProvedPiece;
  readonly decal: readonly Contour[];
}

function pieceNamed(stem: string, asked: Asked, files: readonly PieceText[]): MaskPiece | undefined {
  const text = files.find((file) => file.stem === stem);
  const read = text && readFiles(text, asked.cutter);
  const around = { number: 0, turns: { from: 0, to: 1 }, isLowest: true, isHighest: true };
  const piece = read && placePiece(asked, { ...read, ...around }, asked.band.from);
  if (!piece || piece.faults.length > 0) return undefined;
  const shown = groupsIn(piece.guide, 'note').flatMap(({ paths }) =>
    paths.filter(({ id }) => id?.startsWith('decal-')),
  );
  const reading = new Reading();
  const decal = shown.flatMap(({ data }) => reading.path(piece.guide, data, piece.place));
  return decal.length > 0 && reading.faults.length === 0 ? { piece, decal } : undefined;
}

/** How far further than asked a decal is looked for, mm. */
const reach = 10;

/** How far the nearest place of a mask is from the stand-off it was to have, mm. */
function standOffMiss({ piece, decal }: MaskPiece, { standOff }: AskedMask): number {
  const finder = new NearestFinder(decal);
  const away = samplesOn(piece.outline).map((p) => finder.find(p, standOff + reach)?.distance ?? Infinity);
  return Math.abs(away.reduce((a, b) => Math.min(a, b), Infinity) - standOff);
}

/** Nearer than this to a level, a point is on it, mm. */
const onLevel = 0.05;

/** Turns by which a place at the finish is told. */
const hair = 1e-6;

/** What the edge misses itself by where the finish lies on the start, mm. */
function closingMiss({ piece: { outline, cone } }: MaskPiece, { covers }: AskedMask): number {
  const alongs = samplesOn(outline).map((p) => rollUp(cone, p).along);
  const end = alongs.reduce((a, b) => (covers === 'foot' ? Math.min(a, b) : Math.max(a, b)), alongs[0] ?? 0);
  const edge = outline.flatMap(({ segments }) =>
    segments.filter((s) => samplesOf(s).every((p) => Math.abs(rollUp(cone, p).along - end) > onLevel)),
  );
  const again = edge.flatMap((s) =>
    [s.from, ...samplesOf(s), s.to].filter((p) => rollUp(cone, p).turn >= 1 - hair),
  );
  // A mask in a hollow of the decal may reach neither end.
  const isBesideSeam = edge.length > 0 && samplesOn(outline).every((p) => rollUp(cone, p).turn > hair);
  if (again.length === 0) return isBesideSeam ? 0 : Number.NaN;
  const on = moveContour(onward(cone, 1), { closed: false, segments: edge });
  const finder = new NearestFinder([on]);
  return largest(again.map((p) => finder.find(p, reach)?.distance ?? reach));
}

/** How far the edge of the openings is from where it was to lie beside the decal's edge, mm. */
function windowMiss(window: MaskPiece | undefined, grow: number): number {
  if (!window) return Number.NaN;
  const { decal, piece } = window;
  const finder = new NearestFinder(decal);
  // Past the outline openings end in the waste.
  const edge = samplesOn(piece.layers.flatMap(({ shapes }) => shapes.flat())).filter((p) =>
    holdsPoint({ contours: piece.outline }, p),
  );
  if (edge.length === 0) return Number.NaN;
  return largest(
    edge.map((p) =>
      Math.abs((finder.find(p, Math.abs(grow) + reach)?.distance ?? Infinity) - Math.abs(grow)),
    ),
  );
}

/** Nothing where no mask was asked for. */
export function maskChecks(asked: Asked, files: readonly PieceText[]): Check[] {
  const { mask } = asked;
  if (!mask) return [];
  const found = pieceNamed('mask', asked, files);
  const row = (rule: string, value: number, says: string): Check =>
    atMost({ rule, value, limit: precision, unit: 'mm', says });
  return [
    row(
      'mask-stands-off',
      found ? standOffMiss(found, mask) : Number.NaN,
      'the nearest the mask comes to the decal, off what was asked',
    ),
    ...(asked.clear === undefined
      ? [
          row(
            'mask-closes',
            found ? closingMiss(found, mask) : Number.NaN,
            "the mask's edge off itself where its two ends lie on one another",
          ),
        ]
      : []),
    ...(mask.window === undefined
      ? []
      : [
          row(
            'window-follows',
            windowMiss(pieceNamed('window', asked, files), mask.window),
            'the edge of the window off its place by the edge of the decal',
          ),
        ]),
  ];
}
