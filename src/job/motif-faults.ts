// What stands against cutting a motif: for each rule the worst place of it, and how many there are.
import { layerFaults } from '../cut/art-faults.ts';
import { maskLayer } from '../cut/film-layers.ts';
import type { Finding } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import { limitsOf } from './cut-limits.ts';
import { filmFinding } from './fault-words.ts';
import type { PlacedMotif } from './placed-motif.ts';
import type { Job } from './resolved-job.ts';
import { type TypedIn, typedAt } from './typed-at.ts';

export function motifFaults(
  { film, cutter }: Pick<Job, 'film' | 'cutter'>,
  jobFile: TypedIn,
  { key, motif, says, told: { capHeight } }: PlacedMotif,
): readonly Finding[] {
  const limits = limitsOf(film, cutter);
  const { layers: areas } = motif;
  const layers =
    film.use === 'mask' ? areas.map((layer) => maskLayer(layer, { width: 0, height: 0 })) : areas;
  const faults = layerFaults(layers, limits);
  const rules = [...new Set(faults.map(({ rule }) => rule))];
  return rules.flatMap((rule) => {
    const all = faults.filter((fault) => fault.rule === rule);
    const worst = all.reduce((a, b) => (b.size < a.size ? b : a));
    const finding = filmFinding(worst, typedAt(jobFile, key), limits, film.use);
    const places = all.length === 1 ? '' : `, the worst of ${all.length} places`;
    const holds =
      rule === 'thin-film' && capHeight !== undefined
        ? `; capitals ${inMm((capHeight * limits.minWidth) / worst.size)} high would hold`
        : '';
    return [{ ...finding, says: `${says}${places}: ${finding.says}${holds}` }];
  });
}
