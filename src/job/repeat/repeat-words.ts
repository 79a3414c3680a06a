// What a tile is found to be, in the maker's words.
import type { Tile } from '../../artwork/tile.ts';
import { type Finding, look, note } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { toldIn } from '../../lengths/told-in.ts';
import { periodsShown, type RepeatStudy } from '../../pattern/study/repeat-study.ts';
import { sureRepeat } from '../../pattern/study/sure-repeat.ts';
import { sharpestCorner } from '../../pattern/tile/drawn-corners.ts';
import {
  drawnToEnd,
  endsOnBorders,
  metInWords,
  openInWords,
  sidesInWords,
  stepsInWords,
} from '../closing/way-words.ts';

/** Smooth outlines that bend by more than this on a border alone look cut there, radians: 5 degrees. */
const leastCut = Math.PI / 36;

/** What a maker has to look at. */
export function studyFindings(tile: Tile, study: RepeatStudy, file: string): Finding[] {
  const [worst] = study.borders.open;
  const [kink] = study.borders.kinks;
  if (worst) {
    const { length } = study.borders.open;
    const more = length > 1 ? `; ${length} places in all` : '';
    return [
      look(
        'does-not-join',
        { file, ...worst.at },
        `${study.isDoubtful ? `may not meet its own copy; ${doubtful}` : 'does not meet its own copy'}: ${openInWords(worst)}${more}`,
      ),
    ];
  }
  if (study.jump !== undefined) {
    const says = `meets its own copy at the borders, but its spacing jumps there by ${study.jump.toFixed(2)} mm: it was cut out of a larger pattern, or drawn with another gap there`;
    return [look('spacing-jumps', { file }, says)];
  }
  const sides = sidesFinding(study, file);
  if (!kink) return sides;
  const met = `its outlines meet their copies, but bend there by up to ${degrees(kink.angle).toFixed(1)} degrees`;
  const where = { file, ...kink.at };
  // Art with corners of its own may have some on its borders; smooth art that bends there alone was cut, where it mirrors itself.
  const isCut = kink.angle > leastCut && sharpestCorner(tile) < kink.angle / 2;
  const bends = isCut
    ? look(
        'bends-at-border',
        where,
        `${met} and nowhere else so sharply: look whether it was cut there; --out draws the place`,
      )
    : note('bends-at-border', where, `${met}; that may be as it was drawn`);
  return [...sides, bends];
}

/** Where art was drawn with sides on its borders, which a maker who cropped it has to know. */
function sidesFinding({ borders: { sides } }: RepeatStudy, file: string): Finding[] {
  const [longest] = sides;
  if (!longest) return [];
  return [note('sides-on-borders', { file, ...longest.at }, sidesInWords(sides))];
}

/** Whether it joins, and by what it repeats, line by line. */
export function studyInWords(tile: Tile, study: RepeatStudy, file: string, units: Units): string[] {
  const size = (mm: number) => measuredLength(mm, units);
  const colours = tile.layers.length === 1 ? 'one colour' : `${tile.layers.length} colours`;
  const { open } = study.borders;
  const place = open[0]
    ? openInWords(open[0])
    : `its borders meet, but its spacing jumps by ${(study.jump ?? 0).toFixed(2)} mm`;
  const fault = open[0] ? `it does not join: ${place}` : place;
  const joins = `it joins itself${study.stepped ? ', but not straight on' : ''}${study.isDoubtful ? ', as far as can be told' : ''}: ${metInWords(study)}`;
  return [
    `${file}: ${size(tile.width)} by ${size(tile.height)}, ${colours}`,
    toldIn(study.joins ? joins : study.isDoubtful ? `${doubtful}: ${place}` : fault, units),
    ...(endsOnBorders(study) ? [drawnToEnd] : []),
    periodInWords(tile, study, units),
  ];
}

const doubtful = 'whether it joins cannot be told from it alone, so look at it laid beside itself';

function periodInWords(tile: Tile, { joins, period, lattice }: RepeatStudy, units: Units): string {
  if (!period) return 'no repeat shows in it: nothing in it recurs both ways at a steady step';
  const free = period.along
    ? '; it is stripes, and any step along them is a repeat as well, so only the one across them tells'
    : '';
  const steps = stepsInWords(period, units);
  const sure = `${Math.round(period.confidence * 100)} %`;
  if (joins && period.a.x === lattice.a.x && period.b.y === lattice.b.y)
    return `its repeat is its own size: ${steps}${free}`;
  const { across, up } = periodsShown(tile, period);
  const isSure = period.confidence >= sureRepeat;
  if (joins && !isSure)
    return `its repeat is its own size: ${stepsInWords(lattice, units)}; most of it, but not all, recurs by ${stepsInWords(period, units)}, which is not laid unasked`;
  const doubt = isSure ? '' : '; not enough to lay it unasked: look at it before you name it';
  return `${isSure ? 'its true repeat' : 'what may be its repeat'}: ${steps}, sure to ${sure}; it shows ${across.toFixed(1)} of them across and ${up.toFixed(1)} up${free}${doubt}`;
}
