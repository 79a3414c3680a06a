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

/**
 * The text of `rolled.svg` as it stands largest in a window: as it is, one row of views as wide as each other, or its second half set
 * below the first. Any other drawing stays as it is.
 */
export function sidesInWindow(svg: string, window: Window): string {
  const [, width = 0, height = 0] = (frame.exec(svg) ?? []).map(Number);
  const views = [...svg.matchAll(viewStart)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
  const [first, second] = views;
  if (!first || !second || views.length !== 4) return svg;
  const row = { width, height };
  const pairs = { width: width - 2 * (second.x - first.x), height: 2 * height };
  if (enlarged(row, window) >= enlarged(pairs, window)) return svg;
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
