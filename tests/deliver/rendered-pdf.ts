// A PDF through a renderer that shares nothing with us: PDFium (Chromium's), as WebAssembly.
import { PDFiumLibrary } from '@hyzyla/pdfium';

/** Pixels to the mm: 508 to the inch. */
export const pxPerMm = 20;

export interface Rendered {
  /** Size of the page as the file says, mm. */
  readonly width: number;
  readonly height: number;
  /** The colour at a pixel. */
  readonly at: (x: number, y: number) => readonly [red: number, green: number, blue: number];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly text: string;
}

export async function renderedPdf(bytes: Uint8Array): Promise<Rendered[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages: Rendered[] = [];
  for (const page of document.pages()) {
    const { originalWidth, originalHeight } = page.getOriginalSize();
    const bitmap = await page.render({
      scale: (pxPerMm * 25.4) / 72,
      render: async ({ data }) => data.slice(),
    });
    const { data, width: widthPx, height: heightPx } = bitmap;
    pages.push({
      width: (originalWidth * 25.4) / 72,
      height: (originalHeight * 25.4) / 72,
      widthPx,
      heightPx,
      at: (x, y) => {
        const i = 4 * (y * widthPx + x);
        return [data[i] ?? 255, data[i + 1] ?? 255, data[i + 2] ?? 255];
      },
      text: page.getText(),
    });
  }
  document.destroy();
  library.destroy();
  return pages;
}

const isLike = (colour: readonly number[], wanted: readonly number[]): boolean =>
  colour.every((value, i) => Math.abs(value - (wanted[i] ?? 0)) < 40);

/** Smallest box around the pixels of a colour, mm from the page's top left corner; both edges of lines included. */
export function boxOfColour(
  page: Rendered,
  wanted: readonly [number, number, number],
  below = Number.POSITIVE_INFINITY,
) {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let y = 0; y < Math.min(page.heightPx, below * pxPerMm); y++)
    for (let x = 0; x < page.widthPx; x++)
      if (isLike(page.at(x, y), wanted)) {
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x + 1);
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y + 1);
      }
  return { minX: minX / pxPerMm, minY: minY / pxPerMm, maxX: maxX / pxPerMm, maxY: maxY / pxPerMm };
}

/** Lengths of the unbroken level runs of a colour over `least` mm, one a line, mm; from `top` down. */
export function levelRuns(
  page: Rendered,
  wanted: readonly [number, number, number],
  top: number,
  least: number,
) {
  const runs: { readonly y: number; readonly length: number }[] = [];
  for (let y = Math.floor(top * pxPerMm); y < page.heightPx; y++) {
    let run = 0;
    let longest = 0;
    for (let x = 0; x <= page.widthPx; x++) {
      run = x < page.widthPx && isLike(page.at(x, y), wanted) ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    if (longest < least * pxPerMm) continue;
    const last = runs.at(-1);
    const [at, length] = [y / pxPerMm, longest / pxPerMm];
    if (last && at - last.y < 0.5) runs[runs.length - 1] = { y: at, length: Math.max(last.length, length) };
    else runs.push({ y: at, length });
  }
  return runs;
}
