// Collars of a blank: the level lines asked for, or every edge of its flat bands, worked out and drawn.

import { type Wall, wallWithin } from '../../blank/wall.ts';
import type { Collar, CollarEdge } from '../../cut/drawings/collar.ts';
import { type CollarDrawings, collarDrawings } from '../../cut/drawings/collar-drawing.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import type { DrawWords } from '../../drawing/words.ts';
import type { Finding } from '../../finding.ts';
import { formatLength, measuredLength, type Units } from '../../lengths/length.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../../unroll/template.ts';
import { type CollarAsk, type CollarPlanInput, planCollars } from '../plan/collar-plan.ts';
import type { FileReport } from '../report.ts';

export interface CollarInput extends CollarPlanInput {
  /** Those of the words. */
  readonly units: Units;
  readonly words: DrawWords;
}

/** One collar, mm. */
export interface CollarEntry {
  /** Where the level line runs, up the wall from the foot corner. */
  readonly along: number;
  /** The same, above the plane of the foot. */
  readonly height: number;
  /** Girth of the wall there, with its coats. */
  readonly girth: number;
  readonly edge: CollarEdge;
  readonly width: number;
  /** The level edge on the paper from one end to the other, without the tab. */
  readonly length: number;
  /** How far a straight strip, level where it starts, is off at its far end: up is positive. Null: it never comes round. */
  readonly straightStripClimb: number | null;
  /** How far its middle is off when both ends are brought to the line. Null: it can't be brought round at all. */
  readonly straightStripBow: number | null;
}

export interface CollarReport {
  readonly collar: readonly CollarEntry[];
  readonly checks: readonly Finding[];
  readonly files?: readonly FileReport[];
}

export interface CollarDraft {
  readonly cut: string;
  readonly guide: string;
  /** What a print of it is called. */
  readonly title: string;
  readonly report: CollarReport;
  /** What the report says, in plain words. */
  readonly lines: readonly string[];
}

/** @throws Refused where a level line or its strip can't be had on this wall. */
export function draftCollars(input: CollarInput): CollarDraft {
  const { wall, collars, findings } = planCollars(input);
  const name = (i: number) => collarName(i, collars.length);
  const drawn = drawnCollars(input, wall, { collars, name });
  const title = `${input.blank.name}: collars`;
  return {
    ...writtenCollars(drawn.drawings, title),
    title,
    report: { collar: drawn.entries, checks: findings },
    lines: drawn.lines,
  };
}

/** What a collar is called among so many. */
export const collarName = (i: number, count: number): string =>
  count === 1 ? 'collar' : `collar ${i + 1} of ${count}`;

/** Both files of drawn collars. */
export const writtenCollars = ({ cut, guide }: CollarDrawings, title: string) => ({
  cut: writeSvg(cut, { title: `${title}: cut`, filled: false }),
  guide: writeSvg(guide, { title: `${title}: guide`, filled: true }),
});

/** Collars of a wall drawn on one sheet, and what is said of them; `name` is what each is called. */
export function drawnCollars(
  input: CollarInput,
  wall: Wall,
  { collars, name }: { readonly collars: readonly Collar[]; readonly name: (i: number) => string },
) {
  const { blank, units, words } = input;
  const entries = collars.map((collar) => entryOf(collar, wall, input.coats));
  const shown: Shown = (mm) => measuredLength(mm, units);
  const lines = entries.flatMap((entry, i) => [
    `${name(i)}: ${collarSays(entry, shown)}`,
    `${name(i)}: ${straightSays(entry, shown)}`,
  ]);
  const drawings = collarDrawings({
    collars: collars.map((collar, i) => ({
      collar,
      said: { name: name(i), place: `${shown(collar.along)} up the wall` },
    })),
    notes: [
      `${blank.name}: ${collars.length === 1 ? name(0) : 'collars'}, seen from outside, foot down`,
      ...lines,
      buildSays(input, units),
      ...joinSays(collars[0], shown),
      `lines right across a strip are plumb: ${blank.handle ? 'at both sides of the handle,' : 'along the seam,'} the quarters and the front`,
    ],
    words,
  });
  return { drawings, entries, lines };
}

function entryOf({ along, edge, template, straight }: Collar, wall: Wall, coats: number): CollarEntry {
  const { radius, lean, height } = wallWithin(wall, along, template.band);
  const turn = (side: SideEdge) => turnOfEdge(template.wall, side, along);
  const turns = turn(template.seam.finish) - turn(template.seam.start);
  return {
    along,
    height,
    girth: 2 * Math.PI * (radius + coats * Math.cos(lean)),
    edge,
    width: template.band.to - template.band.from,
    length: girthAt(template.wall, along) * turns,
    straightStripClimb: straight.climb ?? null,
    straightStripBow: straight.bow ?? null,
  };
}

type Shown = (mm: number) => string;

const collarSays = ({ along, height, girth, edge }: CollarEntry, shown: Shown): string =>
  `its ${edge} edge on the level line ${shown(along)} up the wall, ${shown(height)} above the foot; girth there ${shown(girth)}`;

/** What a straight-cut strip would have done, in words. */
function straightSays(
  { straightStripClimb: climb, straightStripBow: bow }: CollarEntry,
  shown: Shown,
): string {
  if (bow === null) return 'a straight-cut strip does not go round this wall at all';
  const bows = `brought to the line at both ends, its middle is ${shown(Math.abs(bow))} too ${bow < 0 ? 'low' : 'high'}`;
  if (climb === null) return `a straight-cut strip laid level where it starts never comes round; ${bows}`;
  if (Math.abs(climb) < 0.05) return 'a straight-cut strip would stay level here';
  return `a straight-cut strip laid level where it starts would ${climb > 0 ? 'climb' : 'sink'} ${shown(Math.abs(climb))} by its far end`;
}

const buildSays = ({ paper, coats }: CollarAsk, units: Units): string =>
  `sized for paper ${formatLength(paper, units)} thick on ${coats > 0 ? `${formatLength(coats, units)} of coats` : 'the bare wall'}`;

function joinSays(collar: Collar | undefined, shown: Shown): string[] {
  if (!collar) return [];
  if (collar.clear !== undefined)
    return [`each end stands ${shown(collar.clear)} from the centre of the handle, measured around the wall`];
  if (collar.template.overlap === 0) return ['bring the ends together edge to edge, and tape them'];
  return ['wrap it with the tab underneath; lay the seam end on the MEET HERE line, and tape it'];
}
