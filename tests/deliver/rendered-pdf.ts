// A PDF through a renderer that shares nothing with us: PDFium (Chromium's), as WebAssembly.
import { PDFiumLibrary } from '@hyzyla/pdfium';

/** Pixels to the mm that are asked for. */
const wantedPxPerMm = 16;

export interface Rendered {
  /** Size of the page as the file says, mm. */
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opacity of each pixel, row by row from the top. */
  readonly pixels: Uint8Array;
  /** The renderer rounds its picture to whole points, so this is not quite what was asked for, and not the same both ways. */
  readonly pxPerMm: { readonly x: number; readonly y: number };
  readonly widthPx: number;
  readonly heightPx: number;
  /** What kinds of object stand on the page: path, text, image, shading, form. */
  readonly kinds: readonly string[];
}

export async function renderedPdf(bytes: Uint8Array): Promise<Rendered[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages: Rendered[] = [];
  for (const page of document.pages()) {
    const { originalWidth, originalHeight } = page.getOriginalSize();
    // Asked before the page is drawn: drawing it closes it.
    const kinds = [...new Set([...page.objects()].map(({ type }) => type))];
    // A copy of its own: 70 MB for a page of A4, and not another one.
    const bitmap = await page.render({ scale: (wantedPxPerMm * 25.4) / 72, render: 'bitmap' });
    pages.push({
      width: (originalWidth * 25.4) / 72,
      height: (originalHeight * 25.4) / 72,
      pixels: bitmap.data,
      pxPerMm: {
        x: (bitmap.width * 72) / 25.4 / originalWidth,
        y: (bitmap.height * 72) / 25.4 / originalHeight,
      },
      widthPx: bitmap.width,
      heightPx: bitmap.height,
      kinds,
    });
  }
  document.destroy();
  library.destroy();
  return pages;
}

/** Whether at least half a pixel is covered by a line of any of our colours: one of its parts is dark. */
export const isInk = ({ pixels, widthPx }: Rendered, x: number, y: number): boolean => {
  const i = 4 * (y * widthPx + x);
  return Math.min(pixels[i] ?? 255, pixels[i + 1] ?? 255, pixels[i + 2] ?? 255) < 150;
};

/** The box of the topmost thing on a page, down to the first row that is bare; mm, lines with their whole width. */
export function topmostBox(page: Rendered) {
  let [minX, maxX, top, bottom] = [Infinity, -Infinity, -1, -1];
  for (let y = 0; y < page.heightPx; y++) {
    let any = false;
    for (let x = 0; x < page.widthPx; x++)
      if (isInk(page, x, y)) {
        any = true;
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x + 1);
      }
    if (any && top < 0) top = y;
    if (any) bottom = y + 1;
    if (!any && top >= 0) break;
  }
  return { width: (maxX - minX) / page.pxPerMm.x, height: (bottom - top) / page.pxPerMm.y };
}

/** Lengths of the unbroken level runs of ink over `least` mm, one a line, mm; from `top` down. */
export function levelRuns(page: Rendered, top: number, least: number): number[] {
  const runs: { readonly y: number; readonly length: number }[] = [];
  const { x: across, y: up } = page.pxPerMm;
  for (let y = Math.floor(top * up); y < page.heightPx; y++) {
    let run = 0;
    let longest = 0;
    for (let x = 0; x < page.widthPx; x++) {
      run = isInk(page, x, y) ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    if (longest < least * across) continue;
    const last = runs.at(-1);
    const [at, length] = [y / up, longest / across];
    // The rows of one line are one run: its longest.
    if (last && at - last.y < 0.5) runs[runs.length - 1] = { y: at, length: Math.max(last.length, length) };
    else runs.push({ y: at, length });
  }
  return runs.map(({ length }) => length);
}

/** The words of each page, as they can be copied from it. */
export async function wordsOfPdf(bytes: Uint8Array): Promise<readonly string[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const words = [...document.pages()].map((page) => page.getText());
  document.destroy();
  library.destroy();
  return words;
}
