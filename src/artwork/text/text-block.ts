// A text as areas to cut: shaped line by line, brought to its size, overlapping letters made one.

import { shifted } from '../../geometry/affine.ts';
import { type Box, boxAround } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { signedArea, tightBox } from '../../geometry/measure.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { isTangled, mostCrossings } from '../../geometry/tangle.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import type { Direction, ReadDirections } from './bidi.ts';
import { DamagedFont, type LetterFont, placed, type ShapedGlyph } from './lettering.ts';

export interface TextOptions {
  /** One line or several. */
  readonly text: string;
  /** Height of a capital, mm; left out, what fills the width of `fit`. */
  readonly capHeight?: number;
  /** Width that no line may pass, mm: letters are made smaller until it holds. */
  readonly fit?: number;
  /** Added between letters, mm, at the size asked for. */
  readonly spacing: number;
  /** Where shorter lines stand under longer ones. */
  readonly align: 'middle' | 'left' | 'right';
  /** From baseline to baseline, mm, at the size asked for; left out, as the font says. */
  readonly lineStep?: number;
  readonly direction: Direction;
}

export interface TextBlock {
  /**
   * Its areas, mm, y down; the origin halfway across its widest line, and halfway between the first line's capitals and the last
   * baseline. Worked out when asked: letters are lines first, and merging them is most of the work.
   */
  readonly shapes: () => readonly Shape[];
  /** Whether there is nothing to cut. */
  readonly isEmpty: boolean;
  readonly box: Box;
  /** As it came to be, mm. */
  readonly capHeight: number;
  /** Characters that the font has no glyph for, each once. */
  readonly missing: readonly string[];
}

/** Of a font that tells no height of its capitals: most have near this over the em. Common practice, no source. */
const usualCapHeight = 0.7;

/** A contour of less, mm², has nothing to cut: what fonts keep as a point or a line. */
const leastArea = 1e-6;

/** More points than this in one text, a thousand times those of plain letters, are a font's that is made to do harm. */
const mostPoints = 300_000;

/** A size letters are shaped at before they have one, mm: no more than a start. */
const anySize = 10;

/** The areas of a text. A text of nothing but spaces has none. @throws DamagedFont, as `shapes` does, where the font is. */
export function textBlock(font: LetterFont, options: TextOptions, directions: ReadDirections): TextBlock {
  const capitals = font.capHeight ?? usualCapHeight;
  const asked = options.capHeight ?? anySize;
  const em = asked / capitals;
  const lines = options.text.split('\n').map((line) => lineOf(font, line, em, options, directions));
  const width = Math.max(...lines.map(({ box }) => box.maxX - box.minX), 0);
  const by = scaleFor(options, width);
  const step = options.lineStep ?? font.lineStep * em;
  const top = -(asked + step * (lines.length - 1)) / 2 + asked;
  const contours = lines.flatMap(({ contours: own, box }, i) => {
    if (own.length === 0) return [];
    const x = {
      left: -width / 2 - box.minX,
      right: width / 2 - box.maxX,
      middle: -(box.minX + box.maxX) / 2,
    };
    return placed(shifted(own, { x: x[options.align], y: top + i * step }), by, 0, 0);
  });
  return {
    shapes: () => {
      if (isTangled(contours, mostCrossings)) throw new DamagedFont('its letters are a scribble');
      return filledShapes(contours, 'nonzero', chordTolerance);
    },
    isEmpty: contours.every((contour) => Math.abs(signedArea(contour)) < leastArea),
    box: contours.length === 0 ? boxAround([{ minX: 0, minY: 0, maxX: 0, maxY: 0 }]) : tightBox(contours),
    capHeight: asked * by,
    missing: [...new Set(lines.flatMap(({ missing }) => missing))],
  };
}

/** With a cap height, letters only ever become smaller to fit; without, they fill the width. */
function scaleFor({ capHeight, fit }: TextOptions, width: number): number {
  if (fit === undefined || width === 0) return 1;
  return capHeight === undefined ? fit / width : Math.min(1, fit / width);
}

interface Line {
  readonly contours: readonly Contour[];
  readonly box: Box;
  readonly missing: readonly string[];
}

/** A script whose letters join: space between them would tear them apart. */
const joins = /\p{Script=Arabic}|\p{Script=Syriac}|\p{Script=Mongolian}/u;

/** What a font has to draw something for: that of a damaged one may be nothing, made of itself say. */
const isSeen = /[\p{L}\p{N}\p{P}\p{S}]/u;

/** A line about its own start. */
function lineOf(
  font: LetterFont,
  line: string,
  em: number,
  { spacing, direction }: TextOptions,
  directions: ReadDirections,
): Line {
  const missing: string[] = [];
  const contours: Contour[] = [];
  let [pen, points] = [0, 0];
  for (const { from, to, isRightToLeft } of directions(line, direction)) {
    const text = line.slice(from, to);
    const apart = joins.test(text) ? 0 : spacing;
    const glyphs = font.shape(text, { isRightToLeft, ligatures: apart === 0 });
    const drawn = new Set<number>();
    glyphs.forEach((glyph, i) => {
      const outline = font.outline(glyph.glyph);
      if (outline.length > 0 && glyph.glyph !== 0) drawn.add(glyph.at);
      points += outline.reduce((sum, { segments }) => sum + segments.length, 0);
      if (points > mostPoints) throw new DamagedFont(`its letters have more than ${mostPoints} points`);
      contours.push(...placed(outline, em, pen + glyph.x * em, -glyph.y * em));
      pen += glyph.advance * em + (endsCluster(glyphs, i) ? apart : 0);
    });
    for (const { glyph, at } of glyphs) {
      const character = characterAt(text, at);
      if (glyph === 0 || (!drawn.has(at) && isSeen.test(character))) missing.push(character);
    }
  }
  const box = contours.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : tightBox(contours);
  return { contours, box, missing };
}

/** Marks stand on their letter: only after its last glyph comes the space to the next one. */
const endsCluster = (glyphs: readonly ShapedGlyph[], i: number): boolean =>
  glyphs[i + 1]?.at !== glyphs[i]?.at;

/** A character as a person sees it. */
const characterAt = (text: string, at: number): string =>
  String.fromCodePoint(text.codePointAt(at) ?? 0xfffd);
