// Are the cover strips as wide as they were asked for, as long as the seam, and arcs where they lie along a level joint?
import { precision } from '../../geometry/tolerance.ts';
import type { Asked } from '../asked.ts';
import { askedRadius } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import type { DeliveredFile } from '../written/delivered-file.ts';
import { layOnLine, type ProvedPiece, placePiece, straightLine } from '../written/piece.ts';
import { outlineOff } from './check-edges.ts';
import { fileChecks } from './check-file.ts';
import { misfits } from './check-limits.ts';
import { sameChecks } from './check-same.ts';

/** A strip's two files. */
export interface StripFiles {
  readonly cut: DeliveredFile;
  readonly guide: DeliveredFile;
}

export interface StripsAsked {
  readonly asked: Asked;
  readonly strip: NonNullable<Asked['strip']>;
  /** How many stand up the wall: over the seam one, or none. */
  readonly upright: number;
  /** Heights of the level ones, from the foot up. */
  readonly joints: readonly number[];
  /** What the rules are named by. */
  readonly called: 'strip' | 'cover';
}

/** What of a job holds for its strips: they lie on the film, meet edge to edge, and have no trims but the piece's own. */
const askedOfStrip = ({ asked, strip }: StripsAsked): Asked => ({
  ...asked,
  wall: strip.wall,
  overlap: 0,
  before: 0,
});

/** The strip over the seam: drawn about the line it covers. */
function seamStrip({ asked, strip }: StripsAsked, { cut, guide }: StripFiles): ProvedPiece | undefined {
  const line = straightLine(guide, 'seam-line');
  if (!line) return undefined;
  const { trim } = asked;
  const { wall, width, band } = strip;
  const cone = {
    from: band.from,
    radius: askedRadius(wall, band.from),
    // Up a wall that bends it lies as on a cylinder, its ends cut square.
    sine: wall.kind === 'straight' ? wall.sine : 0,
    middle: 0,
  };
  const half = width / 2;
  return layOnLine({ number: 0, cut, guide }, line, {
    cone,
    band,
    trim,
    // Both of its sides stand off the one line that it covers.
    turns: { from: 0, to: 0 },
    before: half,
    overlap: half,
    beside: { start: 0, finish: 0 },
    shift: { x: 0, y: 0 },
  });
}

/** The strip over a joint: a narrow wrap of its own. */
function jointStrip(wanted: StripsAsked, files: StripFiles, along: number) {
  const half = wanted.strip.width / 2;
  const middle = wanted.strip.fromFilm(along);
  const band = { from: middle - half, to: middle + half };
  const asked = { ...askedOfStrip(wanted), band, trim: { lip: 0, foot: 0 } };
  return placePiece(
    asked,
    { ...files, number: 0, turns: { from: 0, to: 1 }, isLowest: true, isHighest: true },
    band.from,
  );
}

/** Those up the wall come first; then the level ones from the foot up. */
export function stripChecks(wanted: StripsAsked, files: readonly StripFiles[]): Check[] {
  const ofSeam = files.slice(0, wanted.upright);
  const ofJoints = files.slice(ofSeam.length);
  const arcs = ofJoints.flatMap((file, i) => jointStrip(wanted, file, wanted.joints[i] ?? Number.NaN) ?? []);
  const strips = [...ofSeam.flatMap((file) => seamStrip(wanted, file) ?? []), ...arcs];
  const count = wanted.joints.length + wanted.upright;
  const faults = [...fileChecks(strips), ...sameChecks(strips)].filter(({ pass }) => !pass);
  const asked = askedOfStrip(wanted);
  const fits = wanted.strip.wall.kind === 'bent' ? arcs.flatMap((arc) => misfits(arc, asked)) : [];
  return [
    atMost({
      rule: `${wanted.called}-files`,
      value: Math.abs(count - strips.length) + faults.length,
      limit: 0,
      unit: 'count',
      says: `cover strips missing, or whose files can't be read${faults[0] ? `, or have ${faults[0].says}` : ''}`,
    }),
    atMost({
      rule: `${wanted.called}-outline`,
      value: largest([...strips.map(outlineOff), ...fits]),
      limit: precision,
      unit: 'mm',
      says: 'outline of a cover strip off the one that lies half on either side of what it covers',
    }),
  ];
}
