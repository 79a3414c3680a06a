// The picture of a vessel covered in gores, from the written files.
import type { Blank } from '../../blank/blank.ts';
import { readSvg } from '../../deliver/read-svg.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { movePoint } from '../../geometry/affine.ts';
import { rolledSheets } from '../../picture/rolled/rolled.ts';
import type { RolledSheet } from '../../picture/rolled/rolled-sheet.ts';
import { readDelivered } from '../../prove/written/delivered-file.ts';
import { type ProvedGore, readGores } from '../../prove/written/gore-pieces.ts';
import { rollGore, surfaceAt } from '../../prove/written/rolled-gore.ts';
import { sheetOnWall } from '../../unroll/sheet-wall.ts';
import type { Written } from '../deliverables.ts';
import { askedGoresOf } from '../proof/gore-proof.ts';
import type { GoresDraft } from '../proof/gores.ts';
import { ownedArt } from '../sheets/gores-apart.ts';
import { type RolledPieces, vesselOf } from './rolled.ts';

/** The text of rolled.svg: four views of the vessel with every gore of the written cut file laid in its place. */
export function rolledGoresOf(draft: GoresDraft, blank: Blank, written: Written, words: DrawWords): string {
  const { sheets, vessel } = goresOnVessel(draft, blank, written);
  return rolledSheets(sheets, vessel, words);
}

/** Every gore of the written cut file in its place on the vessel. */
export function goresOnVessel(
  { plan, job }: GoresDraft,
  blank: Blank,
  { cut, guide }: Written,
): RolledPieces {
  const { surface, band: onSheet } = askedGoresOf({ job, blank }, []);
  const { count } = surface;
  const { gores, boxes } = readGores(
    readDelivered(cut, 'wrap.cut.svg'),
    readDelivered(guide, 'wrap.guide.svg'),
    count,
  );
  const art = ownedArt(readSvg(cut, 'wrap.cut.svg'), boxes);
  const { band, wall, build } = plan;
  const sheetOfGore = ({ number, place }: ProvedGore, i: number): RolledSheet => ({
    drawing: art(i),
    toWall: (p) => {
      const { aside, on } = rollGore(surface, onSheet.from, movePoint(place, p));
      const girth = 2 * Math.PI * surfaceAt(surface, on).radius;
      return { turn: (number - 0.5) / count + aside / girth, along: on };
    },
    band: onSheet,
    sidesAt: () => [(number - 1) / count, number / count],
  });
  return {
    sheets: gores.map(sheetOfGore),
    vessel: {
      ...vesselOf(plan, blank),
      // Stands for the wall where only the seam is drawn.
      wall: sheetOnWall(wall, build, band).flat,
      origin: { x: 0, y: 0 },
      band: onSheet,
      seam: { start: { turn: 0, offset: 0 }, finish: { turn: 1, offset: 0 } },
      overlap: job.seam.overlap,
    },
  };
}
