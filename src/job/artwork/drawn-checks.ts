// What is wrong with the lines of a job's artwork as they are drawn, told before areas are merged and hide it.
import { type DrawnFault, drawnFaults } from '../../cut/checks/art-faults.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import type { Finding } from '../../finding.ts';
import { boxesMeet, hullBox } from '../../geometry/box.ts';
import { atHand } from '../../geometry/kept-contour.ts';
import { formatLength } from '../../lengths/length.ts';
import type { Size } from '../../pattern/tile/cut-shapes.ts';
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

function becomesOf({ rule, line: { stroke } }: DrawnFault): string | undefined {
  if (rule !== 'open-line' || stroke === undefined) return becomes[rule];
  return `here it is cut as film ${formatLength(stroke, 'mm')} wide, as your drawing shows it`;
}

/** Whether a vessel looks other than its drawing by a fault. A fill left open is closed by a straight line in every program. */
const changesWhatIsSeen = ({ rule, line }: DrawnFault): boolean =>
  rule === 'stroke-without-area' || (rule === 'open-line' && line.stroke !== undefined);

interface DrawnAtScale {
  readonly lines: readonly DrawnLine[];
  /** Their size over the size that the file gives. */
  readonly scale: number;
}

/** Whether any of a line lies on a tile: what is drawn wholly past it is not laid. */
const isOn = ({ width, height }: Size, { contours }: DrawnLine): boolean =>
  boxesMeet(hullBox(contours), { minX: 0, minY: 0, maxX: width, maxY: height });

/** Faults that are told alike, as copies of a motif have them: by the one nearest to the middle of the tile, with how many there are. */
function alikeOnce(findings: readonly { readonly finding: Finding; readonly away: number }[]): Finding[] {
  const alike = new Map<string, { nearest: Finding; away: number; times: number }>();
  for (const { finding, away } of findings) {
    const known = alike.get(finding.says);
    if (!known) alike.set(finding.says, { nearest: finding, away, times: 1 });
    else {
      known.times++;
      if (away < known.away) Object.assign(known, { nearest: finding, away });
    }
  }
  return [...alike.values()].map(({ nearest, times }) =>
    times === 1 ? nearest : { ...nearest, times, says: `${nearest.says}; at ${times} places alike` },
  );
}

/** Faults of a drawing's lines that lie on its tile. `limits`: as they are in the drawing, where it is laid smallest. */
export function drawnChecks(
  { lines, scale }: DrawnAtScale,
  tile: Size,
  file: string,
  limits: CutLimits,
): Finding[] {
  const shown = lines.map((line) => ({ ...line, contours: line.contours.map(atHand) }));
  const faults = drawnFaults(
    shown.filter((line) => isOn(tile, line)),
    limits,
  );
  const told = faults.map((fault) => {
    const { at } = fault;
    const finding = drawnFinding(fault, { file, x: at.x / scale, y: at.y / scale }, limits);
    const then = becomesOf(fault);
    // Merging puts the rest right.
    const level = changesWhatIsSeen(fault) ? ('look' as const) : ('note' as const);
    const says = `${finding.says}${then ? ` (${then})` : ''}`;
    const away = Math.hypot(at.x - tile.width / 2, at.y - tile.height / 2);
    return { finding: { ...finding, level, says }, away };
  });
  return [...new Set(faults.map(({ rule }) => rule))].flatMap((rule) => {
    const own = alikeOnce(told.filter(({ finding }) => finding.rule === rule));
    const rest = own.slice(mostTold).reduce((sum, { times = 1 }) => sum + times, 0);
    return own
      .slice(0, mostTold)
      .map((finding, i) =>
        i === mostTold - 1 && rest > 0
          ? { ...finding, says: `${finding.says}; and ${rest} more like it` }
          : finding,
      );
  });
}
