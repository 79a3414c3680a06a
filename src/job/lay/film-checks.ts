// The checks before the blade for the pieces of a job: each looked at whole, however it is parted in files.
import { movePoint } from '../../geometry/affine.ts';
import { equalParts } from '../../pattern/lattice/closing.ts';
import { girthAt, toFlat, type WallPoint } from '../../unroll/flat-wall.ts';
import type { SheetLengths } from '../../unroll/sheet-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import { limitsOf } from '../artwork/cut-limits.ts';
import { groundKey } from '../closing/ground-key.ts';
import { stemOf } from '../deliverables.ts';
import type { Draft, LaidPattern } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { runOff } from '../plan/plan.ts';
import type { Strips } from '../typed/strips.ts';
import { type InFile, wrapChecks } from './wrap-checks.ts';

/** A piece of the band with the art on it, and the drafts of its files in the order of turns. */
export interface CheckedPiece {
  readonly template: Template;
  readonly lengths: SheetLengths;
  readonly pattern: LaidPattern | undefined;
  readonly drafts: readonly Draft[];
  /** On its borders, where its way has any. */
  readonly strips?: Strips;
}

/** The drafts of a piece, the first of them with what was found on the whole. */
export function withFilmChecks(
  input: MakeInput,
  { template, lengths, pattern, drafts, strips }: CheckedPiece,
): Draft[] {
  const [first, ...others] = drafts;
  if (!first || !pattern) return [...drafts];
  const { plan, lay, wrap, artwork } = pattern;
  const { film, cutter } = input.job;
  const check = () => {
    input.next?.('looking the film over');
    return wrapChecks({
      wrap: { template, layers: wrap.layers, runOff, parts: equalParts(plan.closing) },
      art: { ...plan, lay },
      limits: limitsOf(film, cutter),
      use: film.use,
      toBare: lengths.toBare,
      inFile: (at) => placeInFile(at, drafts),
      artFile: artwork.file,
      isCovered: coveredBy(template, lengths, strips, input.job.seam.strip),
    });
  };
  const places = JSON.stringify([template.band, drafts.map(({ mark, toFile }) => [mark, toFile])]);
  const found = input.recall?.of('film-checks', `${groundKey(input)}${places}`, check) ?? check();
  const findings = [...first.findings, ...found.map(({ finding }) => finding)];
  return [{ ...first, findings, filmChecks: { template, layers: wrap.layers, found } }, ...others];
}

/** Whether a place of the wall, mm on the sheet, lies under a strip on a border, or under the one on the seam. */
function coveredBy(
  { wall }: Template,
  { toBare }: SheetLengths,
  strips: Strips | undefined,
  seamStrip = 0,
): (at: WallPoint) => boolean {
  const width = strips?.width ?? 0;
  const upright = [
    ...(strips?.turns ?? []).map((turn) => ({ turn, half: width / 2 })),
    { turn: 0, half: seamStrip / 2 },
  ];
  return ({ turn, along }) => {
    const girth = girthAt(wall, along);
    const apart = (other: number) => Math.abs(turn - other - Math.round(turn - other)) * girth;
    const isLevel = (strips?.along ?? []).some((at) => Math.abs(toBare(along) - at) < width / 2);
    return isLevel || upright.some(({ turn: at, half }) => apart(at) < half);
  };
}

/** Where a place of the wall lies in the cut files: in the first panel that has it. */
function placeInFile(at: WallPoint, drafts: readonly Draft[]): InFile {
  const holds = ({ plan: { template } }: Draft) =>
    at.turn >= turnOfEdge(template.wall, template.left, at.along) &&
    at.turn <= turnOfEdge(template.wall, template.right, at.along);
  const draft = drafts.find(holds) ?? drafts[0];
  if (!draft) throw new Error('a piece has at least one draft');
  return {
    file: `${stemOf('wrap', draft.mark)}.cut.svg`,
    ...movePoint(draft.toFile, toFlat(draft.plan.template.wall, at)),
  };
}
