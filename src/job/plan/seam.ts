// A seam in figures, in steps of work, and in words.
import type { Blank } from '../../blank/blank.ts';
import { inMm } from '../../lengths/length.ts';
import type { Seam } from '../typed/resolved-job.ts';
import type { WindingReport } from './winding-report.ts';

/** How much of the overlap lies before turn 0, mm: what is cut through in the middle has half of it either side. */
export const beforeSeam = ({ style, overlap }: Seam): number => (style === 'cut-through' ? overlap / 2 : 0);

/** A step of work at the seam, and what to look at before going on. */
export interface SeamStep {
  readonly does: string;
  readonly check: string;
}

/** Closing the seam once the film is laid to it, step by step; `joints`: how many there are between stacked pieces. Common practice, no source. */
export function seamSteps(seam: Seam, joints: number): readonly SeamStep[] {
  const { style, overlap, strip = 0, top } = seam;
  if (style === 'butt')
    return [
      {
        does: 'bring the finish up to the start, edge to edge',
        check: 'the two ends meet, and neither stands up',
      },
    ];
  if (style === 'overlap' && top === 'start')
    return [
      {
        does: `lift the start, lay the finish down first, ${inMm(overlap)} past turn 0, and lay the start over it, its edge on the seam line`,
        check:
          'the edge that shows is straight up the wall, and the overlap under it as wide at the foot as at the lip',
      },
    ];
  if (style === 'overlap')
    return [
      {
        does: `lap the finish over the start by ${inMm(overlap)}`,
        check: 'the overlap is as wide at the foot as at the lip',
      },
    ];
  if (style === 'strip')
    return [
      {
        does: 'bring the finish up to the start, edge to edge',
        check: 'the gap is nowhere wider than a hair',
      },
      ...(joints > 0
        ? [
            {
              does: `lay the arc-shaped cover strips, ${inMm(strip)} wide, over the joints of the pieces, their middle lines on them`,
              check: 'their ends meet at the seam; no edge of them climbs or lifts',
            },
          ]
        : []),
      {
        does: `lay the cover strip, ${inMm(strip)} wide, over the seam with its middle line on it, from the foot up`,
        check: 'as much of the strip lies on either side; no edge of it lifts',
      },
    ];
  if (style === 'winding') return windingSteps(overlap);
  return [
    {
      does: `lap the finish over the start by ${inMm(overlap)}, half of it either side of the seam; do not rub the overlap down yet`,
      check: 'the marks of turn 0 at the foot and the lip of both ends lie on one another',
    },
    {
      does: 'hold a steel rule along the seam line, from the mark at the foot to the mark at the lip, and cut both layers in one light stroke',
      check: 'the blade went through both layers and not into the coat under them',
    },
    {
      does: 'lift the upper end, draw out the strip of the lower end beneath it, take the strip of the upper one away, and rub both edges down',
      check: 'the two edges meet along the whole seam, and no strip is left under them',
    },
  ];
}

/** The start's edge goes through the gaps, so it is the one that stays on top. */
function windingSteps(overlap: number): readonly SeamStep[] {
  if (overlap === 0)
    return [
      {
        does: 'bring the winding finish up to the winding start, each bend into its own',
        check: 'the two edges meet all the way up, and neither stands up',
      },
    ];
  return [
    {
      does: `when you lay the start, leave its first ${inMm(2 * overlap)} on the carrier`,
      check: 'the marks of turn 0 at the foot and the lip are where the start is to be',
    },
    {
      does: 'lay the finish under it, up to the line on the guide that the start follows',
      check: `the finish goes on by ${inMm(overlap)} under the start everywhere`,
    },
    {
      does: 'lay the winding edge of the start down over it, from the foot up',
      check: 'the pattern goes on across the edge, and no bend of it stands up',
    },
  ];
}

/** Cautions of a seam beyond those of every blade; the product's own sheet goes before them. Common practice, no source. */
export const seamCautions = ({ style }: Seam): readonly string[] =>
  style === 'cut-through'
    ? [
        'cutting through on the vessel: a fresh blade, hardly any pressure, away from the hand that holds; try it on a spare first. A coat that is scored may lift or chip later, and a cut in a coating lets in water: where that must not be, use an overlap',
      ]
    : [];

/** What the seam lines of a guide are for, where they are no seam alone. */
export function seamMeaning({ style }: Seam): { readonly seamSays?: string } {
  if (style === 'cut-through') return { seamSays: 'cut both layers here' };
  return style === 'winding' ? { seamSays: 'turn 0, to lay by; the seam winds beside it' } : {};
}

/** The end that lies on top of an overlap; none where the ends do not lap, or stop at a handle. */
export const topOf = ({
  job: { seam },
  blank,
}: {
  readonly job: { readonly seam: Seam };
  readonly blank: Pick<Blank, 'handle'>;
}): { readonly top?: 'start' | 'finish' } =>
  seam.style === 'overlap' && seam.overlap > 0 && !blank.handle ? { top: seam.top ?? 'finish' } : {};

/** A seam in the report. */
export interface SeamReport {
  readonly style: Seam['style'];
  readonly overlap: number;
  /** How much of the overlap lies before turn 0, where not all of it lies past it, mm. */
  readonly before?: number;
  readonly strip?: number;
  /** Of an overlap: the end that lies on top. */
  readonly top?: 'finish' | 'start';
  /** Of a seam that winds: what it cuts of film, beside the best straight one. */
  readonly winding?: WindingReport;
  readonly steps: readonly string[];
}

export const seamReport = (seam: Seam, joints: number, winding?: WindingReport): SeamReport => ({
  style: seam.style,
  overlap: seam.overlap,
  ...(beforeSeam(seam) > 0 ? { before: beforeSeam(seam) } : {}),
  ...(seam.strip === undefined ? {} : { strip: seam.strip }),
  ...(seam.style === 'overlap' && seam.overlap > 0 ? { top: seam.top ?? 'finish' } : {}),
  ...(winding ? { winding } : {}),
  steps: seamSteps(seam, joints).map(({ does, check }) => `${does}; look: ${check}`),
});
