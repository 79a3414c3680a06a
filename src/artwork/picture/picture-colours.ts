// The few colours that a picture is made of, and which of them each pixel has.
import type { Picture } from './decode-picture.ts';

/** Red, green, blue, 0 to 255. */
export type Colour = readonly [number, number, number];

export interface Coloured {
  readonly palette: readonly Colour[];
  /** For each pixel the number of its colour. */
  readonly labels: Uint8Array;
}

export const mostColours = 8;

/** Bins a channel: colours nearer than this are not told apart when they are counted. */
const bins = 32;

/** A pixel that differs by less from those around it lies within an area, not on an edge: in each channel. */
const flatStep = 20;

/** Colours nearer than this are shades of one, as red, green and blue. */
const sameColour = 32;

/** A colour that fewer of the pixels within areas have is a speck. */
const leastShare = 0.002;

/** Colours looked at, the likeliest first, before a picture is taken to have no more. */
const mostTried = 300;

const far = (a: Colour, b: Colour): number => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2;

interface Bin {
  readonly colour: Colour;
  readonly count: number;
}

/** The colours of some pixels of a picture, bin by bin. */
function tallied({ width, height, rgb }: Picture, isCounted: (i: number) => boolean): Bin[] {
  const sums = new Map<number, [number, number, number, number]>();
  for (let i = 0; i < width * height; i++) {
    if (!isCounted(i)) continue;
    const [r, g, b] = [rgb[3 * i] ?? 0, rgb[3 * i + 1] ?? 0, rgb[3 * i + 2] ?? 0];
    const bin = ((r * bins) >> 8) * bins * bins + ((g * bins) >> 8) * bins + ((b * bins) >> 8);
    const sum = sums.get(bin);
    if (sum) {
      sum[0] += r;
      sum[1] += g;
      sum[2] += b;
      sum[3] += 1;
    } else sums.set(bin, [r, g, b, 1]);
  }
  return [...sums.values()].map(([r, g, b, count]) => ({
    colour: [r / count, g / count, b / count],
    count,
  }));
}

/** Colours counted over the pixels within areas; over all where there are hardly any such. */
function counted(picture: Picture): Bin[] {
  const { width, height, rgb } = picture;
  const isLike = (i: number, j: number): boolean =>
    Math.abs((rgb[3 * i] ?? 0) - (rgb[3 * j] ?? 0)) < flatStep &&
    Math.abs((rgb[3 * i + 1] ?? 0) - (rgb[3 * j + 1] ?? 0)) < flatStep &&
    Math.abs((rgb[3 * i + 2] ?? 0) - (rgb[3 * j + 2] ?? 0)) < flatStep;
  const isFlat = (i: number): boolean => {
    const x = i % width;
    return (
      (x === 0 || isLike(i, i - 1)) &&
      (x === width - 1 || isLike(i, i + 1)) &&
      (i < width || isLike(i, i - width)) &&
      (i >= width * (height - 1) || isLike(i, i + width))
    );
  };
  const flat = tallied(picture, isFlat);
  const total = flat.reduce((sum, { count }) => sum + count, 0);
  return total > 0.05 * width * height ? flat : tallied(picture, () => true);
}

/** The colours of a picture: as many as are asked for, or as many as it plainly has, eight at most. */
function paletteOf(picture: Picture, wanted: number | undefined): Colour[] {
  const found = counted(picture).sort((a, b) => b.count - a.count);
  const total = found.reduce((sum, { count }) => sum + count, 0);
  const [first] = found;
  if (!first) return [];
  // Settled only at the end: a mean of two colours would lie near to both, and hide that there are two.
  const palette: Colour[] = [first.colour];
  const most = wanted ?? mostColours;
  while (palette.length < most) {
    const next = farthestBin(found, palette, wanted === undefined ? leastShare * total : 0);
    if (!next) break;
    palette.push(next);
  }
  const areas = settled(found, palette);
  return withThin(picture, wanted === undefined ? withoutDoubles(found, areas) : areas, wanted);
}

/** Two that settled on shades of one colour are one: noise had set them apart. */
function withoutDoubles(found: readonly Bin[], palette: readonly Colour[]): Colour[] {
  const at = palette.findIndex((one, i) =>
    palette.some((other, k) => k < i && far(one, other) < sameColour ** 2),
  );
  if (at < 0) return [...palette];
  return withoutDoubles(
    found,
    settled(
      found,
      palette.filter((_, i) => i !== at),
    ),
  );
}

/** A pixel so far from all colours of areas, and from all that two of them make when mixed, has a colour of its own. */
const ownColour = 80;

/** So large a share of all pixels has to have it, or of all that are not of the ground where nothing else is seen. */
const leastThin = 0.01;

/**
 * With the colours that are nowhere a whole area: lines of a pixel or two, which lie on edges everywhere. Else they would be
 * taken for what they stand on.
 */
function withThin(picture: Picture, areas: readonly Colour[], wanted: number | undefined): Colour[] {
  const palette = [...areas];
  const most = wanted ?? mostColours;
  if (palette.length >= most) return palette;
  const all = tallied(picture, () => true);
  const least = leastThin * picture.width * picture.height;
  while (palette.length < most) {
    const own = all.filter(({ colour }) => fromMixes(palette, colour) > ownColour);
    const next = farthestBin(own, palette, palette.length === 1 ? 0 : least);
    const isMuch =
      own.reduce((sum, { count }) => sum + count, 0) >= (palette.length === 1 ? least / 5 : least);
    if (!next || !isMuch) break;
    palette.push(next);
  }
  return palette;
}

/** How far a colour is from all colours of a palette and from all that two of them make when mixed. */
function fromMixes(palette: readonly Colour[], colour: Colour): number {
  const pairs = palette.flatMap((one, i) => palette.slice(i).map((other) => [one, other] as const));
  return Math.sqrt(Math.min(...pairs.map(([one, other]) => far(between(one, other, colour), colour))));
}

/** Of all that two colours make when mixed the nearest to a third. */
function between(a: Colour, b: Colour, colour: Colour): Colour {
  const share = shareBetween(a, b, colour);
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])];
}

/** The colour that the palette serves worst, by how far it is and how many pixels have it. */
function farthestBin(found: readonly Bin[], palette: readonly Colour[], least: number): Colour | undefined {
  const near = sameColour ** 2;
  const gap = (colour: Colour): number => Math.min(...palette.map((one) => far(one, colour)));
  const candidates = found
    .map(({ colour, count }) => ({ colour, away: gap(colour), count }))
    .filter(({ away }) => away > 0 && (least === 0 || away >= near))
    .sort((a, b) => b.count * b.away - a.count * a.away);
  // Whether it is a colour of the picture is told with what is near it, for it may be spread over many bins; which of
  // those it is, by itself alone: between two colours that are much alike lies none.
  return candidates.slice(0, mostTried).find(({ colour }) => countNear(found, colour) >= least)?.colour;
}

/** Pixels of the shades of a colour. */
const countNear = (found: readonly Bin[], colour: Colour): number =>
  found.reduce((sum, other) => (far(other.colour, colour) < sameColour ** 2 ? sum + other.count : sum), 0);

/** Source: Lloyd's algorithm, k-means, a few rounds of it. */
function settled(found: readonly Bin[], start: readonly Colour[]): Colour[] {
  let palette = [...start];
  for (let round = 0; round < 4; round++) {
    const sums = palette.map((): [number, number, number, number] => [0, 0, 0, 0]);
    for (const { colour, count } of found) {
      const sum = sums[nearest(palette, colour[0], colour[1], colour[2])];
      if (!sum) continue;
      for (const k of [0, 1, 2] as const) sum[k] += colour[k] * count;
      sum[3] += count;
    }
    palette = sums.map(([r, g, b, count], i) =>
      count > 0 ? [r / count, g / count, b / count] : (palette[i] ?? [0, 0, 0]),
    );
  }
  return palette;
}

function nearest(palette: readonly Colour[], r: number, g: number, b: number): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (const [k, colour] of palette.entries()) {
    const away = (colour[0] - r) ** 2 + (colour[1] - g) ** 2 + (colour[2] - b) ** 2;
    if (away < least) [best, least] = [k, away];
  }
  return best;
}

/** The colours of a picture and where each is. */
export function colouredPicture(picture: Picture, wanted: number | undefined): Coloured {
  const palette = paletteOf(picture, wanted);
  const { width, height, rgb } = picture;
  const labels = new Uint8Array(width * height);
  const known = new Map<number, number>();
  for (let i = 0; i < labels.length; i++) {
    const [r, g, b] = [rgb[3 * i] ?? 0, rgb[3 * i + 1] ?? 0, rgb[3 * i + 2] ?? 0];
    const key = (r << 16) | (g << 8) | b;
    let label = known.get(key);
    if (label === undefined) {
      label = nearest(palette, r, g, b);
      known.set(key, label);
    }
    labels[i] = label;
  }
  return { palette, labels: palette.length > 2 ? withoutFringes(picture, palette, labels) : labels };
}

/**
 * Between two colours an edge passes through others: a third that only lies there, nowhere a whole pixel deep, and that
 * the two make when mixed, is none of the picture's. Its pixels go to the nearer of the two.
 */
function withoutFringes(
  { width, height, rgb }: Picture,
  palette: readonly Colour[],
  labels: Uint8Array,
): Uint8Array {
  const deep = deepIn(labels, width, height);
  const around = (i: number, reach: number, each: (j: number) => void): void => {
    const [x, y] = [i % width, Math.floor(i / width)];
    for (let dy = -reach; dy <= reach; dy++)
      for (let dx = -reach; dx <= reach; dx++) {
        const [u, v] = [x + dx, y + dy];
        if (u >= 0 && v >= 0 && u < width && v < height) each(v * width + u);
      }
  };
  const cleaned = labels.slice();
  for (let i = 0; i < labels.length; i++) {
    if (deep[i] === 1) continue;
    let isOfArea = false;
    const beside = new Set<number>();
    around(i, 2, (j) => {
      if (deep[j] !== 1) return;
      if (labels[j] === labels[i]) isOfArea ||= true;
      else beside.add(labels[j] ?? 0);
    });
    if (isOfArea || beside.size < 2) continue;
    const mixed = mixOf(palette, [...beside], [rgb[3 * i] ?? 0, rgb[3 * i + 1] ?? 0, rgb[3 * i + 2] ?? 0]);
    if (mixed !== undefined) cleaned[i] = mixed;
  }
  return cleaned;
}

/** Which pixels have only their like around them: 1 for those. */
function deepIn(labels: Uint8Array, width: number, height: number): Uint8Array {
  const deep = new Uint8Array(labels.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const own = labels[i];
      const [left, right] = [x === 0 ? 0 : 1, x === width - 1 ? 0 : 1];
      let isDeep = true;
      for (let row = y === 0 ? i : i - width; row <= i + width && row < labels.length && isDeep; row += width)
        isDeep = labels[row - left] === own && labels[row] === own && labels[row + right] === own;
      deep[i] = isDeep ? 1 : 0;
    }
  return deep;
}

/** The nearer of the two colours that make this one when mixed, if two of these do. */
function mixOf(palette: readonly Colour[], beside: readonly number[], colour: Colour): number | undefined {
  let best: { readonly label: number; readonly miss: number } | undefined;
  for (const [k, one] of beside.entries())
    for (const other of beside.slice(k + 1)) {
      const [a, b] = [palette[one], palette[other]];
      if (!a || !b) continue;
      const share = shareBetween(a, b, colour);
      const miss = far(between(a, b, colour), colour);
      if (miss < sameColour ** 2 && miss < (best?.miss ?? Number.POSITIVE_INFINITY))
        best = { label: share < 0.5 ? one : other, miss };
    }
  return best?.label;
}

/** How far from one colour to another a third lies, 0 to 1. */
export function shareBetween(a: Colour, b: Colour, colour: Colour): number {
  let [along, length] = [0, 0];
  for (const k of [0, 1, 2] as const) {
    along += (colour[k] - a[k]) * (b[k] - a[k]);
    length += (b[k] - a[k]) ** 2;
  }
  return length === 0 ? 0 : Math.max(0, Math.min(1, along / length));
}
