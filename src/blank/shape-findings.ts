// Whether the readings make a vessel at all: most that don't are a girth typed for a diameter, or a unit mixed up.
import { type Finding, look, note } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { placesOf } from './read-places.ts';
import { isUsualGirth } from './reading-findings.ts';

/** A place of a wall, from the foot up, mm. */
interface WallPlace {
  readonly radius: number;
  readonly height: number;
}

/** A vessel by its rough figures: mm and litres. */
interface Shape {
  readonly widest: number;
  readonly mean: number;
  readonly height: number;
  readonly litres: number;
  /** Diameters of its ends. */
  readonly foot: number;
  readonly lip: number;
}

/** Shapes that are asked about: a plate, a tube, what nobody drinks from, ends too unlike. All ours, from what is sold as cups and pots. */
const usual = {
  /** Widest diameter in heights. */
  wide: 3.5,
  /** The same of a vessel that is drunk from. */
  wideCup: 2.5,
  /** Height in mean diameters. */
  slender: 5,
  /** Height in mean diameters, and litres, of what is only that slender where it holds as little. */
  slim: 3,
  litresOfSlim: 0.15,
  /** Most that is drunk from, litres; where it is no wider than this many heights, a jug may hold more. */
  litres: 3,
  stout: 1.3,
  litresOfJug: 6,
  /** One end's diameter in those of the other, where the lip is wider, and where the foot is. */
  flared: 2.5,
  tapered: 2.05,
};

/** `odd-shape` (look): readings that make no usual vessel, with the slip that would explain them. */
export function shapeFindings(blank: Blank, places: readonly WallPlace[]): readonly Finding[] {
  const shape = shapeOf(places);
  const odd = oddIn(shape, blank.use);
  if (odd === undefined) return [];
  const slips = slipsOf(blank).filter(({ sizes, heights }) => {
    const other = shapeOf(places.map((p) => ({ radius: p.radius * sizes, height: p.height * heights })));
    return isUsualGirth(Math.PI * other.widest) && oddIn(other, blank.use) === undefined;
  });
  const cause = slips[0]?.says ?? (isUneven(shape) ? oneEnd : 'check each reading and its unit');
  const drunk =
    blank.use === undefined && isTooMuch(shape)
      ? ', or, if nobody drinks from it, say so with the use "other"'
      : '';
  return [
    look(
      'odd-shape',
      { key: 'stations' },
      `the readings make a vessel ${odd}; is it meant? If not, ${cause}${drunk}`,
    ),
  ];
}

const oneEnd = 'one of its ends was read around and typed as a diameter, or the other way about';

function shapeOf(places: readonly WallPlace[]): Shape {
  const [foot, lip] = [places[0]?.radius ?? 0, places.at(-1)?.radius ?? 0];
  const height = places.at(-1)?.height ?? 0;
  // Frusta: pi h (R² + R r + r²) / 3, Machinery's Handbook, from memory.
  const volume = places.slice(1).reduce((sum, above, i) => {
    const below = places[i] ?? above;
    const [R, r] = [above.radius, below.radius];
    return sum + (Math.PI * (above.height - below.height) * (R * R + R * r + r * r)) / 3;
  }, 0);
  return {
    widest: 2 * Math.max(...places.map(({ radius }) => radius)),
    mean: 2 * Math.sqrt(volume / (Math.PI * height)),
    height,
    litres: volume / 1e6,
    foot: 2 * foot,
    lip: 2 * lip,
  };
}

/** What is odd about a shape, in words that follow "a vessel". */
function oddIn(shape: Shape, use: Blank['use']): string | undefined {
  const { widest, mean, height, litres, foot, lip } = shape;
  const size = `${tenths(widest)} across at its widest and ${tenths(height)} high`;
  if (widest > usual.wide * height) return `${size}, as flat as a plate`;
  if (height > usual.slender * mean) return `${size}, as slender as a tube`;
  if (isUneven(shape)) return `${tenths(foot)} across at the foot and ${tenths(lip)} at the lip`;
  if (use === 'other') return undefined;
  if (height > usual.slim * mean && litres < usual.litresOfSlim)
    return `${size} that holds ${Math.round(litres * 1000)} ml, as slight as a test tube`;
  if (isTooMuch(shape)) return `${size} that holds ${litres.toFixed(1)} litres, more than is drunk from`;
  if (widest > usual.wideCup * height) return `${size}, flatter than is drunk from`;
  return undefined;
}

const isUneven = ({ foot, lip }: Shape): boolean => lip > usual.flared * foot || foot > usual.tapered * lip;

const isTooMuch = ({ litres, widest, height }: Shape): boolean =>
  litres > (widest > usual.stout * height ? usual.litres : usual.litresOfJug);

const tenths = (mm: number): string => inMm(Math.round(mm * 10) / 10);

/** Slips that a blank's readings allow, each as what it would have made of sizes and heights. */
function slipsOf({ stations }: Blank): readonly { sizes: number; heights: number; says: string }[] {
  const isAll = (kind: 'across' | 'girth') => stations.every(({ reading }) => reading.kind === kind);
  const inch = 25.4;
  return [
    ...(isAll('across')
      ? [
          {
            sizes: 1 / Math.PI,
            heights: 1,
            says: 'the sizes were read around it: give them as girths, not as diameters',
          },
        ]
      : []),
    ...(isAll('girth')
      ? [
          {
            sizes: Math.PI,
            heights: 1,
            says: 'the sizes were read straight across: give them as diameters, not as girths',
          },
        ]
      : []),
    { sizes: 1, heights: inch, says: 'the height is in inches and the sizes in mm: give each its unit' },
    { sizes: inch, heights: 1, says: 'the sizes are in inches and the height in mm: give each its unit' },
    { sizes: 1, heights: 1 / inch, says: 'the height is in mm and the sizes in inches: give each its unit' },
    { sizes: 1 / inch, heights: 1, says: 'the sizes are in mm and the height in inches: give each its unit' },
  ];
}

/** An end of a wall: its radius, and how sure its girth is, mm. */
export interface WallEnd {
  readonly radius: number;
  readonly uncertainty: number;
}

/** Less than this of the girth is no taper that a maker would see. */
const leastTaper = 0.01;

/**
 * `foot-wider` (note): of what is drunk from a vessel narrower at its lip is rare, and readings typed at each other's end are not. No more
 * than a note, for nothing else tells the two apart.
 */
export function footWiderFindings({ use, stations }: Blank, foot: WallEnd, lip: WallEnd): readonly Finding[] {
  const more = 2 * Math.PI * (foot.radius - lip.radius);
  // Twice the uncertainty of a difference is seldom passed by reading alone (JCGM 100:2008, G.2).
  const doubt = 2 * Math.hypot(foot.uncertainty, lip.uncertainty);
  if (use === 'other' || more <= Math.max(doubt, leastTaper * 2 * Math.PI * lip.radius)) return [];
  const isAcross = stations[0]?.reading.kind === 'across';
  const [wide, narrow] = [foot, lip].map(({ radius }) => tenths((isAcross ? 2 : 2 * Math.PI) * radius));
  const says = `the vessel is wider at its foot, ${wide} ${isAcross ? 'across' : 'around'}, than at its lip, ${narrow}; if yours is not, the two were typed at each other's end, for readings go from the foot up`;
  return [note('foot-wider', { key: 'stations' }, says)];
}

/** `wall-unsuited` (look): a wall said to bend, of which too few places were read to know how. */
export function bendlessFindings({ wall, stations }: Blank): readonly Finding[] {
  if (wall === 'straight' || placesOf(stations).length > 2) return [];
  const says = `readings at two places give one straight line, so "${wall}" changes nothing; call the wall "straight", or read it in between as well`;
  return [look('wall-unsuited', { key: 'wall' }, says)];
}
