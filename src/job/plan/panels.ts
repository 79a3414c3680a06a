// The panels of a job: where its pieces are parted so that each part fits the sheet, and how each lies on it.
import { artCrossed } from '../../cut/checks/art-crossed.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { Room } from '../../geometry/fit-box.ts';
import { inMm } from '../../lengths/length.ts';
import { chooseJoints } from '../../sheet/joints.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import { panelsOf } from '../../unroll/panel.ts';
import { outline, type Template, templateBox, turnOfEdge } from '../../unroll/template.ts';
import { type Job, standardPanels } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import {
  type ForSheet,
  roomInWords,
  roomOf,
  type SheetRoom,
  tooLargeLook,
  turnOnSheet,
} from './sheet-room.ts';

/** A piece to be parted, and the art on it. */
export interface WholePiece {
  readonly template: Template;
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
}

export interface PanelPlan {
  /** Turns at which every piece is parted; none where they are not. */
  readonly joints: readonly number[];
  /** What a panel goes on past its joint, mm. */
  readonly overlap: number;
  readonly findings: readonly Finding[];
}

export interface PanelsInput {
  readonly job: ForSheet & Pick<Job, 'panels'>;
  readonly jobFile: TypedIn;
  /** Repeats around, and in how many equal parts the pattern goes around, where there is one. */
  readonly pattern?: { readonly around: number; readonly equalParts: number };
}

/** Joints are looked for this far apart, mm: at the middle of the band where they run up the wall, along it where they are level. */
export const lookEvery = 0.5;

/** A panel narrower than this is more trouble than use, mm. Common practice, no source. */
export const narrowest = 20;

/** What is typed smaller than this nobody lays true, mm. Common practice, no source. */
export const leastPart = 5;

/** How a part is turned in its file: not at all where it fits its sheet, this way round or the other. Radians. */
export function turnInFile(template: Template, job: ForSheet, isPanel: boolean): number {
  const room = roomOf(job);
  const turn = room && turnOnSheet(outline(template), room);
  if (!room || turn === undefined) return 0;
  const { minX, minY, maxX, maxY } = templateBox(template);
  const fitsAcross = maxX - minX <= room.up && maxY - minY <= room.across;
  return !isPanel && (fitsAcross || room.only !== undefined) ? 0 : turn;
}

/** Whether the sheet of a job is too small for one of its pieces, so that it is cut in panels or levels. */
export function isParted(pieces: readonly Pick<WholePiece, 'template'>[], job: ForSheet): boolean {
  const room = roomOf(job);
  return (
    room !== undefined && pieces.some(({ template }) => turnOnSheet(outline(template), room) === undefined)
  );
}

/** Whether a template fits the sheet of a job: whole, or in panels that are worth having. */
export function fitsInPanels(template: Template, job: PanelsInput['job']): boolean {
  const room = roomOf(job);
  if (!room || !isParted([{ template }], job)) return true;
  const { overlap } = job.panels ?? standardPanels;
  const length = Math.max(narrowest, 2 * overlap) / girthAt(template.wall, template.band.from);
  return (['first', 'inner', 'last'] as const).every((which) =>
    panelFits(template, { room, overlap }, which, length),
  );
}

/** Where the pieces of a job are parted: all at the same turns. */
export function planPanels(input: PanelsInput, pieces: readonly WholePiece[]): PanelPlan {
  const { job, jobFile } = input;
  const panels = job.panels ?? standardPanels;
  const { overlap } = panels;
  const none: PanelPlan = { joints: [], overlap, findings: [] };
  const room = roomOf(job);
  const tooLarge = (joints: readonly number[]) =>
    room
      ? pieces
          .flatMap(({ template }) => panelsOf(template, { joints, overlap }))
          .filter((part) => turnOnSheet(outline(part), room) === undefined)
      : [];
  if (typeof panels.joints !== 'string') {
    const { joints } = panels;
    refuseNarrow(input, pieces, { joints, overlap });
    const said = room ? tooLargeLook(tooLarge(joints).map(templateBox), room, jobFile) : [];
    return { ...none, joints, findings: said };
  }
  if (!room || tooLarge([]).length === 0) return none;
  const kinds = panels.joints === 'repeats' ? (['repeats', 'least-art'] as const) : (['least-art'] as const);
  for (const kind of kinds) {
    const joints = jointsBy(kind, input, pieces, { room, overlap });
    if (!joints) continue;
    const missed =
      kind === panels.joints
        ? []
        : [
            look(
              'panel-repeat',
              typedAt(jobFile, 'panels.joints'),
              'asks for joints at repeats, and no panel of whole repeats fits the sheet; they are laid where they cross the least art instead',
            ),
          ];
    return { ...none, joints, findings: [...missed, partedNote(joints.length + 1, room, jobFile)] };
  }
  return { ...none, findings: tooLargeLook(tooLarge([]).map(templateBox), room, jobFile) };
}

/** @throws Refused where joints that the maker gave leave a panel too narrow to lay. */
function refuseNarrow(
  { jobFile }: PanelsInput,
  pieces: readonly WholePiece[],
  { joints, overlap }: Pick<PanelPlan, 'joints' | 'overlap'>,
): void {
  if (joints.length === 0) return;
  const least = Math.max(leastPart, overlap);
  for (const { template } of pieces) {
    const { from, to } = sidesOf(template);
    const girth = girthAt(template.wall, template.band.from);
    const ends = [from, ...joints, to];
    const narrow =
      joints.length + 1 - ends.slice(1).filter((end, i) => (end - (ends[i] ?? from)) * girth >= least).length;
    if (narrow === 0) continue;
    const says = `leave ${narrow === 1 ? 'a panel' : `${narrow} panels`} less than ${inMm(least)} wide at the foot edge; give joints further from one another and from the ends of the piece`;
    throw new Refused([stop('panel-too-narrow', typedAt(jobFile, 'panels.joints'), says)]);
  }
}

const partedNote = (count: number, { across, up }: Room, file: TypedIn): Finding =>
  note(
    'panels',
    typedAt(file, 'sheet'),
    `holds ${roomInWords({ across, up })} inside its margin, less than the piece takes, so it is cut in ${count} panels; their guides tell how they are joined`,
  );

interface Fit {
  readonly room: SheetRoom;
  readonly overlap: number;
}

/** The turns of a template's finished sides at the middle of its band. */
function sidesOf({ wall, band, seam }: Template): { readonly from: number; readonly to: number } {
  const middle = (band.from + band.to) / 2;
  return { from: turnOfEdge(wall, seam.start, middle), to: turnOfEdge(wall, seam.finish, middle) };
}

/** Whether a panel of a template, so many turns long, fits. */
function panelFits(
  template: Template,
  { room, overlap }: Fit,
  which: 'first' | 'inner' | 'last',
  length: number,
): boolean {
  const { from, to } = sidesOf(template);
  const centre = (from + to) / 2;
  const joints = {
    first: [from + length],
    inner: [centre - length / 2, centre + length / 2],
    last: [to - length],
  }[which];
  const panel = panelsOf(template, { joints, overlap })[which === 'first' ? 0 : 1];
  return panel !== undefined && turnOnSheet(outline(panel), room) !== undefined;
}

/** The longest panels of a template that fit, in turns. */
function longestOf(template: Template, fit: Fit) {
  const { from, to } = sidesOf(template);
  const longest = (which: 'first' | 'inner' | 'last'): number => {
    let [good, bad] = [0, to - from];
    for (let i = 0; i < 24; i++) {
      const middle = (good + bad) / 2;
      if (panelFits(template, fit, which, middle)) good = middle;
      else bad = middle;
    }
    return good;
  };
  return { first: longest('first'), inner: longest('inner'), last: longest('last') };
}

function jointsBy(
  kind: 'least-art' | 'repeats',
  { pattern }: PanelsInput,
  pieces: readonly WholePiece[],
  fit: Fit,
): readonly number[] | undefined {
  const [first] = pieces;
  if (!first) return undefined;
  const { from, to } = sidesOf(first.template);
  const limits = pieces.map(({ template }) => longestOf(template, fit));
  const least = (of: 'first' | 'inner' | 'last') => Math.min(...limits.map((limit) => limit[of]));
  const girth = Math.min(...pieces.map(({ template: { wall, band } }) => girthAt(wall, band.from)));
  const { places, costs } =
    kind === 'repeats' ? atRepeats(pattern, from, to) : alongArt(pieces, { from, to, girth }, fit.overlap);
  return chooseJoints({
    places,
    costs,
    from,
    to,
    longest: { first: least('first'), inner: least('inner'), last: least('last') },
    shortest: Math.max(narrowest, 2 * fit.overlap) / girth,
  });
}

/** Between repeats: where the pattern is the same on either side, if that is anywhere; else where a repeat ends. */
function atRepeats(pattern: PanelsInput['pattern'], from: number, to: number) {
  const parts = !pattern ? 0 : pattern.equalParts > 1 ? pattern.equalParts : pattern.around;
  const places = Array.from({ length: Math.max(0, parts - 1) }, (_, i) => (i + 1) / parts).filter(
    (turn) => turn > from && turn < to,
  );
  return { places, costs: places.map(() => 0) };
}

/** All along the pieces, each place for what it crosses of art: on the joint and along the edge of its overlap. */
function alongArt(
  pieces: readonly WholePiece[],
  { from, to, girth }: { readonly from: number; readonly to: number; readonly girth: number },
  overlap: number,
) {
  const count = Math.max(1, Math.ceil(((to - from) * girth) / lookEvery) - 1);
  const step = (to - from) / (count + 1);
  const first = from + step;
  const sums = pieces.flatMap(({ template, layers }) =>
    (overlap > 0 ? [0, overlap] : [0]).map((offset) =>
      artCrossed({ template, layers, first, step, count, offset }),
    ),
  );
  return {
    places: Array.from({ length: count }, (_, i) => first + i * step),
    costs: costsOf(sums),
  };
}

/** What each place crosses of art in all, to a hundredth of a mm: what is less is rounding, and evenness decides. */
export const costsOf = (sums: readonly Float64Array[]): number[] =>
  Array.from(
    sums[0] ?? [],
    (_, i) => Math.round(100 * sums.reduce((sum, crossed) => sum + (crossed[i] ?? 0), 0)) / 100,
  );
