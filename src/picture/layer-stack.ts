// The films of a piece one above the other, as they are laid: the lowest at the bottom of the picture.
import { writePathData } from '../drawing/path-data.ts';
import type { DrawWords } from '../drawing/words.ts';
import type { Contour, Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { fittedSize, ink, wordsWith } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

export interface LayerStack {
  readonly title: string;
  readonly outlines: readonly Contour[];
  /** From the lowest up. */
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    readonly shapes: readonly Shape[];
  }[];
}

/** Films are seen from above and aslant: so much of their height is left, and so far it leans. */
const flattened = 0.45;
const lean = 0.3;

/** The text of the picture: mm, y down, words as outlines. Same input, same bytes. */
export function layerStack({ title, outlines, layers }: LayerStack, caption: DrawWords): string {
  const box = tightBox(outlines);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const em = Math.max(width, height) / 50;
  const margin = 3 * em;
  const put = wordsWith(caption);
  const say = (text: string, at: Point, size = em) =>
    put(text, at, { size, fill: ink.words, anchor: 'left' }).text;
  const tall = height * flattened;
  // Each clear of the words below the one above it.
  const step = tall + 2.6 * em;
  const top = margin + 4 * em;
  const sheet = `<path fill="#fff" fill-opacity=".8" stroke="${ink.wall}" stroke-width="${millimetres(0.06 * em)}" d="${writePathData(outlines, 1000)}"/>\n`;
  // White film lies on white: an edge tells it from its backing sheet.
  const edge = `stroke="${ink.quiet}" stroke-width="${millimetres(0.05 * em)}"`;
  const drawn = layers.map(({ name, colour, shapes }, i) => {
    const y = top + (layers.length - 1 - i) * step;
    // x leans by so much of what lies above the lower edge.
    const move = `matrix(1 0 ${-lean} ${flattened} ${millimetres(margin - box.minX + lean * box.maxY)} ${millimetres(y - box.minY * flattened)})`;
    const film = shapes
      .map(
        ({ contours }) =>
          `<path fill="${colour}" fill-rule="evenodd" ${edge} d="${writePathData(contours, 1000)}"/>\n`,
      )
      .join('');
    const says = `${i + 1}: ${name}${i === 0 ? ', laid first' : i === layers.length - 1 ? ', on top' : ''}`;
    return `<g data-layer="${i + 1}" transform="${move}">\n${sheet}${film}</g>\n${say(says, { x: margin, y: y + tall + 1.2 * em })}`;
  });
  const [w, h] = [
    width + lean * height + 2 * margin,
    top + (layers.length - 1) * step + tall + 2 * em + margin,
  ].map(millimetres);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>Films in the order they are laid</title>\n<rect width="${w}" height="${h}" fill="${ink.ground}"/>\n` +
    `${say(title, { x: margin, y: margin + em }, fittedSize(put, title, 1.4 * em, width + lean * height))}${drawn.join('')}</svg>\n`
  );
}
