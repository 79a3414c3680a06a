// The heavy tools a job needs, started from their bytes.

import { type SvgEngine, startSvgEngine } from '../artwork/svg/svg-normalise.ts';
import { readDirections } from '../artwork/text/bidi.ts';
import { fontIn } from '../artwork/text/font-file.ts';
import { DamagedFont, type LetterFont, loadFont, openFont, wordsIn } from '../artwork/text/lettering.ts';
import { type TextBlock, type TextOptions, textBlock } from '../artwork/text/text-block.ts';
import { inflated } from '../deliver/compress.ts';
import type { DrawWords } from '../drawing/words.ts';
import { Refused, stop } from '../finding.ts';

/** A font file that a job names. */
export interface FontFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** Gives the areas of a text in a font, or in the one that comes with us. @throws Refused where the file is no font. */
export type SetText = (options: TextOptions, font?: FontFile) => TextBlock;

export interface JobTools extends SvgEngine {
  /** Plain fonts that come with us, for texts in drawings that name them. */
  readonly fonts?: readonly Uint8Array[];
  readonly words: DrawWords;
  /** For headings on paper; left out, they have the same letters. */
  readonly bold?: DrawWords;
  readonly setText: SetText;
}

/** Start the SVG reader from its WebAssembly, as bytes or compiled, and the lettering from font files. */
export async function startTools(bytes: {
  readonly svg: object;
  readonly font: Uint8Array;
  readonly bold?: Uint8Array;
}): Promise<JobTools> {
  // Compiled beside this thread while the font is opened.
  const engine = startSvgEngine(bytes.svg);
  const standard = openFont(bytes.font);
  const words = wordsIn(standard);
  const bold = bytes.bold ? { bold: wordsWhenAsked(bytes.bold) } : {};
  const fonts = [bytes.font, ...(bytes.bold ? [bytes.bold] : [])];
  return { ...(await engine), fonts, words, ...bold, setText: textSetter(standard) };
}

/** Letters of a font that is opened when the first of them is asked for: few commands draw any. */
function wordsWhenAsked(font: Uint8Array): DrawWords {
  let words: ReturnType<typeof wordsIn> | undefined;
  const opened = () => {
    words ??= wordsIn(openFont(font));
    return words;
  };
  return Object.assign((text: string, em: number) => opened()(text, em), {
    reach: (text: string, em: number) => opened().reach(text, em),
  });
}

/** The lettering alone, for commands that read no artwork. */
export const startWords = loadFont;

/** Fonts are opened once for the same bytes. */
export function textSetter(standard: LetterFont): SetText {
  const opened = new WeakMap<Uint8Array, LetterFont>();
  const directions = readDirections();
  const fontOf = ({ file, bytes }: FontFile): LetterFont => {
    const font = opened.get(bytes) ?? opening(bytes, file);
    opened.set(bytes, font);
    return font;
  };
  return (options, font) => {
    const block = told(font, () => textBlock(font ? fontOf(font) : standard, options, directions));
    return { ...block, shapes: () => told(font, block.shapes) };
  };
}

/** What is done with a font, a damaged one told by its file. */
function told<T>(font: FontFile | undefined, work: () => T): T {
  try {
    return work();
  } catch (fault) {
    if (!font || !(fault instanceof DamagedFont)) throw fault;
    const says = `is damaged: ${fault.message}; give a TTF, OTF or WOFF file of the font that is whole`;
    throw new Refused([stop('font', { file: font.file }, says)]);
  }
}

/** The plain fonts for texts in drawings: ours, and those that were given. @throws Refused where a file is no font. */
export const drawingFonts = (
  { fonts = [] }: Pick<JobTools, 'fonts'>,
  given: readonly FontFile[],
): readonly Uint8Array[] => [...given.map(({ file, bytes }) => fontIn(bytes, file, inflated)), ...fonts];

function opening(bytes: Uint8Array, file: string): LetterFont {
  const plain = fontIn(bytes, file, inflated);
  try {
    return openFont(plain);
  } catch {
    const says = 'holds no letters that can be read; give a TTF, OTF or WOFF file of the font';
    throw new Refused([stop('font', { file }, says)]);
  }
}
