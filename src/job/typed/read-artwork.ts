// The artwork of a job, as typed: its file, how it repeats, how it is laid and closed.
import { mostColours } from '../../artwork/picture/picture-colours.ts';
import { cross, type Point } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { colour } from './read-lettering.ts';
import { readStrips, stripsKeys } from './read-strips.ts';
import type { Artwork, OverArt, Repeat } from './resolved-job.ts';
import {
  holding,
  holdingList,
  isObject,
  optional,
  type Place,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  within,
} from './schema.ts';
import { choice, displacement, given, length, list, number, text, yesOrNo } from './schema-values.ts';

/** Most repeats taken as meant around a vessel: past it each is narrower than a blade's corner. */
const mostAround = 10_000;

/** More ways than this are never listed. */
const mostWays = 100;

/** Pieces further apart than this are hardly one motif, mm. Common practice, no source. */
const widestTogether = 50;

/** Least area of a repeat, mm²: under it two lattice vectors point the same way but for rounding. */
const leastRepeat = 1e-6;

const gridKeys = {
  across: optional('Repeat across', length()),
  up: optional('Repeat up', length()),
  drop: standard('Drop', displacement, 0),
  shift: standard('Shift', displacement, 0),
};

const readVector: Reader<Point> = (value, place) => {
  if (!Array.isArray(value) || value.length !== 2)
    return report(place, 'not-a-vector', 'will not do here; give two lengths, [x, y]');
  const [x, y] = [displacement(value[0], within(place, 0)), displacement(value[1], within(place, 1))];
  return x === undefined || y === undefined ? undefined : { x, y };
};

const latticeKeys = {
  a: required('First lattice vector', readVector),
  b: required('Second lattice vector', readVector),
};

const readRepeat: Reader<Repeat> = (value, place) => {
  const isLattice = isObject(value) && ('a' in value || 'b' in value);
  if (!isLattice) return readGrid(value, place);
  const mixed = Object.keys(gridKeys).filter((name) => Object.hasOwn(value, name));
  for (const name of mixed)
    report(
      within(place, name),
      'one-of-two',
      'is given beside a lattice; keep "a" and "b", or leave them out',
    );
  const lattice = Object.fromEntries(Object.entries(value).filter(([name]) => !mixed.includes(name)));
  const keys = readKeys(lattice, latticeKeys, place);
  if (keys?.a === undefined || keys.b === undefined) return undefined;
  const { a, b } = keys;
  return hasArea(a, b) ? { kind: 'lattice', a, b } : noArea(place, a, b);
};

const readGrid: Reader<Repeat> = (value, place) => {
  const keys = readKeys(value, gridKeys, place);
  if (keys === undefined) return undefined;
  const { across, up, drop, shift } = keys;
  if (across !== undefined && up !== undefined) {
    const [a, b] = [
      { x: across, y: drop },
      { x: shift, y: up },
    ];
    if (!hasArea(a, b)) return noArea(place, a, b);
  }
  return { kind: 'grid', ...given({ across, up }), drop, shift };
};

const hasArea = (a: Point, b: Point): boolean => Math.abs(cross(a, b)) >= leastRepeat;

function noArea(place: Place, a: Point, b: Point): undefined {
  const [first, second] = [a, b].map(({ x, y }) => `[${inMm(x)}, ${inMm(y)}]`);
  const says = `moves by ${first} and by ${second}, which point the same way and repeat nothing; give two ways that cross`;
  return report(place, 'repeat-without-area', says);
}

/** A way by its key, or by its number in the list. */
const readWay: Reader<string | number> = (value, place) =>
  typeof value === 'string'
    ? text(value, place)
    : number({ least: 1, most: mostWays, whole: true })(value, place);

/** A place of the drawing, or where a straight seam cuts least. */
const readSeamAt: Reader<number | 'gaps'> = (value, place) => {
  if (value === 'gaps') return value;
  if (typeof value !== 'string' || /\d/.test(value)) return displacement(value, place);
  return report(
    place,
    'not-a-choice',
    `${shown(value)} will not do here; give "gaps", or a length such as "20mm"`,
  );
};

const overKeys = { file: required('Drawing', text), colour: optional('Colour', colour) };

/** A drawing by its file, or with the colour it is cut in. */
const readOver: Reader<OverArt> = (value, place) => {
  if (!isObject(value)) {
    const file = text(value, place);
    return file === undefined ? undefined : { file };
  }
  const keys = readKeys(value, overKeys, place);
  return keys?.file === undefined ? undefined : { file: keys.file, ...given({ colour: keys.colour }) };
};

/** A colour, or several. */
const readGround: Reader<readonly string[]> = (value, place) => {
  if (Array.isArray(value)) return list(colour)(value, place);
  const one = colour(value, place);
  return one === undefined ? undefined : [one];
};

export const artworkKeys = {
  file: required('Artwork', text),
  over: holdingList(optional('Drawings over it', list(readOver)), overKeys),
  repeat: holding(optional('Repeat', readRepeat), gridKeys),
  lay: standard('Lay', choice<Artwork['lay']>(['even', 'conformal', 'rigid']), 'even'),
  around: optional('Repeats around', number({ least: 1, most: mostAround, whole: true })),
  scale: standard('Scale', choice<'both' | 'across'>(['both', 'across']), 'both'),
  way: optional('Way to close', readWay),
  seamAt: optional('Seam at', readSeamAt),
  strips: holding(optional('Cover strips', readStrips), stripsKeys),
  mend: optional('Mend', yesOrNo),
  together: optional('Gap within a motif', length({ most: widestTogether })),
  across: optional('Artwork across', length()),
  fonts: optional('Fonts of texts in it', list(text)),
  colours: optional('Colours', number({ least: 2, most: mostColours, whole: true })),
  ground: optional('Ground', readGround),
};

export const readArtwork: Reader<Artwork> = (value, place) => {
  const keys = readKeys(value, artworkKeys, place);
  if (keys?.file === undefined) return undefined;
  const {
    file,
    over,
    lay,
    scale,
    around,
    way,
    seamAt,
    strips,
    mend,
    together,
    across,
    fonts,
    colours,
    ground,
    repeat = { kind: 'grid', drop: 0, shift: 0 },
  } = keys;
  if (way !== undefined && around !== undefined)
    return report(
      within(place, 'around'),
      'one-of-two',
      'is given beside "way", which says how many go around; keep one of the two',
    );
  return {
    file,
    repeat,
    lay,
    scale,
    ...given({ over, around, way, seamAt, strips, mend, together, across, fonts, colours, ground }),
  };
};
