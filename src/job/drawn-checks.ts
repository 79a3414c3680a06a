// What is wrong with the lines of a job's artwork as they are drawn, told before areas are merged and hide it.
import { type DrawnFault, drawnFaults } from '../cut/art-faults.ts';
import type { CutLimits } from '../cut/limits.ts';
import type { DrawnLine } from '../drawing/drawn-line.ts';
import type { Finding } from '../finding.ts';
import { atHand } from '../geometry/kept-contour.ts';
import { drawnFinding } from './fault-words.ts';

/** Of one rule no more than this are told singly; the last of them says how many more there are. */
const mostTold = 6;

/** What becomes of such lines in a job, where areas are filled and merged before they are cut. */
const becomes: Readonly<Partial<Record<DrawnFault['rule'], string>>> = {
  'open-line': 'here it is filled up to a straight line between its ends, as your drawing shows it',
  'doubled-line':
    'here areas that touch or overlap are merged, and the line is cut once; where a hair of a gap is left between them, both its sides are cut',
  'self-crossing': 'here its areas are merged as they are filled',
};

/** Whether a vessel looks other than its drawing by a fault. A fill left open is closed by a straight line in every program. */
const changesWhatIsSeen = ({ rule, line }: DrawnFault): boolean =>
  rule === 'stroke-without-area' || (rule === 'open-line' && line.stroke !== undefined);

interface DrawnAtScale {
  readonly lines: readonly DrawnLine[];
  /** Their size over the size that the file gives. */
  readonly scale: number;
}

/** `limits`: as they are in the drawing, where it is laid smallest. */
export function drawnChecks({ lines, scale }: DrawnAtScale, file: string, limits: CutLimits): Finding[] {
  const faults = drawnFaults(
    lines.map((line) => ({ ...line, contours: line.contours.map(atHand) })),
    limits,
  );
  return [...new Set(faults.map(({ rule }) => rule))].flatMap((rule) => {
    const own = faults.filter((fault) => fault.rule === rule);
    const rest = own.length - mostTold;
    const more = (i: number) => (i === mostTold - 1 && rest > 0 ? `; and ${rest} more like it` : '');
    const then = becomes[rule];
    return own.slice(0, mostTold).map((fault, i): Finding => {
      const finding = drawnFinding(fault, { file, x: fault.at.x / scale, y: fault.at.y / scale }, limits);
      const says = `${finding.says}${then ? ` (${then})` : ''}${more(i)}`;
      // Merging puts the rest right.
      return { ...finding, level: changesWhatIsSeen(fault) ? 'look' : 'note', says };
    });
  });
}
