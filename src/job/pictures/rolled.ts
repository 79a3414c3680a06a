// The picture of the finished vessel, from the written files.

import type { Blank } from '../../blank/blank.ts';
import { readSvg } from '../../deliver/read-svg.ts';
import { type Drawing, type DrawnGroup, movedGroups } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { type Affine, compose, inverse, movePoint, rotation, translation } from '../../geometry/affine.ts';
import { rolledPicture, rolledSheets } from '../../picture/rolled/rolled.ts';
import { wallRings } from '../../picture/rolled/rolled-rings.ts';
import { type RolledSheet, sheetOf } from '../../picture/rolled/rolled-sheet.ts';
import type { RolledVessel } from '../../picture/rolled/rolled-vessel.ts';
import { groupsOf, originOf, placeOf } from '../../prove/written/locate.ts';
import { girthAt, levelAngle, toFlat, toWall, turnMotion } from '../../unroll/flat-wall.ts';
import { sheetOnWall } from '../../unroll/sheet-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import type { Written, WrittenPiece } from '../deliverables.ts';
import type { Draft } from '../draft.ts';
import { motifOnSheet } from '../plan/on-sheet.ts';
import type { Ground } from '../plan/plan.ts';
import { decoratesApart, type PlacedMotif } from '../typed/placed-motif.ts';

/** A written piece and the vessel it goes around. */
export interface RolledSubject {
  readonly drawing: Drawing;
  readonly vessel: RolledVessel;
}

/** The vessel apart from what is laid on it, in the sheet's own lengths. The sheet is drawn at its mid-thickness, on top of the coats, as it was sized. */
export const vesselOf = (
  { wall, build, lengths }: Pick<Ground, 'wall' | 'build' | 'lengths'>,
  { footRound, lipRound, handle }: Blank,
): Pick<RolledVessel, 'profile' | 'footRound' | 'lipRound' | 'handleSpan'> => ({
  profile: wallRings(wall, build.coats + build.film / 2).map((ring) => ({
    ...ring,
    along: lengths.toGrown(ring.along),
  })),
  footRound,
  lipRound,
  ...(handle ? { handleSpan: handle.spans } : {}),
});

/** How the vessel is seen, and what its seam shows: a lap, but for what is cut through or winds, which shows one edge alone, and what is no film; a strip. */
const seamShown = ({ job, plan }: Draft, { handle }: Blank, overlap = plan.template.overlap) => ({
  overlap:
    job.seam.style === 'cut-through' || job.seam.style === 'winding' || decoratesApart(job) ? 0 : overlap,
  ...(job.seam.top === undefined ? {} : { top: job.seam.top }),
  ...(job.shown === 'upside-down' ? { standsOnLip: true } : {}),
  ...(plan.template.winding ? { winding: plan.template.winding } : {}),
  ...(job.seam.strip === undefined || handle ? {} : { strip: job.seam.strip }),
  ...coversShown(job, handle !== undefined, plan.lengths),
});

/** Strips on borders of the pattern; a handle leaves turn 0 bare. */
function coversShown(
  { artwork }: Draft['job'],
  hasHandle: boolean,
  { toGrown }: Draft['plan']['lengths'],
): Pick<RolledVessel, 'covers'> {
  if (!artwork?.strips) return {};
  const { width, turns = [], along = [] } = artwork.strips;
  return {
    covers: { width, turns: turns.filter((turn) => turn > 0 || !hasHandle), along: along.map(toGrown) },
  };
}

/** The cut file read back, with the motifs of the written `parts` on it, and the vessel it belongs to. */
export function rolledSubject(
  draft: Draft,
  blank: Blank,
  written: Written,
  parts: readonly WrittenPiece[] = [],
): RolledSubject {
  const { plan, motifs } = draft;
  const { template } = plan;
  const origin = originOf(readSvg(written.guide, 'wrap.guide.svg', ['seam']), template, 'wrap.guide.svg');
  const wrap = readSvg(written.cut, 'wrap.cut.svg');
  const apart = parts.flatMap((part) => {
    const placed = motifs.find(({ name }) => name === part.stem);
    return placed
      ? laidOn(motifOnSheet(placed, plan.lengths), part, template, translation(origin.x, origin.y))
      : [];
  });
  return {
    drawing: { ...wrap, groups: [...wrap.groups, ...apart] },
    vessel: {
      ...vesselOf(plan, blank),
      origin,
      wall: template.wall,
      band: template.band,
      seam: template.seam,
      ...seamShown(draft, blank),
    },
  };
}

/** The text of rolled.svg: four views of the vessel with the sheet of the written cut file around it. */
export const drawRolled = ({ drawing, vessel }: RolledSubject, words: DrawWords): string =>
  rolledPicture(drawing, vessel, words);

/** Several pieces of film that cover one vessel together. */
export interface RolledPieces {
  readonly sheets: readonly RolledSheet[];
  readonly vessel: RolledVessel;
}

/** The text of rolled.svg of a job's pieces and what was written of them; `parts` are its written motifs. */
export function rolledOf(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly Written[],
  words: DrawWords,
  parts: readonly WrittenPiece[] = [],
): string {
  const { sheets, vessel } = sheetsRolled(drafts, blank, written, parts);
  return rolledSheets(sheets, vessel, words);
}

/** The written pieces of a job, or its only one, on the vessel. */
export function sheetsRolled(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly Written[],
  parts: readonly WrittenPiece[] = [],
): RolledPieces {
  const [draft, second] = drafts;
  const [file] = written;
  if (!draft || !file || second) return rolledPieces(drafts, blank, written, parts);
  const { drawing, vessel } = rolledSubject(draft, blank, file, parts);
  return { sheets: [sheetOf(drawing, vessel)], vessel };
}

/** A job's pieces on the vessel, from what was written of them. */
export function rolledPieces(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly Written[],
  parts: readonly WrittenPiece[] = [],
): RolledPieces {
  const [draft, last] = [drafts[0], drafts.at(-1)];
  if (!draft || !last) throw new Error('a job has at least one piece');
  const { plan, job } = draft;
  const { flat, band } = sheetOnWall(plan.wall, plan.build, job.band ?? plan.band);
  const vessel: RolledVessel = {
    ...vesselOf(plan, blank),
    // Stands for the pieces' own walls where only the seam is drawn.
    wall: flat,
    origin: { x: 0, y: 0 },
    band,
    seam: { start: plan.template.seam.start, finish: last.plan.template.seam.finish },
    ...seamShown(draft, blank, (last.panel?.whole ?? last.plan.template).overlap),
  };
  return { sheets: drafts.map((piece, i) => sheetOfDraft(piece, written[i], parts)), vessel };
}

/** One piece of several, with the motifs whose middle lies on it. */
function sheetOfDraft(
  { plan: { template, lengths }, toFile, motifs }: Draft,
  written: Written | undefined,
  parts: readonly WrittenPiece[],
): RolledSheet {
  if (!written) throw new Error('every piece is written');
  const { wall, band, seam } = template;
  const toFlatWall = inverse(toFile);
  const drawing = readSvg(written.cut, 'wrap.cut.svg');
  const sidesAt = (along: number) =>
    [turnOfEdge(wall, seam.start, along), turnOfEdge(wall, seam.finish, along)] as const;
  const isHere = ({ at }: PlacedMotif): boolean => {
    const [start, finish] = sidesAt(at.along);
    return at.along >= band.from && at.along < band.to && at.turn >= start && at.turn < finish;
  };
  const apart = parts.flatMap((part) => {
    const typed = motifs.find(({ name }) => name === part.stem);
    const placed = typed && motifOnSheet(typed, lengths);
    return placed && isHere(placed) ? laidOn(placed, part, template, toFile) : [];
  });
  return {
    drawing: { ...drawing, groups: [...drawing.groups, ...apart] },
    toWall: (p) => toWall(wall, movePoint(toFlatWall, p)),
    band,
    sidesAt,
  };
}

/** A motif's written art as it would stand in the file of the wrap it is laid on. */
function laidOn(
  { at, size }: PlacedMotif,
  { stem, cut, guide }: WrittenPiece,
  { wall }: Template,
  toFile: Affine,
): DrawnGroup[] {
  const { x, y } = toFlat(wall, at);
  const place = placeOf(readSvg(guide, `${stem}.guide.svg`, ['trim', 'register']), `${stem}.guide.svg`);
  const move = compose(
    compose(translation(-place.x, -place.y), rotation(levelAngle(wall, at.turn))),
    compose(translation(x, y), toFile),
  );
  const groups = movedGroups(groupsOf(readSvg(cut, `${stem}.cut.svg`), 'artwork'), move);
  // What reaches past the seam is seen at the other end of the wrap.
  const reach = size.across / girthAt(wall, at.along);
  const again = [...(at.turn < reach ? [1] : []), ...(at.turn > 1 - reach ? [-1] : [])].map((turn) =>
    compose(compose(inverse(toFile), turnMotion(wall, turn)), toFile),
  );
  return [...groups, ...again.flatMap((once) => movedGroups(groups, once))];
}
