// The four sides of a vessel in the window that they are seen in: in one row as they are drawn, or in two where that makes them larger.

/** A window, px. */
interface Window {
  readonly width: number;
  readonly height: number;
}

const viewStart = /<g data-view="[^"]*" transform="translate\((\S+) (\S+)\)">/g;
const frame = /width="[^"]*mm" height="[^"]*mm" viewBox="0 0 (\S+) (\S+)"/;
const ground = /<rect width="\S+" height="\S+"/;

/** By how much a picture is enlarged to fill a window. */
const enlarged = (picture: Window, window: Window): number =>
  Math.min(window.width / picture.width, window.height / picture.height);

/** How the four sides are shown: the picture's text, and whether it is as high as the window and moved along in it. */
export interface SidesShown {
  readonly svg: string;
  readonly isMoved: boolean;
}

/** What moving a picture along has to gain before it is worth a maker's hand. */
const worthMoving = 1.25;

/**
 * The text of `rolled.svg` as it stands largest in a window: as it is, one row of views as wide as each other, or its second half set
 * below the first. In a phone's (`isNarrow`) it may be moved along, where two views are in sight at once. Any other drawing stays as it is.
 */
export function sidesInWindow(svg: string, window: Window, isNarrow = false): SidesShown {
  const asDrawn = { svg, isMoved: false };
  const [, width = 0, height = 0] = (frame.exec(svg) ?? []).map(Number);
  const views = [...svg.matchAll(viewStart)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
  const [first, second] = views;
  if (!first || !second || views.length !== 4) return asDrawn;
  const row = { width, height };
  const pairs = { width: width - 2 * (second.x - first.x), height: 2 * height };
  const [ofRow, ofPairs, high] = [enlarged(row, window), enlarged(pairs, window), window.height / height];
  if (isNarrow && high * width <= 2 * window.width && high > worthMoving * Math.max(ofRow, ofPairs))
    return { svg, isMoved: true };
  return ofRow >= ofPairs ? asDrawn : { svg: inPairs(svg, pairs, height, views), isMoved: false };
}

/** The last two of four views below the first two. */
function inPairs(
  svg: string,
  pairs: Window,
  height: number,
  views: readonly { readonly x: number; readonly y: number }[],
): string {
  let view = 0;
  const size = `width="${pairs.width}" height="${pairs.height}"`;
  return svg
    .replace(
      frame,
      `width="${pairs.width}mm" height="${pairs.height}mm" viewBox="0 0 ${pairs.width} ${pairs.height}"`,
    )
    .replace(ground, `<rect ${size}`)
    .replace(viewStart, (start, x: string, y: string) => {
      const at = view++;
      const to = at < 2 ? { x, y } : { x: views[at - 2]?.x, y: height + Number(y) };
      return start.replace(`translate(${x} ${y})`, `translate(${to.x} ${to.y})`);
    });
}
