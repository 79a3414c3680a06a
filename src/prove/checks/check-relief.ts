// Do relief cuts stay in the waste, and away from all that stays?
import type { Contour } from '../../geometry/contour.ts';
import { holdsPoint } from '../../geometry/inside.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { readFiles } from '../written/cutter-file.ts';
import { groupsIn, type PieceText } from '../written/delivered-file.ts';
import { asIs, type ProvedPiece, Reading } from '../written/piece.ts';
import { samplesOn } from '../written/samples.ts';

/** Places on a cut where it is looked at besides those that a curve has. */
const places = Array.from({ length: 201 }, (_, i) => i / 200);

/** Every so many of them, ends aside, must lie in the piece. */
const between = 20;

/** What of a piece is held against its relief cuts. */
type ReliefPiece = Pick<ProvedPiece, 'cut' | 'place' | 'outline'> & {
  readonly layers: readonly { readonly shapes: readonly (readonly Contour[])[] }[];
};

/** How much too near to an edge a piece's cuts come, mm; all of the clearance where one lies in what stays. */
function nearness(piece: ReliefPiece, { clear, use }: NonNullable<Asked['relief']>): number {
  const reading = new Reading();
  const cuts = reading.contours(piece.cut, groupsIn(piece.cut, 'relief'), piece.place);
  if (reading.faults.length > 0) return Number.NaN;
  const shapes = piece.layers.flatMap((layer) => layer.shapes).map((contours) => ({ contours }));
  const finder = new NearestFinder(shapes.flatMap(({ contours }) => contours));
  const outline = { contours: piece.outline };
  return largest(
    cuts.flatMap((cut) => {
      const along = cut.segments.flatMap(({ from, to }) =>
        places.map((t) => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t })),
      );
      const middle = along[Math.floor(along.length / 2)];
      const isArt = middle !== undefined && shapes.some((shape) => holdsPoint(shape, middle));
      const isOutside = along.some((p, i) => i % between === 1 && !holdsPoint(outline, p));
      const isOff = isArt !== (use === 'mask') || isOutside;
      return [
        isOff ? clear : 0,
        ...[...along, ...samplesOn([cut])].map((p) => clear - (finder.find(p, clear)?.distance ?? clear)),
      ];
    }),
  );
}

/** A motif that is cut apart, as its files have it. What can't be read of it is told by its own rows. */
function motifPiece(text: PieceText, { cutter }: Asked): ReliefPiece | undefined {
  const cut = readFiles(text, cutter)?.cut;
  if (!cut) return undefined;
  const reading = new Reading();
  const shapes = groupsIn(cut, 'artwork').flatMap(({ paths }) =>
    paths.map(({ data }) => reading.path(cut, data, asIs)),
  );
  const outline = reading.contours(cut, groupsIn(cut, 'outline'), asIs);
  return { cut, place: asIs, outline, layers: [{ shapes }] };
}

/** Nothing where none were asked for. */
export function reliefChecks(
  pieces: readonly ProvedPiece[],
  asked: Asked,
  others: readonly PieceText[],
): Check[] {
  const { relief, motifs = [] } = asked;
  if (!relief) return [];
  const apart = motifs.flatMap(({ name }) =>
    others.filter(({ stem }) => stem === name).flatMap((text) => motifPiece(text, asked) ?? []),
  );
  return [
    atMost({
      rule: 'relief-clear',
      value: largest([...pieces, ...apart].map((piece) => nearness(piece, relief))),
      limit: precision,
      unit: 'mm',
      says: 'relief cuts nearer to what stays than was asked',
    }),
  ];
}
