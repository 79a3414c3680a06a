// The single motifs and texts of a job as they were laid, each with the key that it is typed under.
import type { MotifReport } from '../../job/motifs/motif-report.ts';
import type { Report } from '../../job/report.ts';

export interface MotifSeen extends Pick<MotifReport, 'at' | 'reach' | 'name'> {
  /** Such as `items[0]`. */
  readonly path: string;
}

export const motifsSeen = ({
  items,
  lettering,
}: Pick<Report, 'items' | 'lettering'>): readonly MotifSeen[] => [
  ...(items ?? []).map((item, i) => ({ ...item, path: `items[${i}]` })),
  ...(lettering ?? []).map((text, i) => ({ ...text, path: `lettering[${i}]` })),
];
