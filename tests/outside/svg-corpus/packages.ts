// The drawings of the packages, each with its name, as the texts that a maker would be given.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** Name and text of a drawing. */
export interface Drawing {
  readonly name: string;
  readonly text: string;
}

const require = createRequire(import.meta.url);

interface Icon {
  readonly body: string;
  readonly left?: number;
  readonly top?: number;
  readonly width?: number;
  readonly height?: number;
}
interface IconSet extends Omit<Icon, 'body'> {
  readonly icons: Readonly<Record<string, Icon>>;
}

/** A set of icons keeps what is between the tags of each, and a size for those that have none of their own. */
function iconSet(name: string): Drawing[] {
  const { icons, ...set }: IconSet = require(`@iconify-json/${name}/icons.json`);
  return Object.entries(icons).map(([icon, own]) => {
    const { body, left = 0, top = 0, width = 16, height = 16 } = { ...set, ...own };
    const names = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
    const size = `width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}"`;
    return { name: icon, text: `<svg ${names} ${size}>${body}</svg>` };
  });
}

function weather(style: string): Drawing[] {
  const folder = join(dirname(require.resolve('@meteocons/svg-static/manifest.json')), style);
  const files = readdirSync(folder).filter((file) => file.endsWith('.svg'));
  return files.sort().map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
}

/** One of each of the package's generators, of the same seed. */
function generated(): Drawing[] {
  const { generate }: { generate: (seed: string, options: object) => object } = require('geopattern');
  const kinds =
    'octogons overlappingCircles plusSigns xes sineWaves hexagons overlappingRings plaid triangles squares concentricCircles diamonds tessellation nestedSquares mosaicSquares chevrons';
  return kinds.split(' ').map((name) => ({ name, text: String(generate('scales', { generator: name })) }));
}

export const packages: Readonly<Record<string, () => Drawing[]>> = {
  lucide: () => iconSet('lucide'),
  healthicons: () => iconSet('healthicons'),
  noto: () => iconSet('noto'),
  'meteocons fill': () => weather('fill'),
  'meteocons line': () => weather('line'),
  geopattern: generated,
};
