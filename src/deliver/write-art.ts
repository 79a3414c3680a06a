// Writing artwork as an SVG that any drawing program reads: filled areas in mm, one group a colour.
import { writePathData } from '../drawing/path-data.ts';
import type { Shape } from '../geometry/contour.ts';
import { escapeXml } from './write-svg.ts';

export interface WrittenArt {
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly layers: readonly { readonly colour: string; readonly shapes: readonly Shape[] }[];
}

const size = (mm: number): string => String(Math.round(mm * 1e4) / 1e4);

/** The text of the file: curves as they are, a shape with its holes one path. Same art, same bytes. */
export function writeArt({ width, height, layers }: WrittenArt, title: string): string {
  const groups = layers.map(({ colour, shapes }) => {
    const paths = shapes.map(({ contours }) => `<path d="${writePathData(contours)}"/>\n`);
    return `<g fill="${escapeXml(colour)}" fill-rule="evenodd">\n${paths.join('')}</g>\n`;
  });
  const [w, h] = [size(width), size(height)];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n` +
    `<title>${escapeXml(title)}</title>\n${groups.join('')}</svg>\n`
  );
}
