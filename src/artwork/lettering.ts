// Words as outlines. Adapter: harfbuzzjs (MIT) shapes the text and gives the glyphs' curves; chosen over the plainer
// font reader because it shapes every script and ligature a name may need.
import { Blob, Buffer, Face, Font, shape } from 'harfbuzzjs';
import { parsePathData } from '../drawing/path-data.ts';
import type { DrawWords } from '../drawing/words.ts';

/** Ready a font from the bytes of a TrueType or OpenType file. Characters the font lacks are left out. */
export function loadFont(bytes: Uint8Array): DrawWords {
  const copy = bytes.slice();
  const face = new Face(new Blob(copy.buffer), 0);
  const font = new Font(face);
  return (text, em) => {
    const buffer = new Buffer();
    buffer.addText(text);
    buffer.guessSegmentProperties();
    shape(font, buffer);
    const scale = em / face.upem;
    let pen = 0;
    return buffer.getGlyphInfosAndPositions().flatMap((glyph) => {
      const at = { x: pen + (glyph.xOffset ?? 0), y: glyph.yOffset ?? 0 };
      if (glyph.codepoint === 0) return [];
      pen += glyph.xAdvance ?? 0;
      const data = font.glyphToPath(glyph.codepoint);
      if (data === '') return [];
      return parsePathData(data, { a: scale, b: 0, c: 0, d: -scale, e: at.x * scale, f: -at.y * scale });
    });
  };
}
