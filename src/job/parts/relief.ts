// The relief cuts of a piece, and what is told of them.
import { type ReliefField, reliefCuts } from '../../cut/films/relief.ts';
import { type Finding, note } from '../../finding.ts';
import { contourLength } from '../../geometry/arc-length.ts';
import type { Contour } from '../../geometry/contour.ts';
import { inMm } from '../../lengths/length.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import type { MakeInput } from '../make-input.ts';
import { typedAt } from '../typed/typed-at.ts';

export interface PieceRelief {
  readonly cuts: readonly Contour[];
  readonly findings: readonly Finding[];
}

/** None where the job asks for none, or where nothing is weeded of the piece. `name`: of a piece that is not the wrap. */
export function reliefOf(
  { job, jobFile }: Pick<MakeInput, 'job' | 'jobFile'>,
  field: ReliefField,
  layers: readonly WrapLayer[],
  name?: string,
): PieceRelief {
  const { relief, film } = job;
  if (!relief || layers.length === 0) return { cuts: [], findings: [] };
  const told = (says: string) => [
    note('relief', typedAt(jobFile, 'relief'), name === undefined ? says : `${name}: ${says}`),
  ];
  // Where one mask is cut another stays.
  if (film.use === 'mask' && layers.length > 1)
    return {
      cuts: [],
      findings: told(
        'no relief cuts are made in a mask of several layers: what is waste of one stays in another',
      ),
    };
  const cuts = reliefCuts({
    field,
    shapes: layers.flatMap(({ shapes }) => shapes),
    use: film.use,
    ...relief,
  });
  const length = cuts.reduce((sum, cut) => sum + contourLength(cut), 0);
  const says =
    cuts.length === 0
      ? `the waste is nowhere wide enough for strips of ${inMm(relief.every)}: no relief cuts`
      : `${cuts.length === 1 ? 'one relief cut' : `${cuts.length} relief cuts`}, ${(length / 1000).toFixed(2)} m, so that the waste lifts in strips about ${inMm(relief.every)} wide; none comes nearer than ${inMm(relief.clear)} to what stays: the last of it tears`;
  return { cuts, findings: told(says) };
}
