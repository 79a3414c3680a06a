// Items of a job: whether each lies where it is meant to. They are checked and outlined, not cut.
import { checkSvg } from '../artwork/svg-check.ts';
import type { Blank } from '../blank/blank.ts';
import { lipZoneStart } from '../blank/lip-zone.ts';
import { wallLength } from '../blank/wall.ts';
import { type Finding, look, note, Refused } from '../finding.ts';
import { precision } from '../geometry/tolerance.ts';
import { inMm } from '../lengths/length.ts';
import type { WallPoint } from '../unroll/flat-wall.ts';
import { type Ground, type Miss, missesAt, nearestPlace } from '../unroll/placing.ts';
import { sheetOnWall } from '../unroll/sheet-wall.ts';
import { type FileBytes, textOf } from './named-files.ts';
import type { Plan } from './plan.ts';
import type { Item, Job } from './resolved-job.ts';
import { type TypedIn, typedAt } from './typed-at.ts';

export interface ItemReport {
  readonly file: string;
  readonly at: WallPoint;
  readonly across: number;
  readonly up: number;
  /** Whether it lies on one flat band, clear of all that is in the way. */
  readonly lies: boolean;
  readonly misses: readonly Miss[];
  /** The nearest place where it lies; null where there is none at this size. */
  readonly nearest: WallPoint | null;
}

export interface ItemsInput {
  readonly job: Pick<Job, 'items' | 'artwork'>;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
  /** The files that the job names. */
  readonly files: FileBytes;
}

export interface CheckedItems {
  readonly reports: readonly ItemReport[];
  readonly findings: readonly Finding[];
}

/** @throws Refused where an item's drawing has no size to tell its proportions by. */
export function checkItems(input: ItemsInput, plan: Plan): CheckedItems {
  const { job, jobFile, files } = input;
  const items = job.items ?? [];
  if (items.length === 0) return { reports: [], findings: [] };
  const ground = groundOf(input, plan);
  const reports = items.map((item) => reportOf(ground, item, textOf(files, item.file)));
  const misplaced = reports.flatMap((report, i) => (report.lies ? [] : [misplacedItem(report, i, jobFile)]));
  return { reports, findings: [...misplaced, notCut(reports.length, jobFile)] };
}

/** Where items may lie: seam only where a pattern is wrapped around, for items alone are pieces of their own. */
function groundOf({ job, blank }: ItemsInput, { wall, flatBands, build, template }: Plan): Ground {
  const lipZone = lipZoneStart(blank, wallLength(wall));
  const beside = blank.handle
    ? { what: 'handle' as const, offset: template.seam.start.offset }
    : job.artwork && { what: 'seam' as const, offset: 0 };
  return {
    bands: flatBands.map((band) => ({
      band,
      wall: sheetOnWall(wall, build, band, (band.from + band.to) / 2).flat,
    })),
    keepOuts: blank.keepOuts ?? [],
    ...(lipZone === undefined ? {} : { lipZone }),
    ...(beside ? { beside } : {}),
  };
}

function reportOf(ground: Ground, item: Item, text: string): ItemReport {
  const { file, across, at } = item;
  const size = { across, up: item.up ?? across * proportions(text, file) };
  const misses = missesAt(ground, size, at, precision);
  const lies = misses.length === 0;
  const nearest = lies ? at : (nearestPlace(ground, size, at) ?? null);
  return { file, at, ...size, lies, misses, nearest };
}

/** Height over width of a drawing. */
function proportions(text: string, file: string): number {
  const { frame, findings } = checkSvg(text, file);
  if (!frame) throw new Refused(findings.filter(({ level }) => level === 'stop'));
  return frame.height / frame.width;
}

const missInWords = ({ what, by }: Miss): string => {
  const size = inMm(Math.max(by, precision));
  switch (what) {
    case 'flat band':
      return `reaches ${size} past where the wall is flat`;
    case 'girth':
      return `is ${size} wider than the wall goes around`;
    case 'seam':
      return `reaches ${size} over the seam`;
    case 'handle':
      return `reaches ${size} into the room of the handle`;
    case 'lip zone':
      return `reaches ${size} into the lip zone`;
    default:
      return `lies on the ${what}, and would have to move ${size} to clear it`;
  }
};

function misplacedItem(
  { file, at, across, up, misses, nearest }: ItemReport,
  index: number,
  jobFile: TypedIn,
): Finding {
  const instead = nearest
    ? `the nearest place where it lies is turn ${nearest.turn.toFixed(5)}, ${inMm(nearest.along)} along`
    : 'at this size it lies nowhere on this wall; make it smaller';
  const says = `${file}, ${inMm(across)} across and ${inMm(up)} up, ${misses.map(missInWords).join(', and ')}; ${instead}`;
  return look('item-misplaced', typedAt(jobFile, `items[${index}].at`, at), says);
}

const notCut = (count: number, jobFile: TypedIn): Finding =>
  note(
    'items-not-cut',
    typedAt(jobFile, 'items'),
    `${count === 1 ? 'the item is' : `the ${count} items are`} checked for place and outlined on the guide, but not cut yet; cut ${count === 1 ? 'it' : 'them'} apart and lay ${count === 1 ? 'it' : 'them'} to the outline`,
  );
