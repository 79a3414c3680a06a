// Adapter: @resvg/resvg-wasm (MPL-2.0) turns any static SVG into plain paths with resolved styles.
// The WebAssembly build is used everywhere: unlike the native one it can read no files.
import { initWasm, Resvg } from '@resvg/resvg-wasm';

/** Gives the plain form of an SVG text, its texts as outlines in the fonts given; or throws with the reader's own words. */
export type Normalise = (svg: string, fonts?: readonly Uint8Array[]) => string;

/** Draws an SVG text at a width in px and gives a PNG. */
export type Rasterise = (svg: string, widthPx: number) => Uint8Array;

export interface SvgEngine {
  readonly normalise: Normalise;
  readonly rasterise: Rasterise;
}

/** Start the engine from its WebAssembly bytes. Once started it stays; asking again gives the same engine. */
export async function startSvgEngine(wasm: Uint8Array): Promise<SvgEngine> {
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
    rasterise: (svg, widthPx) =>
      withEngine(svg, { fitTo: { mode: 'width', value: widthPx } }, (engine) => {
        const picture = engine.render();
        const png = picture.asPng();
        picture.free();
        return png;
      }),
  };
}
