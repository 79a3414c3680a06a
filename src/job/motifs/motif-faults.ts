// What stands against cutting a motif: for each rule the worst place of it, and how many there are.
import { layerFaults } from '../../cut/checks/art-faults.ts';
import { maskLayer } from '../../cut/checks/film-layers.ts';
import type { Finding } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { limitsOf } from '../artwork/cut-limits.ts';
import { filmFinding } from '../artwork/fault-words.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** `widest`: the largest girth of the wall, mm. */
export function motifFaults(
  { film, cutter }: Pick<Job, 'film' | 'cutter'>,
  jobFile: TypedIn,
  { key, motif, says, told: { capHeight }, size: { across } }: PlacedMotif,
  widest: number,
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
      rule === 'thin-film' && capHeight !== undefined && worst.size > 0
        ? heightThatHolds(capHeight, limits.minWidth / worst.size, { across, widest })
        : '';
    return [{ ...finding, says: `${says}${places}: ${finding.says}${holds}` }];
  });
}

/** Lettering at which its strokes hold: told only as far as the wall goes around. */
function heightThatHolds(
  capHeight: number,
  larger: number,
  { across, widest }: { readonly across: number; readonly widest: number },
): string {
  const would = `; capitals ${inMm(capHeight * larger)} high would hold`;
  return across * larger <= widest
    ? would
    : `${would}, but it would be ${inMm(across * larger)} wide, more than the wall goes around: take a bolder font or a shorter text`;
}
