// A mask as a stencil to be used again: nothing of it falls out, for its islands are tied.
import { bridgedShapes } from '../../cut/mend/bridges.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import type { Affine } from '../../geometry/affine.ts';
import { inMm } from '../../lengths/length.ts';
import { layOut } from '../../pattern/lattice/closing.ts';
import { motifsOf } from '../../pattern/lay/motifs.ts';
import { periodOfLayer } from '../../pattern/period/period.ts';
import { workedTile } from '../../pattern/period/worked-tile.ts';
import { layPeriod } from '../../pattern/tile/cell.ts';
import type { PatternPlan } from '../closing/pattern-plan.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

type StencilJob = Pick<Job, 'stencil' | 'film'>;

/** How wide bridges are, mm: as asked, or the least that the film can stand. */
const bridgeOf = ({ stencil, film }: StencilJob): number => stencil?.bridge ?? film.minWidth;

/** @throws Refused where a decal is to be a stencil, or bridges would have no width. */
export function refuseStencil(job: StencilJob, file: TypedIn): void {
  if (!job.stencil) return;
  const where = typedAt(file, 'stencil');
  if (job.film.use !== 'mask')
    throw new Refused([
      stop('stencil', where, 'is for a mask; give the film "use": "mask", or leave it out'),
    ]);
  if (bridgeOf(job) <= 0)
    throw new Refused([
      stop('stencil', where, 'has bridges of no width, for film.minWidth is 0; give "bridge"'),
    ]);
}

/** @throws Refused where openings hang together all around: islands tied in one period would part them in the next. */
function refuseNets(
  { tile, lattice, toSize }: Pick<PatternPlan, 'tile' | 'lattice'> & { readonly toSize: Affine },
  file: TypedIn,
): void {
  const periods = tile.layers.map((layer) => layPeriod(periodOfLayer(layer, tile, lattice), lattice, toSize));
  if (motifsOf(periods, 0).nets.every(({ size }) => size === 0)) return;
  const says =
    'can not be tied here: the openings of this pattern hang together all around, in a net; use artwork whose motifs stand apart, or its negative';
  throw new Refused([stop('stencil-net', typedAt(file, 'stencil'), says)]);
}

/** A pattern's tile with bridges: on a taper as wide as asked where the wall is narrowest. */
export function withBridges(
  plan: PatternPlan,
  job: StencilJob,
  { girth, ends }: PatternGround,
  file: TypedIn,
): PatternPlan {
  if (!job.stencil) return plan;
  const { tile, lattice, closing, lay } = plan;
  const isRigid = lay === 'rigid';
  const size = isRigid ? { ...closing, scaleAcross: 1, scaleUp: 1 } : closing;
  const toSize = layOut(size, tile.height);
  refuseNets({ tile, lattice, toSize }, file);
  const width = bridgeOf(job) * (isRigid ? 1 : Math.max(1, girth / Math.min(ends.foot, ends.lip)));
  return {
    ...plan,
    tile: workedTile(tile, lattice, {
      toSize,
      // Where an island is tied depends on the whole of it.
      reach: Math.max(tile.width * size.scaleAcross, tile.height * size.scaleUp),
      work: (layers) =>
        layers.map((layer) => ({ ...layer, shapes: bridgedShapes(layer.shapes, width).shapes })),
    }),
  };
}

/** A motif with bridges, told. */
export function bridgedMotif(placed: PlacedMotif, job: StencilJob, file: TypedIn): PlacedMotif {
  if (!job.stencil) return placed;
  const width = bridgeOf(job);
  const worked = placed.motif.layers.map((layer) => ({ layer, ...bridgedShapes(layer.shapes, width) }));
  const islands = worked.reduce((sum, one) => sum + one.islands, 0);
  const bridges = worked.reduce((sum, one) => sum + one.bridges, 0);
  const says = `${placed.says}: ${islands} ${islands === 1 ? 'island is' : 'islands are'} tied by ${bridges} bridges, ${inMm(width)} wide`;
  return {
    ...placed,
    motif: { ...placed.motif, layers: worked.map(({ layer, shapes }) => ({ ...layer, shapes })) },
    findings: [
      ...placed.findings,
      ...(islands > 0 ? [note('bridges', typedAt(file, placed.key), says)] : []),
    ],
  };
}

/** What is to be known of a patterned stencil. */
export const stencilFindings = (job: StencilJob, file: TypedIn): readonly Finding[] =>
  job.stencil
    ? [
        note(
          'bridges',
          typedAt(file, 'stencil'),
          `every island of the pattern is tied by two bridges or more, at least ${inMm(bridgeOf(job))} wide, so that the stencil comes off whole: wipe it clean before it is laid again, and leave it when an edge lifts`,
        ),
      ]
    : [];
