// The words on a guide: which vessel, which piece, and the measures to check before cutting.
import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import { cutLength, type Units } from '../../lengths/length.ts';
import { inPercent } from '../../lengths/percent.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import type { PatternPlan } from '../closing/pattern-plan.ts';
import { type LevelPlace, levelLetters, type PanelPlace, panelLetter } from '../plan/panel-places.ts';
import { givingInWords } from '../typed/film-giving.ts';
import type { Film } from '../typed/material.ts';
import type { Seam } from '../typed/resolved-job.ts';

export interface GuideNotesInput {
  readonly name: string;
  /** Of the words. */
  readonly units: Units;
  readonly blank: Blank;
  readonly template: Template;
  /** The finished band, mm along. */
  readonly band: Band;
  readonly flatBands: readonly Band[];
  readonly seam: Seam;
  readonly film: Film;
  readonly shown?: 'upside-down';
  /** Which piece this is, counted from the foot, and of how many. */
  readonly piece: LevelPlace & { readonly count: number };
  /** Of a panel: where it stands in its piece. */
  readonly panel?: PanelPlace;
  /** How the pattern goes around, where there is one. */
  readonly pattern?: Pick<PatternPlan, 'around' | 'closing' | 'lay'>;
}

function pieceWords({ piece, units }: GuideNotesInput): string[] {
  const { index, count, levels } = piece;
  if (count === 1) return [];
  const { foot, lip } = levelLetters(piece);
  const neighbours = [
    ...(index > 0 ? [`its foot edge meets piece ${index}${atJoint(foot)}`] : []),
    ...(index < count - 1 ? [`its lip edge meets piece ${index + 2}${atJoint(lip)}`] : []),
  ];
  const under =
    lip !== undefined && levels.overlap > 0
      ? [
          `${cutLength(levels.overlap, units)} past level joint ${lip} at the lip edge, to lie under the level above`,
        ]
      : [];
  return [`piece ${index + 1} of ${count}, counted from the foot; ${neighbours.join(', ')}`, ...under];
}

const atJoint = (letter: string | undefined): string =>
  letter === undefined ? '' : ` at level joint ${letter}`;

function panelWords({ panel, template: { seam, overlap } }: GuideNotesInput): string[] {
  if (!panel) return [];
  const { index, count, left, right } = panel;
  const turns = [seam.start, seam.finish].map(({ turn }) => Number(turn.toFixed(4)));
  const how = overlap > 0 ? 'the panel at its left goes on to the next line' : 'the panels meet edge to edge';
  return [
    `panel ${panelLetter(index)}, ${index + 1} of ${count}, turn ${turns.join(' to ')}`,
    ...(left === undefined ? [] : [`left side: joint ${left} on joint ${left}, cross on cross; ${how}`]),
    ...(right === undefined ? [] : [`right side: joint ${right}`]),
  ];
}

function sideWords({ blank, template: { overlap }, panel, seam, units }: GuideNotesInput): string {
  const shown = (mm: number) => cutLength(mm, units);
  if (panel?.right !== undefined) return `overlap ${shown(overlap)} past the joint, at the right`;
  if (blank.handle)
    return `both ends stop ${shown(blank.handle.keepOff)} short of the handle, outlined to its middle`;
  switch (seam.style) {
    case 'cut-through':
      return `overlap ${shown(overlap)}, half of it past the seam at either end; cut both layers along the seam`;
    case 'strip':
      return `the ends meet edge to edge, under a cover strip of ${shown(seam.strip ?? 0)}`;
    case 'winding':
      return overlap > 0
        ? `both ends wind alike; the finish goes on by ${shown(overlap)} or more, to lie under the start`
        : 'both ends wind alike and meet edge to edge';
    case 'butt':
      return 'the ends meet edge to edge';
    default:
      return `overlap ${shown(overlap)} past the seam, at the right${seam.top === 'start' ? '; it goes under the left end, whose edge shows' : ''}`;
  }
}

/** What is trimmed off; at a level joint nothing is, and what goes on there stays. */
function trimWords({ template: { trim }, piece, units }: GuideNotesInput): string[] {
  const { foot, lip } = levelLetters(piece);
  const ends = [
    ...(foot === undefined ? [`${cutLength(trim.foot, units)} at the foot`] : []),
    ...(lip === undefined ? [`${cutLength(trim.lip, units)} at the lip`] : []),
  ];
  return ends.length === 0 ? [] : [`trim ${ends.join(', ')}`];
}

/** What is cut otherwise than the wall because of the film. */
function filmWords({ film }: GuideNotesInput): string[] {
  const giving = givingInWords(film);
  return giving === undefined ? [] : [giving];
}

function flatWords({ template: { piece }, flatBands, units }: GuideNotesInput): string[] {
  const shown = (mm: number) => cutLength(mm, units);
  const touching = flatBands.filter(({ from, to }) => to > piece.from && from < piece.to);
  if (touching.length === 0) return [];
  return [
    `film lies flat from ${touching.map(({ from, to }) => `${shown(from)} to ${shown(to)}`).join(', and from ')}`,
  ];
}

function patternWords({ pattern }: GuideNotesInput): string[] {
  if (!pattern) return [];
  const { scaleAcross, scaleUp } = pattern.closing;
  const of = pattern.lay === 'rigid' ? 'of how far apart they were drawn' : 'of drawn size';
  const size =
    Math.abs(scaleAcross - scaleUp) < 5e-4
      ? `${inPercent(scaleAcross)} ${of}`
      : `${inPercent(scaleAcross)} ${of} around, ${inPercent(scaleUp)} up`;
  const motifs = pattern.lay === 'rigid' ? 'motifs whole, at ' : '';
  return [`${pattern.around} repeats around, ${motifs}${size}`];
}

/** Lines of words, each a fact a maker needs beside the drawing. */
export function guideNotes(input: GuideNotesInput): string[] {
  const { name, blank, template, band } = input;
  const { wall, band: onSheet } = template;
  const shown = (mm: number) => cutLength(mm, input.units);
  return [
    `${blank.name}: ${name}`,
    ...pieceWords(input),
    ...panelWords(input),
    `seen from outside, foot down${input.shown === 'upside-down' ? '; shown standing on its lip, so the art is on its head here' : ''}; band ${shown(band.from)} to ${shown(band.to)} along`,
    `girth of the sheet: foot edge ${shown(girthAt(wall, onSheet.from))}, lip edge ${shown(girthAt(wall, onSheet.to))}`,
    sideWords(input),
    ...trimWords(input),
    ...filmWords(input),
    ...flatWords(input),
    ...patternWords(input),
    'measure the squares before you cut: 25 mm and 1 in',
  ];
}
