// Which collars a blank gets, each with its own flat wall, and all that stands against them.
import type { Blank } from '../../blank/blank.ts';
import { oddCoat } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { roomBeside } from '../../blank/handle-room.ts';
import { alongOfHeight } from '../../blank/profile.ts';
import {
  flatBandsOfWall,
  longestBand,
  roundLimits,
  type Wall,
  wallAt,
  wallLength,
  wallOf,
  wallWithin,
} from '../../blank/wall.ts';
import { type Collar, type CollarEdge, collarOf, stripOf } from '../../cut/drawings/collar.ts';
import { type Finding, inFile, look, note, Refused, refuseIfAny, stop } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { inMm } from '../../lengths/length.ts';
import { type FlatWall, flatWall, radiusAt, sweep } from '../../unroll/flat-wall.ts';
import { sheetRadiusAt } from '../../unroll/sheet-wall.ts';
import { turnOfEdge } from '../../unroll/template.ts';
import { thickCoatWords } from './coats-on-wall.ts';
import { widestSweepDeg } from './plan.ts';

/** What is asked of the collars; mm. */
export interface CollarAsk {
  /** Level lines as typed; none: every edge of the flat bands. */
  readonly lines: readonly {
    readonly kind: 'height' | 'along';
    readonly mm: number;
    /** Of this line alone. */
    readonly edge?: CollarEdge;
  }[];
  /** Which edge is level; left out, the one that keeps the strip on the flat band. */
  readonly edge?: CollarEdge;
  readonly width: number;
  /** Thickness of the paper. */
  readonly paper: number;
  /** Thickness of all coats together. */
  readonly coats: number;
  readonly tab: number;
}

export interface CollarPlan {
  readonly wall: Wall;
  readonly collars: readonly Collar[];
  /** What is to be said of the wall, then of the collars. */
  readonly findings: readonly Finding[];
  readonly ofCollars: readonly Finding[];
}

/** What a maker types for collars, by the names of the flags. */
export type CollarKey = 'height' | 'along' | 'edge' | 'width' | 'coat' | 'overlap';

export interface CollarPlanInput extends CollarAsk {
  readonly blank: Blank;
  /** As the maker named it; stands in findings. */
  readonly blankFile: string;
  /** What a key is called where it was typed, such as `--width`. */
  readonly keyed: (key: CollarKey) => string;
}

/** So many are printed in some five seconds; two hundred took over a minute. */
const mostCollars = 24;

/** Narrowest strip: three rows of words no smaller than 1.6 mm, mm. */
const leastWidth = 8;

/** @throws Refused with everything that keeps a level line or its strip from being had. */
export function planCollars(input: CollarPlanInput): CollarPlan {
  const { blank, blankFile } = input;
  const { wall, findings: wallSays } = wallOf(blank);
  refuseIfAny(askStops(input));
  const bands = flatBandsOfWall(wall, blank);
  const lines = linesOf(input, wall, bands);
  const strips = lines.map(({ along, edge }) => stripAt(input, wall, bands, along, edge));
  refuseIfAny(strips.flatMap(({ stops }) => stops));
  const clear = blank.handle && roomBeside(blank.handle);
  const collars = strips.map(({ along, edge, width }) =>
    collarOf(tangentCone(input, wall, along, stripOf({ along, edge, width })), {
      along,
      edge,
      width,
      tab: input.tab,
      ...(clear === undefined ? {} : { clear }),
    }),
  );
  const stops = collars.flatMap((collar) => pieceStops(collar, input));
  // One flag stands behind the same fault of every collar.
  refuseIfAny(stops.filter((found, i) => stops.findIndex(({ rule }) => rule === found.rule) === i));
  const ofCollars = [
    ...strips.flatMap(({ findings }) => findings),
    ...collars.flatMap((collar) => layFindings(collar, input, wall)),
  ];
  return {
    wall,
    collars,
    findings: [...inFile(wallSays, blankFile), ...coatFindings(input), ...ofCollars],
    ofCollars,
  };
}

const askStops = ({ width, coats, lines, keyed }: CollarPlanInput): Finding[] => [
  ...(lines.length <= mostCollars
    ? []
    : [
        stop(
          'too-many-collars',
          { key: keyed(lines[0]?.kind ?? 'height') },
          `asks for ${lines.length} collars; up to ${mostCollars} are drawn in one go`,
        ),
      ]),
  ...(width >= leastWidth
    ? []
    : [
        stop(
          'collar-narrow',
          { key: keyed('width') },
          `${inMm(width)} is too narrow for words and hands; give ${inMm(leastWidth)} or more`,
        ),
      ]),
  ...(coats > oddCoat.refused ? [stop('coat-too-thick', { key: keyed('coat') }, thickCoatWords(coats))] : []),
];

const coatFindings = ({ coats, keyed }: CollarPlanInput): Finding[] =>
  coats > oddCoat.asked ? [look('coat-thick', { key: keyed('coat') }, thickCoatWords(coats))] : [];

interface Line {
  readonly along: number;
  readonly edge?: CollarEdge;
}

/** The level lines, from the foot up. @throws Refused where one is not on the wall, or there is none. */
function linesOf(
  { lines, edge, blankFile, keyed }: CollarPlanInput,
  wall: Wall,
  bands: readonly Band[],
): Line[] {
  const chosen = edge === undefined ? {} : { edge };
  if (lines.length === 0) {
    if (bands.length === 0) {
      const says = `this wall bends everywhere, so it has no flat band whose edges could be marked; give a ${keyed('height')}`;
      throw new Refused([stop('no-flat-band', { file: blankFile, key: 'stations' }, says)]);
    }
    // On a wall that bends, flat bands touch and go on; the longest is the one that is decorated.
    const longest = longestBand(bands);
    const marked = wall.kind === 'straight' || !longest ? bands : [longest];
    return marked.flatMap(({ from, to }): Line[] => [
      { along: from, edge: 'lower', ...chosen },
      { along: to, edge: 'upper', ...chosen },
    ]);
  }
  const length = wallLength(wall);
  const height = wallAt(wall, length).height;
  refuseIfAny(
    lines
      .filter((line) => line.mm > (line.kind === 'height' ? height : length) + precision)
      .map(({ kind, mm: typed }) => {
        const most = kind === 'height' ? `${inMm(height)} high` : `${inMm(length)} along`;
        return stop(
          'outside-wall',
          { key: keyed(kind) },
          `${inMm(typed)} is past the lip; the wall is ${most}`,
        );
      }),
  );
  const places = lines.map(({ kind, mm: typed, edge: own }): Line => {
    const along = Math.min(length, kind === 'along' ? typed : alongAtHeight(wall, typed));
    return { along, ...chosen, ...(own === undefined ? {} : { edge: own }) };
  });
  const once = new Map(places.map((line) => [line.along, line]));
  return [...once.values()].sort((a, b) => a.along - b.along);
}

const alongAtHeight = (wall: Wall, height: number): number =>
  wall.kind === 'straight'
    ? height / Math.cos(wall.straight.halfAngle)
    : alongOfHeight(wall.curved.profile, height);

interface Strip {
  readonly along: number;
  readonly edge: CollarEdge;
  readonly width: number;
  readonly stops: readonly Finding[];
  readonly findings: readonly Finding[];
}

/** The strip at a level line: kept within the wall, on the side given or else on the one with more flat wall. */
function stripAt(
  input: CollarPlanInput,
  wall: Wall,
  bands: readonly Band[],
  along: number,
  given?: CollarEdge,
): Strip {
  const { blank, blankFile, keyed, width: wanted } = input;
  const on = bands.find(({ from, to }) => along >= from - precision && along <= to + precision);
  const home = on ?? { from: 0, to: wallLength(wall) };
  const edge = given ?? (home.to - along >= along - home.from ? 'lower' : 'upper');
  const room = edge === 'lower' ? wallLength(wall) - along : along;
  const width = Math.min(wanted, room);
  const where = { file: blankFile, along };
  if (width < leastWidth) {
    const other = edge === 'lower' ? 'upper' : 'lower';
    const says = `a strip with its ${edge} edge ${inMm(along)} up the wall has only ${inMm(room)} of wall; use ${keyed('edge')} ${other}`;
    return {
      along,
      edge,
      width,
      stops: [stop('no-room', { ...where, key: keyed('edge') }, says)],
      findings: [],
    };
  }
  const findings: Finding[] = [];
  if (width < wanted - precision)
    findings.push(
      note(
        'collar-narrowed',
        where,
        `the collar ${inMm(along)} up the wall is ${inMm(width)} wide: the wall ends there`,
      ),
    );
  const limits = roundLimits(wall, blank);
  const strip = stripOf({ along, edge, width });
  const beyond = Math.max(limits.from - strip.from, strip.to - limits.to);
  if (beyond > precision) {
    const says = `the collar ${inMm(along)} up the wall reaches ${inMm(beyond)} onto a rounded edge, where paper does not lie; use the other ${keyed('edge')}, or a smaller ${keyed('width')}`;
    findings.push(look('off-flat', where, says));
  }
  return { along, edge, width, stops: [], findings };
}

/**
 * The cone that touches the wall along the level line: there the strip has the wall's own girth and lean, whatever the
 * wall does elsewhere. On a straight wall it is the wall.
 */
function tangentCone({ coats, paper }: CollarPlanInput, wall: Wall, along: number, strip: Band): FlatWall {
  const build = { coats, film: paper, gather: 0 };
  const { lean } = wallWithin(wall, along, strip);
  return flatWall(sheetRadiusAt(wall, build, along, strip), Math.sin(lean), along);
}

function pieceStops({ template, along }: Collar, { tab, blankFile, keyed }: CollarPlanInput): Finding[] {
  const { wall, piece, left, right } = template;
  const narrow = radiusAt(wall, piece.from) < radiusAt(wall, piece.to) ? piece.from : piece.to;
  const where = { file: blankFile, along };
  if (radiusAt(wall, narrow) <= 1)
    return [
      stop(
        'past-the-point',
        { ...where, key: keyed('width') },
        'reaches past the point where this wall closes; give less',
      ),
    ];
  const sweepDeg = degrees(Math.abs(sweep(wall)));
  if (sweepDeg > widestSweepDeg) {
    const says = `this wall is so flat a cone that it lies down as ${sweepDeg.toFixed(1)} degrees of a ring; one piece can be up to ${widestSweepDeg}`;
    return [stop('sweep-too-wide', where, says)];
  }
  const girth = 2 * Math.PI * radiusAt(wall, narrow);
  if (tab >= girth)
    return [
      stop(
        'overlap-too-wide',
        { key: keyed('overlap') },
        `${inMm(tab)} is more than the least girth, ${inMm(girth)}; 10 mm is usual`,
      ),
    ];
  const turns = turnOfEdge(wall, right, narrow) - turnOfEdge(wall, left, narrow);
  if (Math.abs(sweep(wall)) * turns >= 2 * Math.PI)
    return [
      stop(
        'overlaps-itself',
        { key: keyed('overlap') },
        `with a tab of ${inMm(tab)} the flat ring meets itself; give less`,
      ),
    ];
  return [];
}

/** Where a wall that bends leaves the strip by more than a straightedge may. */
function layFindings({ template, along }: Collar, input: CollarPlanInput, wall: Wall): Finding[] {
  if (wall.kind === 'straight') return [];
  const build = { coats: input.coats, film: input.paper, gather: 0 };
  const { from, to } = template.band;
  const off = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40).map((at) =>
    Math.abs(sheetRadiusAt(wall, build, at, template.band) - radiusAt(template.wall, at)),
  );
  const most = Math.max(...off);
  if (most <= input.blank.flatGap) return [];
  const says = `the wall bends away from the collar by ${inMm(most)}; its level edge still fits, but give a smaller ${input.keyed('width')} so that it lies close`;
  return [look('collar-off-wall', { file: input.blankFile, along }, says)];
}
