// Lettering of a job: a text as a motif, on its backing where it has one.
import type { TextBlock } from '../../artwork/text/text-block.ts';
import { backingUnder } from '../../cut/films/film-stack.ts';
import { motifName } from '../../drawing/motif-name.ts';
import { type Finding, look, Refused, stop } from '../../finding.ts';
import { boxAround, grow as grownBox } from '../../geometry/box.ts';
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import type { MakeInput } from '../make-input.ts';
import { columnsIn } from '../typed/columns-in.ts';
import { bytesOf } from '../typed/named-files.ts';
import { cutApart, type PlacedMotif } from '../typed/placed-motif.ts';
import type { Lettering } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';

/** Words for the font where the job names none. */
const ownFont = 'the font that comes with seamwright';

type LetteringInput = Pick<MakeInput, 'jobFile' | 'files' | 'tools'>;

const keyOf = (index: number): string => `lettering[${index}]`;

/** A text set in its font. @throws Refused where it can't be. */
export function lettered(
  { jobFile, files, tools }: LetteringInput,
  lettering: Lettering,
  index: number,
): TextBlock {
  const { text, font } = lettering;
  const key = keyOf(index);
  const block = tools.setText(
    lettering,
    font === undefined ? undefined : { file: font, bytes: bytesOf(files, font) },
  );
  if (block.missing.length > 0)
    throw new Refused([missing(block.missing, font, typedAt(jobFile, `${key}.text`))]);
  if (block.isEmpty)
    throw new Refused([
      stop(
        'no-area',
        typedAt(jobFile, `${key}.text`),
        `${shown(text)} has nothing to cut; give a text with letters`,
      ),
    ]);
  if (block.capHeight < leastCapitals)
    throw new Refused([tooSmall(block, lettering, typedAt(jobFile, `${key}.${sizeKey(lettering)}`))]);
  return block;
}

/** Capitals lower than this, mm, are dust: their strokes are a few hundredths wide, next to the precision of the files. Ours. */
const leastCapitals = 0.1;

const sizeKey = ({ fit }: Lettering): string => (fit === undefined ? 'capHeight' : 'fit');

function tooSmall({ capHeight }: TextBlock, { text, fit }: Lettering, where: Finding['where']): Finding {
  const high = `capitals ${capHeight.toFixed(3)} mm high`;
  const says =
    fit === undefined
      ? `${high} are too small for any film; give more`
      : `${inMm(fit)} of width for ${shown(text)} makes ${high}, too small for any film; give more, or fewer letters`;
  return stop('letters-too-small', where, says);
}

/** The motif of a text. @throws Refused where it can't be lettered in its font. */
export function letteringMotif(
  input: LetteringInput & Pick<MakeInput, 'job'>,
  lettering: Lettering,
  index: number,
): PlacedMotif {
  const { job, jobFile } = input;
  const { text, font, at, lay, backing, colour, clear } = lettering;
  const key = keyOf(index);
  const block = lettered(input, lettering, index);
  const shapes = block.shapes();
  const name = motifName('lettering', index);
  const letters: WrapLayer = { name, colour, shapes };
  const layers = backing
    ? [
        {
          name: `${name} backing`,
          colour: backing.colour,
          shapes: backingUnder(shapes, backing, true),
        },
        letters,
      ]
    : [letters];
  const ink = backing ? grownBox(block.box, backing.grow) : block.box;
  const half = Math.max(-ink.minX, ink.maxX);
  const frame = boxAround([{ ...ink, minX: -half, maxX: half }]);
  return {
    name,
    key,
    says: shown(text),
    told: {
      text,
      ...(font === undefined ? {} : { font }),
      capHeight: block.capHeight,
    },
    motif: { layers, frame },
    size: { across: ink.maxX - ink.minX, up: ink.maxY - ink.minY },
    at,
    lay,
    isApart: cutApart(job, lettering.apart),
    ...(clear === undefined ? {} : { clear }),
    findings: columnsIn(text).map((column) => unfilledColumn(column, typedAt(jobFile, `${key}.text`))),
  };
}

function missing(characters: readonly string[], font: string | undefined, where: Finding['where']): Finding {
  const named = characters.map(
    (c) => `${shown(c)} (U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')})`,
  );
  const says = `${font ?? ownFont} has no glyph for ${named.join(', ')}; use another font, or leave ${characters.length === 1 ? 'it' : 'them'} out`;
  return stop('missing-glyph', where, says);
}

/** Words of a list that no list is given for. */
export const unfilledColumn = (column: string, where: Finding['where']): Finding =>
  look(
    'unfilled',
    where,
    `{${column}} is lettered as it stands here; "seamwright names" fills it from a list's column of that name`,
  );
