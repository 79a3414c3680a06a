// A job drawn for new readings from the drawing of readings before: every point of its art goes where it comes to lie on the
// new wall. Nothing is merged, fitted or checked anew, and what the finished edges took out stays out, so that typing is
// followed at once; the job laid afresh comes after it.

import type { DrawWords } from '../../drawing/words.ts';
import { type Affine, inverse, moveAll, movePoint } from '../../geometry/affine.ts';
import { norm, type Point } from '../../geometry/point.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import { type FlatWall, girthAt, toFlatAll, toWall } from '../../unroll/flat-wall.ts';
import { type SideEdge, type Template, turnOfEdge } from '../../unroll/template.ts';
import { draftPieces } from '../lay/make.ts';
import type { MakeInput } from '../make-input.ts';
import { runOff } from '../plan/plan.ts';
import { templateOfDrafts } from '../proof/template-report.ts';
import type { TemplateReport } from '../report.ts';
import { type ArtLaid, type ArtOnPiece, laidOnOthers, layOfPiece } from './art-laid.ts';
import { type FlatGroup, type FlatView, flatViewOf } from './flat-view.ts';
import { type Ink, inkCodes, inkOf, pointsOf } from './ink.ts';
import type { Room } from './room.ts';

/** A group of art by its numbers. */
export interface InkedGroup extends Omit<FlatGroup, 'd'> {
  readonly ink: Ink;
}

export interface FollowedView {
  /** All but the art. */
  readonly view: FlatView;
  /** The art of each piece of the view. */
  readonly art: readonly (readonly InkedGroup[])[];
  readonly template: TemplateReport;
}

/** A job as it was laid: what its drawing shows, and how its pattern lies. */
export interface Leading {
  readonly view: FlatView;
  readonly laid: ArtLaid;
}

/** The middle of a curve, to see by how much it would stray if its handles alone are carried. */
interface Probe {
  /** The curve's first point, as a place in `points`. */
  readonly at: number;
  readonly isCubic: boolean;
}

interface DrawnGroup {
  readonly group: Omit<FlatGroup, 'd'>;
  readonly codes: Ink['codes'];
  readonly shapes: Ink['shapes'];
  /** In the pattern's own drawing, mm drawn. */
  readonly points: Ink['points'];
  readonly probes: readonly Probe[];
  /** x and y of every probe's middle, there too. */
  readonly middles: Ink['points'];
}

/** A laid job whose drawing follows its readings. */
export interface Follower {
  readonly laid: ArtLaid;
  readonly pieces: readonly (readonly DrawnGroup[])[];
}

/** Of all curves so many are looked at. */
const probed = 400;

export const followerOf = ({ view, laid }: Leading): Follower => ({
  laid,
  pieces: laid.pieces.map((piece, i) => {
    const lay = layOfPiece(laid.frame, piece);
    return (view.pieces[i]?.groups ?? [])
      .filter(({ role }) => role === 'artwork')
      .map((group) => asDrawn(group, piece, lay));
  }),
});

/** A group of art in the frame of the pattern's own drawing. */
function asDrawn({ d, ...group }: FlatGroup, { template, toFile, out }: ArtOnPiece, lay: Lay): DrawnGroup {
  const { codes, points, shapes } = inkOf(d);
  const [fromFile, fromLaid] = [inverse(toFile), inverse(out)];
  const asLaid = (places: Ink['points']): Ink['points'] => {
    const drawn = places.slice();
    for (let i = 0; i < drawn.length; i += 2) {
      const onFile = { x: drawn[i] ?? 0, y: drawn[i + 1] ?? 0 };
      const { turn, along } = toWall(template.wall, movePoint(fromFile, onFile));
      drawn[i] = turn * lay.around;
      drawn[i + 1] = lay.fromAlong(along);
    }
    moveAll(fromLaid, drawn);
    return drawn;
  };
  const probes = probesOf({ codes, points });
  const middles = Float64Array.from(
    probes.flatMap((probe) => {
      const { x, y } = middleOf(points, probe);
      return [x, y];
    }),
  );
  return { group, codes, shapes, points: asLaid(points), probes, middles: asLaid(middles) };
}

function probesOf(ink: Omit<Ink, 'shapes'>): readonly Probe[] {
  const every = Math.max(1, Math.floor(ink.codes.length / probed));
  const probes: Probe[] = [];
  let at = 0;
  ink.codes.forEach((code, i) => {
    const isCubic = code === inkCodes.cubic;
    if (i % every === 0 && (isCubic || code === inkCodes.line)) probes.push({ at: at - 2, isCubic });
    at += 2 * (pointsOf[code] ?? 0);
  });
  return probes;
}

/** The middle of a curve or a line, by its parameter. */
function middleOf(points: Ink['points'], { at, isCubic }: Probe): Point {
  const of = (i: number): number => points[at + i] ?? 0;
  const middle = (i: number): number =>
    isCubic ? (of(i) + 3 * of(i + 2) + 3 * of(i + 4) + of(i + 6)) / 8 : (of(i) + of(i + 2)) / 2;
  return { x: middle(0), y: middle(1) };
}

const notRead = (): never => {
  throw new Error('what follows a drawing reads no artwork');
};

/** Curves that are not looked at may stray more than those that are, by this. */
const unseen = 1.5;

/**
 * The job drawn for new readings, within its cut line true to `within` mm of the job laid afresh; undefined where it can't be followed so
 * closely. All else of the job has to be as it was. Its points are in the room, and codes and shapes the follower's own. @throws Refused where the readings can't be.
 */
export function followedView(
  { laid: before, pieces: drawn }: Follower,
  input: Omit<MakeInput, 'tools'>,
  words: DrawWords,
  within: number,
  room: Room,
): FollowedView | undefined {
  room.begin();
  const { artwork: _, layers: __, stencil: ___, ...job } = input.job;
  const tools = { words, normalise: notRead, setText: notRead };
  const drafts = draftPieces({ ...input, job, tools, unchecked: true, linesOnly: true });
  if (drafts.length !== before.pieces.length || drafts.some(({ panel }) => panel)) return undefined;
  const after = laidOnOthers(before.frame, job.edges, drafts);
  if (!after) return undefined;
  const art: (readonly InkedGroup[])[] = [];
  for (const [i, piece] of after.pieces.entries()) {
    const was = before.pieces[i];
    const lay = layOfPiece(after.frame, piece);
    const carry = was && carryingOf(was, layOfPiece(before.frame, was), piece, lay);
    if (!carry || sidesApart(was, piece) > within) return undefined;
    const groups = (drawn[i] ?? []).map(({ group, codes, points, shapes, probes, middles }) => {
      const carried = room.of(points.length);
      carryAll(carry, points, carried);
      const wanted = room.of(middles.length);
      carryAll(carry, middles, wanted);
      return { group: { ...group, ink: { codes, shapes, points: carried } }, probes, wanted };
    });
    const strays = groups.map(({ group, probes, wanted }) => straysOf(group.ink.points, probes, wanted));
    if (unseen * Math.max(0, ...strays) > within) return undefined;
    art.push(groups.map(({ group }) => group));
  }
  room.keep();
  return { view: flatViewOf(drafts), art, template: templateOfDrafts(drafts, runOff) };
}

/** How much longer or shorter the art's end in the waste is made at most, so that it ends where it should. */
const mostSqueezed = 2;

/** By how much the middles of curves whose points were carried are off where they are wanted, at most. */
function straysOf(points: Ink['points'], probes: readonly Probe[], wanted: Ink['points']): number {
  let most = 0;
  for (const [i, probe] of probes.entries()) {
    const { x, y } = middleOf(points, probe);
    most = Math.max(most, norm(x - (wanted[2 * i] ?? 0), y - (wanted[2 * i + 1] ?? 0)));
  }
  return most;
}

/**
 * The way from the pattern's drawing to a new file. In the waste past the cut line the art is squeezed or drawn out, so that
 * it ends where it ends.
 */
interface Carrying {
  readonly out: Affine;
  readonly lay: Lay;
  readonly wall: FlatWall;
  readonly piece: Template['piece'];
  readonly toFile: Affine;
  /** How much longer the waste is at either end. */
  readonly foot: number;
  readonly lip: number;
}

/** Undefined where the waste would be squeezed by more than a little, as where the art does not reach the cut line. */
function carryingOf(
  was: ArtOnPiece,
  layWas: Lay,
  { template: { wall, piece }, toFile, out }: ArtOnPiece,
  lay: Lay,
): Carrying | undefined {
  const up = out.d / was.out.d;
  /** The new height of what lay at a height before. */
  const carried = (along: number): number => lay.toAlong(layWas.fromAlong(along) * up);
  const [foot, lip] = [
    runOff / (piece.from - carried(was.template.piece.from - runOff)),
    runOff / (carried(was.template.piece.to + runOff) - piece.to),
  ];
  const isSlight = (by: number): boolean => by < mostSqueezed && by > 1 / mostSqueezed;
  if (!isSlight(foot) || !isSlight(lip)) return undefined;
  return { out, lay, wall, piece, toFile, foot, lip };
}

/** All points on that way, one step of it after the other: at every key, so no point is made an object of. */
function carryAll(
  { out, lay, wall, piece, toFile, foot, lip }: Carrying,
  from: Ink['points'],
  to: Ink['points'],
): void {
  to.set(from);
  moveAll(out, to);
  for (let i = 0; i < to.length; i += 2) {
    to[i] = (to[i] ?? 0) / lay.around;
    const along = lay.toAlong(to[i + 1] ?? 0);
    if (along > piece.to) to[i + 1] = piece.to + (along - piece.to) * lip;
    else to[i + 1] = along < piece.from ? piece.from + (along - piece.from) * foot : along;
  }
  toFlatAll(wall, to);
  moveAll(toFile, to);
}

/** By how much the art's ends beside the piece are off where they belong, mm on the new sheet. */
function sidesApart(was: ArtOnPiece, is: ArtOnPiece): number {
  const ends = [({ piece }: Template): number => piece.from, ({ piece }: Template): number => piece.to];
  const sides = [
    ({ left }: Template): SideEdge => ({ ...left, offset: left.offset - runOff }),
    ({ right }: Template): SideEdge => ({ ...right, offset: right.offset + runOff }),
  ];
  const turn = (template: Template, side: SideEdge, along: number) => turnOfEdge(template.wall, side, along);
  const apart = ends.flatMap((end) =>
    sides.map((side) => {
      const along = end(is.template);
      const off =
        turn(is.template, side(is.template), along) -
        turn(was.template, side(was.template), end(was.template));
      return Math.abs(off) * girthAt(is.template.wall, along);
    }),
  );
  return Math.max(...apart);
}
