// Words of a picture as text, for a screen that has their font: lighter than outlines, and read by whoever selects them.

import { escapeXml } from '../deliver/write-svg.ts';
import { widthOf } from '../drawing/broken-lines.ts';
import type { DrawWords } from '../drawing/words.ts';
import type { PutWords } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

/** How far letters reach above and below their baseline, in sizes of the font: capitals and descenders. */
const reach = { up: 0.72, down: 0.2 } as const;

const anchors = { left: 'start', middle: 'middle', right: 'end' } as const;
const shares = { left: 0, middle: 0.5, right: 1 } as const;

/** Words in place as text. Widths are known for any size from one. */
export const textWith =
  (caption: DrawWords): PutWords =>
  (text, at, { size, fill, anchor }) => {
    const width = size * widthOf(text, { words: caption, em: 1 });
    const minX = at.x - shares[anchor] * width;
    return {
      text: `<text x="${millimetres(at.x)}" y="${millimetres(at.y)}" font-size="${millimetres(size)}" text-anchor="${anchors[anchor]}" fill="${fill}">${escapeXml(text)}</text>\n`,
      box: { minX, maxX: minX + width, minY: at.y - reach.up * size, maxY: at.y + reach.down * size },
    };
  };
