// What a job is known by, at the head of its sheet.

import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import type { Fact } from '../../deliver/write-page.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import type { Report } from '../report.ts';
import type { Job, Seam } from '../typed/resolved-job.ts';

/** The way a seam is closed, in a few words. */
function seamInWords({ style, overlap: mm }: Pick<Seam, 'style' | 'overlap'>, units: Units): string {
  const overlap = `${measuredLength(mm, units)} of overlap`;
  switch (style) {
    case 'butt':
      return 'edge to edge';
    case 'strip':
      return 'edge to edge, under a cover strip';
    case 'cut-through':
      return `${overlap}, both cut through`;
    case 'winding':
      return `winding, ${overlap}`;
    case 'overlap':
      return overlap;
  }
}

export interface FactsInput {
  readonly job: Job;
  readonly blank: Blank;
  /** The finished band of all pieces together, mm along. */
  readonly band: Band;
  readonly wraps: { readonly count: number };
  readonly report: Pick<Report, 'pattern'>;
}

/** Facts of the job, and lines to write on. */
export function jobFacts({ job, blank, band, wraps, report }: FactsInput): readonly Fact[] {
  const { pattern } = report;
  const shown = (mm: number) => measuredLength(mm, job.units);
  return [
    { says: 'vessel', is: blank.name },
    { says: 'how many', is: String(job.batch ?? 1) },
    { says: 'band, along the wall from the foot corner', is: `${shown(band.from)} to ${shown(band.to)}` },
    ...(blank.handle
      ? [{ says: 'stops short of', is: 'the handle' }]
      : [{ says: 'seam', is: seamInWords(job.seam, job.units) }]),
    { says: 'cut in', is: wraps.count === 1 ? 'one piece' : `${wraps.count} pieces` },
    {
      says: 'pattern',
      is: pattern
        ? `${pattern.around} around, at ${(pattern.scaleAcross * 100).toFixed(1)} % across and ${(pattern.scaleUp * 100).toFixed(1)} % up`
        : 'none that goes around',
    },
    { says: 'date', is: '' },
    { says: 'made by', is: '' },
    { says: 'which vessels', is: '' },
  ];
}
