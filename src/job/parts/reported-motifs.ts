// The motifs of drafts as report.json tells of them.
import { isLayerOf } from '../../drawing/motif-name.ts';
import type { LayerAsMade } from '../../prove/asked.ts';
import type { Draft } from '../draft.ts';
import type { MotifReport, PlaceReport } from '../motifs/motif-report.ts';
import { bandOnWall } from '../plan/on-sheet.ts';
import type { Report } from '../report.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import { clearedByDrafts, motifsAsMade } from './motifs-as-made.ts';

/** The keys of the report that tell of motifs; none where there are none. `within`: the layers of the drafts as made. */
export function motifReports(
  drafts: readonly Draft[],
  within: readonly LayerAsMade[],
): Pick<Report, 'items' | 'lettering'> {
  const [first] = drafts;
  if (!first || first.motifs.length === 0) return {};
  const apart = motifsAsMade(drafts);
  const reports = first.laid.flatMap(({ placed, reach, lengths }, i) => {
    const place = first.places[i];
    const made = apart.find(({ name }) => name === placed.name);
    const layers = made?.layers ?? within.filter(({ layer }) => isLayerOf(layer, placed.name));
    const { name, isApart, clear } = placed;
    const cleared =
      isApart || clear === undefined ? undefined : clearedByDrafts(drafts, { name, clear }, reach);
    const gone = cleared === undefined || cleared === clear ? {} : { cleared };
    return place ? [{ ...reportOf(placed, place), ...gone, reach: bandOnWall(reach, lengths), layers }] : [];
  });
  const [items, lettering] = [false, true].map((isText) =>
    reports.filter(({ text }) => (text !== undefined) === isText),
  );
  return {
    ...(items && items.length > 0 ? { items } : {}),
    ...(lettering && lettering.length > 0 ? { lettering } : {}),
  };
}

const reportOf = (
  { name, told, at, size, lay, isApart, clear }: PlacedMotif,
  place: PlaceReport,
): Omit<MotifReport, 'layers' | 'reach'> => ({
  name,
  ...told,
  at,
  ...size,
  lay,
  apart: isApart,
  ...(clear === undefined || isApart ? {} : { clear }),
  ...place,
});
