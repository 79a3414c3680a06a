// Pictures against their references: draws an SVG text and counts the pixels that differ.

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-wasm';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { type SvgEngine, startSvgEngine } from '../../src/artwork/svg/svg-normalise.ts';

const here = dirname(fileURLToPath(import.meta.url));
const wasm = join(here, '../../node_modules/@resvg/resvg-wasm/index_bg.wasm');

/** The engine that draws our pictures, as it is delivered. */
export const pictureEngine = async (): Promise<PictureEngine> => ({
  ...(await startSvgEngine(readFileSync(wasm))),
  rasterise: (svg, widthPx) => {
    const engine = new Resvg(svg, { fitTo: { mode: 'width', value: widthPx } });
    const picture = engine.render();
    const png = picture.asPng();
    picture.free();
    engine.free();
    return png;
  },
});

export interface PictureEngine extends SvgEngine {
  /** An SVG text as a PNG, at a width in px; what nothing is drawn on stays clear. */
  readonly rasterise: (svg: string, widthPx: number) => Uint8Array;
}

/** An SVG text as pixels, at a width in px. */
export async function drawn(svg: string, widthPx: number): Promise<PNG> {
  const engine = await pictureEngine();
  return PNG.sync.read(Buffer.from(engine.rasterise(svg, widthPx)));
}

export interface PictureOptions {
  /** File name of the reference without `.png`. */
  readonly name: string;
  readonly widthPx: number;
  /** Most pixels that may differ, as a share of all. */
  readonly tolerance: number;
  /** Where the references are; beside this file if left out. */
  readonly folder?: string;
  /** Whether to write the reference anew; if left out, whether `UPDATE=1` is set. */
  readonly update?: boolean;
}

/** In OKLab, where black to white is 1: our engine draws the same everywhere, so a slightly other shade is a difference. */
const sameShade = 0.01;

/**
 * What is wrong with a picture, in words, or undefined if it is the same as its reference within the tolerance.
 * A missing reference is wrong. Saves expected | difference | got to `failed/` beside the references when it is.
 */
export const pictureFault = async (svg: string, options: PictureOptions): Promise<string | undefined> =>
  pixelsFault(await drawn(svg, options.widthPx), options);

/** The same for pixels, whoever drew them. `shade`: how far two of them may be apart in OKLab and still be the same. */
export function pixelsFault(
  got: PNG,
  { name, tolerance, folder = here, ...options }: Omit<PictureOptions, 'widthPx'>,
  shade = sameShade,
): string | undefined {
  const update = options.update ?? process.env.UPDATE === '1';
  const file = join(folder, `${name}.png`);
  if (update) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, PNG.sync.write(got));
    return undefined;
  }
  if (!existsSync(file)) return `${name}.png is missing; look at the picture and write it with UPDATE=1`;
  const expected = PNG.sync.read(readFileSync(file));
  if (expected.width !== got.width || expected.height !== got.height) {
    const saved = save(folder, name, [expected, got]);
    return `${name}.png is ${expected.width} x ${expected.height} px, the picture ${got.width} x ${got.height}; see ${saved}`;
  }
  const difference = new PNG({ width: got.width, height: got.height });
  const count = pixelmatch(expected.data, got.data, difference.data, got.width, got.height, {
    threshold: shade,
  });
  if (count <= tolerance * got.width * got.height) return undefined;
  return `${count} pixels of ${name}.png differ; see ${save(folder, name, [expected, difference, got])}`;
}

/** Saves pictures side by side. */
function save(folder: string, name: string, pictures: readonly PNG[]): string {
  const width = pictures.reduce((sum, picture) => sum + picture.width, 0);
  const height = Math.max(...pictures.map((picture) => picture.height));
  const all = new PNG({ width, height });
  let x = 0;
  for (const picture of pictures) {
    PNG.bitblt(picture, all, 0, 0, picture.width, picture.height, x, 0);
    x += picture.width;
  }
  mkdirSync(join(folder, 'failed'), { recursive: true });
  const file = join(folder, 'failed', `${name}.png`);
  writeFileSync(file, PNG.sync.write(all));
  return file;
}
