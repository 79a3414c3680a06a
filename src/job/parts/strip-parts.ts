// The cover strips of a job: one over the seam, and over every joint of stacked pieces one in the shape of an arc.
import { roomBeside } from '../../blank/handle-room.ts';
import { squareWall, stripAlongJoint, stripAlongSeam } from '../../cut/drawings/cover-strip.ts';
import { type StripDrawingOptions, stripDrawings } from '../../cut/drawings/strip-drawing.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import { cutLength, type Units } from '../../lengths/length.ts';
import { sheetOnWall, sheetSurface } from '../../unroll/sheet-wall.ts';
import { outline } from '../../unroll/template.ts';
import { uprightTurns } from '../closing/border-strips.ts';
import { wholePieces } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { wholeBand } from '../plan/pattern-ground.ts';
import type { Plan } from '../plan/plan.ts';
import type { Artwork } from '../typed/resolved-job.ts';
import type { Part, PartMaker } from './part.ts';

/** A strip before it is drawn. */
interface Strip extends Pick<StripDrawingOptions, 'template' | 'covers'> {
  readonly stem: string;
  /** Of a joint's: where it lies, mm along the bare wall. */
  readonly joint?: number;
  /** Of one on a border of the pattern: the turn that it stands at, where it stands upright. */
  readonly border?: { readonly turn?: number };
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

function jointStrip(
  plan: Plan,
  { blank }: MakeInput,
  width: number,
  { stem, along }: { readonly stem: string; readonly along: number },
): Strip {
  const { toGrown, toBare } = sheetSurface(plan.wall, onFilm(plan));
  // As wide on itself as it was asked for.
  const on = toGrown(along);
  const band = { from: toBare(on - width / 2), to: toBare(on + width / 2) };
  const { flat } = sheetOnWall(plan.wall, onFilm(plan), band);
  const at = { along: on, ...(blank.handle ? { clear: roomBeside(blank.handle) } : {}) };
  const template = stripAlongJoint(flat, width, at);
  return { stem, template, covers: { kind: 'joint', along: on }, joint: along };
}

/** That of the seam first, then those of the joints from the foot up. */
function stripsOf(input: MakeInput, plans: readonly Plan[], width: number): readonly Strip[] {
  const [first, ...others] = plans;
  if (!first) return [];
  const seam = input.blank.handle ? [] : [seamStrip(plans, first, input, width)];
  const joints = others.map((plan, i) =>
    jointStrip(plan, input, width, { stem: `strip-${i + 1}`, along: plan.band.from }),
  );
  return [...seam, ...joints];
}

/** Those over borders of the pattern, numbered: up the wall by their turns, then level ones from the foot up. */
function borderStripsOf(
  input: MakeInput,
  plans: readonly Plan[],
  { width, turns = [], along = [] }: NonNullable<Artwork['strips']>,
): readonly Strip[] {
  const [first] = plans;
  if (!first) return [];
  const upright = uprightTurns(turns, input).map((turn, i) => ({
    ...seamStrip(plans, first, input, width),
    stem: `cover-${i + 1}`,
    border: { turn },
  }));
  const level = along.map((at, i) => {
    const plan = plans.find(({ band }) => band.to >= at) ?? first;
    const place = { stem: `cover-${upright.length + i + 1}`, along: at };
    return { ...jointStrip(plan, input, width, place), border: {} };
  });
  return [...upright, ...level];
}

const laidWords = ({ border, joint }: Strip, units: Units): string => {
  if (border?.turn !== undefined && border.turn > 0)
    return `over the border at turn ${border.turn.toFixed(3)}, its middle line on it from the foot edge to the lip edge`;
  return coveredWords(joint, border ? 'border' : 'joint', units);
};

const coveredWords = (along: number | undefined, joint: string, units: Units): string =>
  along === undefined
    ? 'over the seam, its middle line on it from the foot edge to the lip edge'
    : `over the ${joint} at ${cutLength(along, units)} along, its middle line on it`;

function partOf(strip: Strip, { job, tools: { words } }: MakeInput, width: number): Part {
  const { stem, template, covers } = strip;
  const [where, size] = [laidWords(strip, job.units), `${cutLength(width, job.units)} wide`];
  const notes = [`${job.name}: cover strip`, `${size}; laid ${where}`, 'cut it from the film of the wrap'];
  const { cut, guide } = stripDrawings({ template, covers, notes, words });
  return {
    stem,
    cut: writeSvg(cut, { title: `${job.name}: ${stem}, cut`, filled: false }),
    guide: writeSvg(guide, { title: `${job.name}: ${stem}, guide`, filled: true }),
    ...(strip.border ? { isOnBorder: true } : {}),
    findings: [],
    sheet: {
      says: stripName(strip),
      where,
      size,
      outlines: [outline(template)],
    },
  };
}

function stripName({ covers, border }: Strip): string {
  if (border?.turn !== undefined && border.turn > 0) return 'cover strip of a border';
  if (covers.kind === 'seam') return 'cover strip of the seam';
  return border ? 'cover strip of a level border' : 'cover strip of a joint';
}

/** Strips are cut where the job's seam has one, and over borders of its pattern where its way has them. */
export const stripParts: PartMaker = (input, drafts) => {
  const { strip: width } = input.job.seam;
  const plans = wholePieces(drafts).map(({ plan }) => plan);
  const onSeam = width === undefined ? [] : stripsOf(input, plans, width);
  const strips = drafts[0]?.job.artwork?.strips;
  const onBorders = strips ? borderStripsOf(input, plans, strips) : [];
  return [
    ...onSeam.map((strip) => partOf(strip, input, width ?? 0)),
    ...onBorders.map((strip) => partOf(strip, input, strips?.width ?? 0)),
  ];
};
