// What stands under the pieces of a guide: squares to measure, lines of words, and what each kind of line means.
import { brokenLines, widthOf } from '../../drawing/broken-lines.ts';
import type { DrawnGroup, DrawnPath, Role } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { shifted } from '../../geometry/affine.ts';
import { boxCorners } from '../../geometry/box.ts';
import { type Contour, polygon, polyline } from '../../geometry/contour.ts';
import { wordSize } from './marks.ts';

/** Distance of the lines of words, mm. */
const lineStep = 5;

/** Side of the two scale squares, mm: 25 mm and 1 in. */
const squares = [25, 25.4] as const;
const gap = 6;
const besideSquares = squares[0] + squares[1] + 2 * gap;

/** Wide enough for words beside the squares; narrow enough for the narrowest paper between its bare borders and marks to join pages by, mm. */
const widths = { least: 130, most: 168 };

/** Length of the sample of a line, mm, and what is clear after it and after its words. */
const sample = { length: 12, clear: 1.5, after: 5 };

/** What lines of a role mean on this guide. */
export interface LineMeaning {
  readonly role: Role;
  readonly says: string;
}

export interface NoteStripOptions {
  readonly notes: readonly string[];
  readonly meanings: readonly LineMeaning[];
  readonly words: DrawWords;
  /** Width there is under the pieces, mm; the strip may be a little wider, and need not be as wide. */
  readonly room: number;
}

export interface NoteStrip {
  /** From the top left corner at the origin. */
  readonly groups: readonly DrawnGroup[];
  readonly width: number;
  readonly height: number;
}

export function noteStrip({ notes, meanings, words, room }: NoteStripOptions): NoteStrip {
  const width = Math.min(widths.most, Math.max(widths.least, room));
  const lines = notes.flatMap((text) => brokenLines(text, width - besideSquares, { words, em: wordSize }));
  const top = wordSize;
  const written = lines.map((text, i) =>
    shifted(words(text, wordSize), { x: besideSquares, y: top + i * lineStep }),
  );
  const under = Math.max(squares[1] + gap, top + lines.length * lineStep) + wordSize;
  const legend = legendOf(meanings, words, { width, top: under });
  const labels = ['25 mm', '1 in'].map((text, i) =>
    shifted(words(text, wordSize), { x: 3 + i * (squares[0] + gap), y: squares[0] / 2 + wordSize / 3 }),
  );
  const texts = [...labels, ...written, ...legend.texts].filter((line) => line.length > 0);
  return {
    width,
    height: under + legend.rows * lineStep,
    groups: [
      { role: 'register', apart: true, paths: scaleSquares().map(pathOf) },
      ...legend.samples.map(
        ({ role, line }): DrawnGroup => ({
          role: 'note',
          lines: true,
          like: role,
          apart: true,
          paths: [pathOf(line)],
        }),
      ),
      { role: 'note', apart: true, paths: texts.map((contours) => ({ contours })) },
    ],
  };
}

const pathOf = (contour: Contour): DrawnPath => ({ contours: [contour] });

/** The two squares to measure before anything is cut: 25 mm, then 1 in. */
const scaleSquares = (): Contour[] =>
  squares.map((side, i) => {
    const left = i * (squares[0] + gap);
    return polygon(boxCorners({ minX: left, minY: 0, maxX: left + side, maxY: side }));
  });

/** Samples of lines with their meanings, in rows no wider than the strip. */
function legendOf(
  meanings: readonly LineMeaning[],
  words: DrawWords,
  { width, top }: { readonly width: number; readonly top: number },
) {
  const samples: { readonly role: Role; readonly line: Contour }[] = [];
  const texts: (readonly Contour[])[] = [];
  let [x, row] = [0, 0];
  for (const { role, says } of meanings) {
    const wide = sample.length + sample.clear + widthOf(says, { words, em: wordSize });
    if (x > 0 && x + wide > width) [x, row] = [0, row + 1];
    const y = top + row * lineStep;
    const middle = y - wordSize / 3;
    samples.push({
      role,
      line: polyline([
        { x, y: middle },
        { x: x + sample.length, y: middle },
      ]),
    });
    texts.push(shifted(words(says, wordSize), { x: x + sample.length + sample.clear, y }));
    x += wide + sample.after;
  }
  return { samples, texts, rows: meanings.length === 0 ? 0 : row + 1 };
}
