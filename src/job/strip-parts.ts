// The cover strips of a job: one over the seam, and over every joint of stacked pieces one in the shape of an arc.
import { roomBeside } from '../blank/handle-room.ts';
import { squareWall, stripAlongJoint, stripAlongSeam } from '../cut/cover-strip.ts';
import { type StripDrawingOptions, stripDrawings } from '../cut/strip-drawing.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import { inMm } from '../lengths/length.ts';
import { sheetOnWall, sheetSurface } from '../unroll/sheet-wall.ts';
import { outline } from '../unroll/template.ts';
import { wholePieces } from './draft.ts';
import type { MakeInput } from './make-input.ts';
import type { Part, PartMaker } from './part.ts';
import { wholeBand } from './pattern-ground.ts';
import type { Plan } from './plan.ts';

/** A strip before it is drawn. */
interface Strip extends Pick<StripDrawingOptions, 'template' | 'covers'> {
  readonly stem: string;
  /** Of a joint's: where it lies, mm along the bare wall. */
  readonly joint?: number;
}

/** The film of the pieces lies under a strip, on top of the coats. */
const onFilm = ({ build }: Plan): Plan['build'] => ({
  ...build,
  coats: build.coats + build.film,
  // A strip is not pulled.
  around: 1,
});

function seamStrip(plans: readonly Plan[], first: Plan, { job }: MakeInput, width: number): Strip {
  const band = wholeBand(plans);
  const { flat, band: onStrip } = sheetOnWall(first.wall, onFilm(first), band);
  const wall = first.wall.kind === 'straight' ? flat : squareWall(flat);
  const template = stripAlongSeam(wall, width, { band: onStrip, trim: job.trim });
  return { stem: 'strip', template, covers: { kind: 'seam' } };
}

function jointStrip(plan: Plan, { blank }: MakeInput, width: number, number: number): Strip {
  const along = plan.band.from;
  const { toGrown, toBare } = sheetSurface(plan.wall, onFilm(plan));
  // As wide on itself as it was asked for.
  const on = toGrown(along);
  const band = { from: toBare(on - width / 2), to: toBare(on + width / 2) };
  const { flat } = sheetOnWall(plan.wall, onFilm(plan), band);
  const at = { along: on, ...(blank.handle ? { clear: roomBeside(blank.handle) } : {}) };
  const template = stripAlongJoint(flat, width, at);
  return { stem: `strip-${number}`, template, covers: { kind: 'joint', along: on }, joint: along };
}

/** That of the seam first, then those of the joints from the foot up. */
function stripsOf(input: MakeInput, plans: readonly Plan[], width: number): readonly Strip[] {
  const [first, ...others] = plans;
  if (!first) return [];
  const seam = input.blank.handle ? [] : [seamStrip(plans, first, input, width)];
  return [...seam, ...others.map((plan, i) => jointStrip(plan, input, width, i + 1))];
}

const laidWords = ({ joint }: Strip): string =>
  joint === undefined
    ? 'over the seam, its middle line on it from the foot edge to the lip edge'
    : `over the joint at ${inMm(joint)} along, its middle line on it`;

function partOf(strip: Strip, { job, tools: { words } }: MakeInput, width: number): Part {
  const { stem, template, covers } = strip;
  const [where, size] = [laidWords(strip), `${inMm(width)} wide`];
  const notes = [`${job.name}: cover strip`, `${size}; laid ${where}`, 'cut it from the film of the wrap'];
  const { cut, guide } = stripDrawings({ template, covers, notes, words });
  return {
    stem,
    cut: writeSvg(cut, { title: `${job.name}: ${stem}, cut`, filled: false }),
    guide: writeSvg(guide, { title: `${job.name}: ${stem}, guide`, filled: true }),
    findings: [],
    sheet: {
      says: covers.kind === 'seam' ? 'cover strip of the seam' : 'cover strip of a joint',
      where,
      size,
      outlines: [outline(template)],
    },
  };
}

/** Strips are cut where the job's seam has one. */
export const stripParts: PartMaker = (input, drafts) => {
  const { strip: width } = input.job.seam;
  if (width === undefined) return [];
  const plans = wholePieces(drafts).map(({ plan }) => plan);
  return stripsOf(input, plans, width).map((strip) => partOf(strip, input, width));
};
