// The picture of the finished vessel, from the written files.

import type { Blank } from '../blank/blank.ts';
import { readSvg } from '../deliver/read-svg.ts';
import { type Drawing, type DrawnGroup, movedGroups } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { compose, rotation, translation } from '../geometry/affine.ts';
import type { Point } from '../geometry/point.ts';
import { rolledPicture } from '../picture/rolled.ts';
import { wallRings } from '../picture/rolled-rings.ts';
import type { RolledVessel } from '../picture/rolled-vessel.ts';
import { groupsOf, originOf, placeOf } from '../prove/locate.ts';
import { girthAt, levelAngle, toFlat, turnMotion } from '../unroll/flat-wall.ts';
import type { Written, WrittenPiece } from './deliverables.ts';
import type { Draft } from './draft.ts';
import type { PlacedMotif } from './placed-motif.ts';
import type { Plan } from './plan.ts';

/** A written piece and the vessel it goes around. */
export interface RolledSubject {
  readonly drawing: Drawing;
  readonly vessel: RolledVessel;
}

/** The cut file read back, with the motifs of the written `parts` on it, and the vessel it belongs to. */
export function rolledSubject(
  { plan, job, motifs }: Draft,
  blank: Blank,
  written: Written,
  parts: readonly WrittenPiece[] = [],
): RolledSubject {
  const { wall, template, build } = plan;
  const origin = originOf(readSvg(written.guide, 'wrap.guide.svg', ['seam']), template, 'wrap.guide.svg');
  const { footRound, lipRound, handle } = blank;
  const wrap = readSvg(written.cut, 'wrap.cut.svg');
  const apart = parts.flatMap((part) => {
    const placed = motifs.find(({ name }) => name === part.stem);
    return placed ? laidOn(placed, part, plan, origin) : [];
  });
  return {
    drawing: { ...wrap, groups: [...wrap.groups, ...apart] },
    vessel: {
      origin,
      wall: template.wall,
      // The sheet is drawn at its mid-thickness, on top of the coats, as it was sized.
      profile: wallRings(wall, build.coats + build.film / 2),
      band: template.band,
      seam: template.seam,
      // What is cut through ends up edge to edge.
      overlap: job.seam.style === 'cut-through' ? 0 : template.overlap,
      ...(job.seam.strip === undefined || handle ? {} : { strip: job.seam.strip }),
      footRound,
      lipRound,
      ...(handle ? { handleSpan: handle.spans } : {}),
    },
  };
}

/** The text of rolled.svg: four views of the vessel with the sheet of the written cut file around it. */
export const drawRolled = ({ drawing, vessel }: RolledSubject, words: DrawWords): string =>
  rolledPicture(drawing, vessel, words);

/** `drawRolled` of a draft and what was written of it. */
export const rolledOf = (
  draft: Draft,
  blank: Blank,
  written: Written,
  words: DrawWords,
  parts: readonly WrittenPiece[] = [],
): string => drawRolled(rolledSubject(draft, blank, written, parts), words);

/** A motif's written art as it would stand in the file of the wrap it is laid on. */
function laidOn(
  { at, size }: PlacedMotif,
  { stem, cut, guide }: WrittenPiece,
  plan: Plan,
  origin: Point,
): DrawnGroup[] {
  const { x, y } = toFlat(plan.template.wall, at);
  const place = placeOf(readSvg(guide, `${stem}.guide.svg`, ['trim', 'register']), `${stem}.guide.svg`);
  const move = compose(
    compose(translation(-place.x, -place.y), rotation(levelAngle(plan.template.wall, at.turn))),
    translation(x + origin.x, y + origin.y),
  );
  const groups = movedGroups(groupsOf(readSvg(cut, `${stem}.cut.svg`), 'artwork'), move);
  // What reaches past the seam is seen at the other end of the wrap.
  const reach = size.across / girthAt(plan.template.wall, at.along);
  const again = [...(at.turn < reach ? [1] : []), ...(at.turn > 1 - reach ? [-1] : [])].map((turn) =>
    compose(
      compose(translation(-origin.x, -origin.y), turnMotion(plan.template.wall, turn)),
      translation(origin.x, origin.y),
    ),
  );
  return [...groups, ...again.flatMap((once) => movedGroups(groups, once))];
}
