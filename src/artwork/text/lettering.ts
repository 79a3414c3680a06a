// Letters as outlines. Adapter: harfbuzzjs (MIT) shapes the text and gives the glyphs' curves; chosen over the plainer
// font reader because it shapes every script and ligature a name may need.
import { Blob, Buffer, Direction, Face, Feature, Font, shape } from 'harfbuzzjs';
import { parsePathData } from '../../drawing/path-data.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { moveContour } from '../../geometry/affine.ts';
import { hullBox } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';

/** A glyph of a shaped text, in ems, x to the right and y up. */
export interface ShapedGlyph {
  /** 0 where the font has no glyph for what stands at `at`. */
  readonly glyph: number;
  /** Where in the text its cluster begins. */
  readonly at: number;
  readonly advance: number;
  readonly x: number;
  readonly y: number;
}

export interface ShapeOptions {
  readonly isRightToLeft: boolean;
  /** Whether letters may become one glyph only for looks: not where they are to stand apart. */
  readonly ligatures: boolean;
}

/** A font ready to be lettered with. */
export interface LetterFont {
  /** Height of a capital over the em: of the letter H, else as the font says; undefined where neither tells. */
  readonly capHeight: number | undefined;
  /** From one baseline to the next over the em, as the font says. */
  readonly lineStep: number;
  /** Glyphs of one run of text, from left to right. */
  readonly shape: (text: string, options: ShapeOptions) => readonly ShapedGlyph[];
  /** The curves of a glyph, its em 1, y down; none for a space. @throws DamagedFont where they are past all bounds. */
  readonly outline: (glyph: number) => readonly Contour[];
}

/** Where the cap height stands in a font's table of measures, and the version from which it does (OpenType 1.9, OS/2). */
const capHeightAt = 88;
const capHeightSince = 2;

const noLigatures = ['liga', 'clig'];

/** Of a font whose glyphs are no letters that any blade could follow. */
export class DamagedFont extends Error {}

/** Ems that no glyph of a sound font reaches: the longest there is, a whole sentence in one sign, is some ten wide. No source. */
const farthest = 100;

/**
 * Ready a font from the bytes of a TrueType or OpenType file.
 * @throws Error where the bytes hold no font that can be shaped with.
 */
export function openFont(bytes: Uint8Array): LetterFont {
  const face = new Face(new Blob(new Uint8Array(bytes).buffer), 0);
  const font = new Font(face);
  const { upem } = face;
  if (!(upem > 0) || face.collectUnicodes().length === 0) throw new Error('no letters');
  const plain = noLigatures.map((tag) => new Feature(tag, 0));
  const outlines = new Map<number, readonly Contour[]>();
  const scale = 1 / upem;
  const outline = (glyph: number): readonly Contour[] => {
    const known = outlines.get(glyph);
    if (known) return known;
    const data = font.glyphToPath(glyph);
    const drawn = data === '' ? [] : parsePathData(data, { a: scale, b: 0, c: 0, d: -scale, e: 0, f: 0 });
    const box = hullBox(drawn);
    const reach = Math.max(-box.minX, -box.minY, box.maxX, box.maxY);
    // Of the nothing that a space draws there is no box.
    if (drawn.length > 0 && !(reach < farthest)) throw new DamagedFont(`its glyph ${glyph} reaches far away`);
    outlines.set(glyph, drawn);
    return drawn;
  };
  const { ascender, descender, lineGap } = font.hExtents();
  return {
    capHeight: capHeightOf(face, font, outline),
    lineStep: (ascender - descender + lineGap) * scale,
    shape: (text, { isRightToLeft, ligatures }) => {
      const buffer = new Buffer();
      buffer.addText(text);
      buffer.guessSegmentProperties();
      buffer.setDirection(isRightToLeft ? Direction.RTL : Direction.LTR);
      shape(font, buffer, ligatures ? [] : plain);
      return buffer.getGlyphInfosAndPositions().map(({ codepoint, cluster, ...glyph }) => ({
        glyph: codepoint,
        at: cluster,
        advance: (glyph.xAdvance ?? 0) * scale,
        x: (glyph.xOffset ?? 0) * scale,
        y: (glyph.yOffset ?? 0) * scale,
      }));
    },
    outline,
  };
}

/** No capital of a sound font is lower, in ems: of one that is flat, or hangs below its line, letters would be made without end. No source. */
const leastCapital = 0.05;

function capHeightOf(
  face: Face,
  font: Font,
  outline: (glyph: number) => readonly Contour[],
): number | undefined {
  const glyph = font.nominalGlyph('H'.charCodeAt(0)) ?? 0;
  const drawn = glyph === 0 ? [] : outline(glyph);
  const height = drawn.length > 0 ? -tightBox(drawn).minY : 0;
  if (height >= leastCapital) return height;
  const table = face.referenceTable('OS/2');
  if (!table || table.length < capHeightAt + 2) return undefined;
  const measures = new DataView(table.buffer, table.byteOffset, table.length);
  const told = measures.getUint16(0) < capHeightSince ? 0 : measures.getInt16(capHeightAt) / face.upem;
  return told >= leastCapital ? told : undefined;
}

/** What stands for letters that the font of words lacks. */
const elided = '[…]';

/** A text with a sign for each run of what a font lacks: nothing is left out unseen. */
function spelt(text: string, lacking: readonly ShapedGlyph[]): string {
  const starts = new Set(lacking.map(({ at }) => at));
  let [at, told] = [0, ''];
  for (const letter of text) {
    const isMark = told.endsWith('\0') && /^\p{M}$/u.test(letter);
    told += starts.has(at) || isMark ? '\0' : letter;
    at += letter.length;
  }
  return told.replace(/\0(?:[\s\0]*\0)?/g, elided);
}

/** Words for guides, set in a font in one line from left to right. What it lacks is shown as left out. */
export function wordsIn(font: LetterFont): DrawWords & Required<Pick<DrawWords, 'reach'>> {
  const rightOf = rightEdges(font);
  const shaped = (text: string) => font.shape(text, { isRightToLeft: false, ligatures: true });
  const set = (text: string): { readonly glyph: number; readonly x: number; readonly y: number }[] => {
    let pen = 0;
    const asIs = shaped(text);
    const lacking = asIs.filter(({ glyph }) => glyph === 0);
    return (lacking.length > 0 ? shaped(spelt(text, lacking)) : asIs).flatMap(({ glyph, advance, x, y }) => {
      if (glyph === 0) return [];
      const from = pen;
      pen += advance;
      return [{ glyph, x: from + x, y }];
    });
  };
  const draw = (text: string, em: number) =>
    set(text).flatMap(({ glyph, x, y }) => placed(font.outline(glyph), em, x * em, -y * em));
  const reach = (text: string, em: number) => {
    const rights = set(text).flatMap(({ glyph, x }) => {
      const right = rightOf(glyph);
      return right === undefined ? [] : [x + right];
    });
    return rights.length > 0 ? em * Math.max(...rights) : 0;
  };
  return Object.assign(draw, { reach });
}

/** How far glyphs reach to the right of where they are set, in ems; nothing of those that draw nothing. */
function rightEdges({ outline }: LetterFont): (glyph: number) => number | undefined {
  const known = new Map<number, number | undefined>();
  return (glyph) => {
    if (!known.has(glyph)) {
      const drawn = outline(glyph);
      known.set(glyph, drawn.length > 0 ? tightBox(drawn).maxX : undefined);
    }
    return known.get(glyph);
  };
}

/** A glyph's curves at a size and a place. */
export const placed = (contours: readonly Contour[], em: number, x: number, y: number): Contour[] =>
  contours.map((contour) => moveContour({ a: em, b: 0, c: 0, d: em, e: x, f: y }, contour));

/** Words for guides from the bytes of a font file. @throws Error where it is none. */
export const loadFont = (bytes: Uint8Array): DrawWords => wordsIn(openFont(bytes));
