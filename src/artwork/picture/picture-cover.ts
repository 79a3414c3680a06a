// How much of each pixel of a picture a colour covers: smooth edges tell it, to a fraction of a pixel.
import type { Picture } from './decode-picture.ts';
import { type Colour, type Coloured, shareBetween } from './picture-colours.ts';

/**
 * For each pixel how much of it one colour covers, 0 to 255: the share of its mix with the other colour around it. Where
 * three or more meet, how much nearer it is to this one than to any of the others.
 */
export function coverOf(
  { width, height, rgb }: Picture,
  { palette, labels }: Coloured,
  label: number,
): Uint8Array {
  const cover = new Uint8Array(width * height);
  const own = palette[label] ?? [0, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      let present = 0;
      for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++)
        for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++)
          present |= 1 << (labels[v * width + u] ?? 0);
      if ((present & (1 << label)) === 0) continue;
      const others = present & ~(1 << label);
      if (others === 0) {
        cover[i] = 255;
        continue;
      }
      const colour: Colour = [rgb[3 * i] ?? 0, rgb[3 * i + 1] ?? 0, rgb[3 * i + 2] ?? 0];
      cover[i] = Math.round(255 * shareOf(own, othersOf(palette, others), colour));
    }
  return cover;
}

const othersOf = (palette: readonly Colour[], present: number): Colour[] =>
  palette.filter((_, k) => (present & (1 << k)) !== 0);

function shareOf(own: Colour, others: readonly Colour[], colour: Colour): number {
  const [other] = others;
  if (other && others.length === 1) return shareBetween(other, own, colour);
  const away = (to: Colour): number => Math.hypot(to[0] - colour[0], to[1] - colour[1], to[2] - colour[2]);
  const [mine, theirs] = [away(own), Math.min(...others.map(away))];
  return mine + theirs === 0 ? 0.5 : theirs / (mine + theirs);
}
