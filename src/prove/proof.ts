// The proof: delivered files rolled back onto the blank and measured. Each check is a file of its own.
import type { Contour } from '../geometry/contour.ts';
import { NearestFinder } from '../geometry/nearest.ts';
import type { Asked } from './asked.ts';
import { atMost, type Check, largest } from './check.ts';
import { coverChecks } from './check-cover.ts';
import { doubledCheck, doubledLines } from './check-doubled.ts';
import { edgeChecks } from './check-edges.ts';
import { fileChecks } from './check-file.ts';
import { limitChecks } from './check-limits.ts';
import { registerChecks } from './check-register.ts';
import { partsFound, repeatCheck, repeatMiss } from './check-repeats.ts';
import { sameChecks } from './check-same.ts';
import { scaleCheck } from './check-scale.ts';
import { readDelivered } from './delivered-file.ts';
import { type ProvedPiece, placePiece } from './piece.ts';
import { type SeamGap, seamChecks, seamGap, worseGap } from './seam-gap.ts';

export interface Proof {
  readonly pass: boolean;
  readonly checks: readonly Check[];
  /** What the two ends of the art miss each other by; where there is art and a seam. */
  readonly seamGap?: SeamGap;
}

/** The files of one piece, as text; one that is missing is left out. */
export interface PieceText {
  readonly stem: string;
  readonly cut?: string;
  readonly guide?: string;
}

/** A layer as the checks of lines want it. */
interface Layer {
  readonly piece: ProvedPiece;
  readonly contours: readonly Contour[];
  readonly finder: NearestFinder;
}

/** The pieces, from the foot up, each placed where the one below ends. */
function placed(asked: Asked, files: readonly PieceText[]): ProvedPiece[] {
  let from = asked.band.from;
  return files.flatMap(({ stem, cut, guide }, i) => {
    if (cut === undefined || guide === undefined) return [];
    const piece = placePiece(
      asked,
      {
        number: i + 1,
        cut: readDelivered(cut, `${stem}.cut.svg`),
        guide: readDelivered(guide, `${stem}.guide.svg`),
        isLowest: i === 0,
        isHighest: i === files.length - 1,
      },
      from,
    );
    if (piece) from = piece.band.to;
    return piece ?? [];
  });
}

/** How many pieces lack a file, or a guide that tells where it lies on the wall. */
const missingCheck = (files: readonly PieceText[], pieces: readonly ProvedPiece[]): Check =>
  atMost({
    rule: 'files',
    value: files.length === 0 ? 1 : files.length - pieces.length,
    limit: 0,
    unit: 'count',
    says: 'pieces without a cut file and a guide whose seam lines can be read',
  });

/** Hold the files of all pieces, from the foot up, against what the job asked for. */
export function proofOf(asked: Asked, files: readonly PieceText[]): Proof {
  const pieces = placed(asked, files);
  const missing = missingCheck(files, pieces);
  if (pieces.length === 0) return { pass: false, checks: [missing] };
  const layers = pieces.flatMap((piece) =>
    piece.layers.map(({ shapes }): Layer => {
      const contours = shapes.flat();
      return { piece, contours, finder: new NearestFinder(contours) };
    }),
  );
  const gap = gapOf(asked, pieces, layers);
  const checks = [
    missing,
    ...fileChecks(pieces),
    scaleCheck(pieces, asked.wall.kind === 'straight'),
    ...sameChecks(pieces),
    ...edgeChecks(pieces, asked),
    ...coverChecks(pieces, asked),
    ...(gap ? seamChecks(gap) : []),
    ...patternChecks(asked, layers),
    ...registerChecks(pieces, asked),
    ...limitChecks(pieces, asked),
  ];
  return { pass: checks.every(({ pass }) => pass), checks, ...(gap ? { seamGap: gap } : {}) };
}

/** The worst gap of the pieces; undefined without art, and where a handle keeps the ends apart. */
function gapOf(
  { clear }: Asked,
  pieces: readonly ProvedPiece[],
  layers: readonly Layer[],
): SeamGap | undefined {
  if (clear !== undefined || layers.length === 0) return undefined;
  return pieces
    .map((piece) =>
      seamGap(
        piece,
        layers.filter((layer) => layer.piece === piece),
      ),
    )
    .reduce(worseGap);
}

/** In how many equal parts the pattern goes around: as it is known, or else as the files show. */
const partsOf = ({ equalParts, around = 1 }: Asked, layers: readonly Layer[], overlap: number): number =>
  equalParts ?? partsFound(layers, { around, overlap });

function patternChecks(asked: Asked, layers: readonly Layer[]): Check[] {
  if (layers.length === 0) return [];
  const overlap = asked.clear === undefined ? asked.overlap : 0;
  const equalParts = partsOf(asked, layers, overlap);
  const doubled = layers.map(({ contours, finder }) => doubledLines(contours, finder));
  const misses = layers.map((layer) => repeatMiss(layer.piece, layer, { equalParts, overlap }));
  return [
    repeatCheck(largest(misses), equalParts),
    doubledCheck(doubled.reduce((sum, count) => sum + count, 0)),
  ];
}
