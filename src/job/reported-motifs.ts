// The motifs of drafts as report.json tells of them.
import { isLayerOf } from '../drawing/motif-name.ts';
import type { Draft } from './draft.ts';
import type { MotifReport, PlaceReport } from './motif-report.ts';
import { motifsAsMade, reachOfMotif } from './motifs-as-made.ts';
import type { PlacedMotif } from './placed-motif.ts';
import { layersAsMade } from './proof.ts';

/** The keys of the report that tell of motifs; none where there are none. */
export function motifReports(drafts: readonly Draft[]): { readonly items?: readonly MotifReport[] } {
  const [first] = drafts;
  if (!first || first.motifs.length === 0) return {};
  const within = layersAsMade(drafts);
  const apart = motifsAsMade(drafts);
  const items = first.motifs.flatMap((placed, i) => {
    const place = first.places[i];
    const made = apart.find(({ name }) => name === placed.name);
    const layers = made?.layers ?? within.filter(({ layer }) => isLayerOf(layer, placed.name));
    return place ? [{ ...reportOf(placed, place), reach: reachOfMotif(drafts, placed), layers }] : [];
  });
  return { items };
}

const reportOf = (
  { name, says, at, size, lay, isApart, clear }: PlacedMotif,
  place: PlaceReport,
): Omit<MotifReport, 'layers' | 'reach'> => ({
  name,
  file: says,
  at,
  ...size,
  lay,
  apart: isApart,
  ...(clear === undefined || isApart ? {} : { clear }),
  ...place,
});
