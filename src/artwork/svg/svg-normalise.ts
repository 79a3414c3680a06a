// Adapter: @resvg/resvg-wasm (MPL-2.0) turns any static SVG into plain paths with resolved styles.
// The WebAssembly build is used everywhere: unlike the native one it can read no files.
import { initWasm, Resvg } from '@resvg/resvg-wasm';

/** Gives the plain form of an SVG text, its texts as outlines in the fonts given; or throws with the reader's own words. */
export type Normalise = (svg: string, fonts?: readonly Uint8Array[]) => string;

/** A picture on white, row by row from the top, three bytes a pixel: nothing of it is seen through. */
export interface PixelsOnWhite {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

export interface SvgEngine {
  readonly normalise: Normalise;
  /** Draws an SVG text on white, at a width in px. */
  readonly onWhite: (svg: string, widthPx: number) => PixelsOnWhite;
}

/** Start the engine from its WebAssembly, as bytes or compiled. Once started it stays; asking again gives the same engine. */
export async function startSvgEngine(wasm: object): Promise<SvgEngine> {
  await initWasm(wasm as unknown as Parameters<typeof initWasm>[0]).catch((fault: unknown) => {
    if (!String(fault).includes('Already initialized')) throw fault;
  });
  const withEngine = <T>(svg: string, options: object, use: (engine: InstanceType<typeof Resvg>) => T): T => {
    const engine = new Resvg(svg, options);
    try {
      return use(engine);
    } finally {
      engine.free();
    }
  };
  return {
    normalise: (svg, fonts = []) =>
      withEngine(svg, fonts.length > 0 ? { font: { fontBuffers: fonts } } : {}, (engine) =>
        engine.toString(),
      ),
    onWhite: (svg, widthPx) =>
      withEngine(svg, { fitTo: { mode: 'width', value: widthPx } }, (engine) => {
        const picture = engine.render();
        const { width, height, pixels } = picture;
        picture.free();
        return { width, height, rgb: withWhite(pixels) };
      }),
  };
}

/** Pixels with white behind them; their shades come multiplied by their opacity, which is the fourth byte. */
function withWhite(pixels: Uint8Array): Uint8Array {
  const rgb = new Uint8Array((pixels.length / 4) * 3);
  for (let i = 0, to = 0; i < pixels.length; i += 4) {
    const clear = 255 - (pixels[i + 3] ?? 255);
    rgb[to++] = (pixels[i] ?? 0) + clear;
    rgb[to++] = (pixels[i + 1] ?? 0) + clear;
    rgb[to++] = (pixels[i + 2] ?? 0) + clear;
  }
  return rgb;
}
