// A picture made of pixels as areas: its few colours, each traced along its edge to a fraction of a pixel.
import { type Finding, look, Refused, stop } from '../../finding.ts';
import { inMm, mostLength } from '../../lengths/length.ts';
import type { TileLayer, TilePixels } from '../tile-layer.ts';
import { decodePicture, type Picture } from './decode-picture.ts';
import {
  leastPixels,
  mostPatches,
  type PictureSize,
  shapesAround,
  shapesIn,
  tooBusy,
  tooFine,
} from './picture-areas.ts';
import { type Colour, type Coloured, colouredPicture, mostColours } from './picture-colours.ts';
import { coverOf } from './picture-cover.ts';
import { mostPixels, type PictureHead, pictureHead } from './picture-head.ts';
import { patchesOf, pixelsBetweenEdges } from './picture-patches.ts';
import { type SteppedPicture, steppedPicture } from './stepped-picture.ts';
import { goesOnAcross, wrappedCover } from './wrapped-picture.ts';

export interface TraceOptions {
  /** How wide the picture is to be, mm; by its own resolution if left out. */
  readonly across?: number;
  /** How many colours it is traced in, 2 to 8; as many as it plainly has if left out. */
  readonly colours?: number;
  /** Colours, `#rrggbb`, that are the ground it stands on, not film; a very light one is that unasked. */
  readonly ground?: readonly string[];
  /** Whether it is known to go on across its borders, whatever is seen there. */
  readonly goesOn?: boolean;
  /** Whether it may be drawn for a half drop or bricks: then as many copies as make one that goes on straight are traced as one tile. */
  readonly mayStep?: boolean;
}

export interface Traced {
  readonly width: number;
  readonly height: number;
  /** Size over the size that its file gives; 1 where the file gives none. */
  readonly scale: number;
  readonly layers: readonly TileLayer[];
  /** What it was traced from, where it does not go on across its borders. */
  readonly pixels?: TilePixels;
  /** Whether its pixels go on across its borders: not where that was only said. */
  readonly goesOn?: true;
  /** Edges lie within so much of where the picture shows them, mm. */
  readonly grain: number;
  /** Colours that were left as the ground. */
  readonly grounds: readonly string[];
  readonly findings: readonly Finding[];
}

/** A patch to so few pixels or fewer, on the mean, is noise: most of what is seen are specks. */
const pixelsPerSpeck = 20;

/** Edges so few pixels apart, on the mean over all of a picture, are those of lines of one pixel: their places are not told. */
const leastBetweenEdges = 1.1;

/** A colour so light, in every channel, is the ground that the picture stands on, not film. */
const groundFrom = 240;

/**
 * Trace a picture: in two colours where nobody says how many, and in all that it has it is too busy to follow, as textures are.
 * @throws Refused where it is broken, too large, turned by its camera or of no known size.
 */
export function tracedPicture(bytes: Uint8Array, file: string, options: TraceOptions): Traced {
  try {
    return tracedIn(bytes, file, options);
  } catch (fault) {
    if (options.colours !== undefined || !isTooBusy(fault)) throw fault;
    const plain = inTwoColours(bytes, file, options);
    if (!plain) throw fault;
    const says =
      'has too many shades to follow each of them: it is traced in two, dark on light; "colours" asks for more';
    return { ...plain, findings: [...plain.findings, look('two-colours', { file }, says)] };
  }
}

const isTooBusy = (fault: unknown): boolean =>
  fault instanceof Refused && fault.findings.some(({ rule }) => rule === 'too-busy' || rule === 'no-area');

/** A picture in two colours; undefined where it is too busy for that too. */
function inTwoColours(bytes: Uint8Array, file: string, options: TraceOptions): Traced | undefined {
  try {
    return tracedIn(bytes, file, { ...options, colours: 2 });
  } catch (fault) {
    if (isTooBusy(fault)) return undefined;
    throw fault;
  }
}

/** `alone`: whether its copies are known to have nothing to do with it. */
function tracedIn(bytes: Uint8Array, file: string, options: TraceOptions, alone = false): Traced {
  const head = headOf(bytes, file);
  const one = sizeOf(head, file, options);
  const seen = pixelsOf(bytes, head, file);
  // Before it is held against its copies: along the border of noise every pixel is an edge to be met.
  const colouredOnce = colouredPicture(seen, options.colours);
  const groundsOnce = groundsOf(colouredOnce.palette, options.ground);
  refuseBusy(seen.width, colouredOnce, groundsOnce, file);
  const isSeamless = !alone && goesOnAcross(seen);
  const goesOn = !alone && (options.goesOn === true || isSeamless);
  const stepped = options.mayStep === true && !goesOn && !alone ? steppedPicture(seen) : undefined;
  const size = sizeOfCopies(one, stepped);
  const picture = stepped?.picture ?? seen;
  const coloured = stepped ? colouredPicture(picture, options.colours) : colouredOnce;
  const grounds = stepped ? groundsOf(coloured.palette, options.ground) : groundsOnce;
  const wraps = goesOn || stepped !== undefined;
  const layers: TileLayer[] = [];
  for (const [label, colour] of coloured.palette.entries()) {
    if (grounds.has(label)) continue;
    const shapes = wraps
      ? shapesAround(wrappedCover(picture, coloured, label), size, file)
      : shapesIn({ ...picture, values: coverOf(picture, coloured, label) }, size, file);
    if (!shapes) return tracedIn(bytes, file, options, true);
    const name = hex(colour);
    if (shapes.length > 0) layers.push({ name, colour: name, shapes });
  }
  if (layers.length === 0) throw new Refused([stop('no-area', { file }, nothingShown(coloured, grounds))]);
  const left = coloured.palette.flatMap((colour, label) => (grounds.has(label) ? [hex(colour)] : []));
  const isShaded = options.colours === undefined && coloured.palette.length === mostColours;
  const told = `${tracedFinding(head, size, layers, left)}${isShaded ? shadedInWords : ''}`;
  const { width, height, pixel } = size;
  const scale = head.resolution ? pixel.x * head.resolution.x : 1;
  const pixels = { width: picture.width, height: picture.height, rgb: picture.rgb, pixel };
  const findings = [look('traced', { file }, stepped ? `${told}. ${steppedInWords(stepped)}` : told)];
  const shown = isSeamless || stepped !== undefined ? { goesOn: true as const } : {};
  const grain = Math.max(pixel.x, pixel.y);
  return { width, height, scale, layers, grounds: left, findings, grain, ...(wraps ? shown : { pixels }) };
}

const shadedInWords = `. It is in ${mostColours} colours, the most there can be, and each is a film of its own: give fewer "colours", such as 2 for all that is dark as one film`;

const sizeOfCopies = (
  { width, height, pixel }: PictureSize,
  stepped: SteppedPicture | undefined,
): PictureSize => ({
  width: width * (stepped?.across ?? 1),
  height: height * (stepped?.up ?? 1),
  pixel,
});

function steppedInWords({ across, up, parts }: SteppedPicture): string {
  const [by, of, where] =
    across > 1 ? ['a drop', 'height', 'side by side'] : ['a shift', 'width', 'above one another'];
  const count = Math.max(across, up);
  return `It goes on in its copy by ${by} of ${parts}/${count} of its ${of}, and not straight on: ${count} ${where} are taken as the tile`;
}

function headOf(bytes: Uint8Array, file: string): PictureHead {
  let head: PictureHead | undefined;
  try {
    head = pictureHead(bytes);
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
  }
  const refuse = (rule: string, says: string): never => {
    throw new Refused([stop(rule, { file }, says)]);
  };
  if (!head || !(head.width > 0 && head.height > 0))
    return refuse('unreadable', 'is a picture that breaks off or has no size; save it again as PNG');
  const { width, height, isTurned } = head;
  if (!(width * height <= mostPixels))
    refuse(
      'too-many-pixels',
      `has ${width} x ${height} pixels; up to ${mostPixels / 1e6} million are traced, so save it smaller`,
    );
  if (isTurned)
    refuse('turned-picture', 'is stored turned, as cameras do; open it, save it upright, and give that');
  return head;
}

function sizeOf(
  { width, height, resolution }: PictureHead,
  file: string,
  { across }: TraceOptions,
): PictureSize {
  if (across !== undefined) {
    const ratio = resolution ? resolution.x / resolution.y : 1;
    const x = across / width;
    return { width: across, height: height * x * ratio, pixel: { x, y: x * ratio } };
  }
  if (!resolution) {
    const says = `is ${width} x ${height} pixels and does not say how large one is; give its width by --art-across 60mm, or "across" in the job's artwork`;
    throw new Refused([stop('no-size', { file }, says)]);
  }
  const [x, y] = [1 / resolution.x, 1 / resolution.y];
  if (width * x > mostLength || height * y > mostLength)
    throw new Refused([
      stop(
        'no-size',
        { file },
        `is ${inMm(width * x)} wide by its own resolution; give its width by --art-across`,
      ),
    ]);
  return { width: width * x, height: height * y, pixel: { x, y } };
}

function pixelsOf(bytes: Uint8Array, head: PictureHead, file: string): Picture {
  try {
    return decodePicture(bytes, head);
  } catch (fault) {
    const says = `can't be read as ${head.kind}: ${(fault as Error).message}; save it again as PNG`;
    throw new Refused([stop('unreadable', { file }, says)]);
  }
}

/** The colours named as the ground, and all that are light enough to be it; else the lighter of two. */
function groundsOf(palette: readonly Colour[], named: readonly string[] = []): ReadonlySet<number> {
  const isGround = (colour: Colour) => Math.min(...colour) >= groundFrom || named.includes(hex(colour));
  const light = palette.flatMap((colour, i) => (isGround(colour) ? [i] : []));
  if (light.length > 0 || palette.length !== 2) return new Set(light);
  // Of two colours the lighter is the ground, as on yellowed paper.
  const [one, other] = palette.map(([r, g, b]) => r + g + b);
  return new Set([(one ?? 0) > (other ?? 0) ? 0 : 1]);
}

const nothingShown = ({ palette }: Coloured, grounds: ReadonlySet<number>): string =>
  palette.length > grounds.size ? tooFine : 'shows nothing but its ground, so there is nothing to cut';

/** Noise is told by its pixels, before any edge of it is followed. */
function refuseBusy(
  width: number,
  { palette, labels }: Coloured,
  grounds: ReadonlySet<number>,
  file: string,
): void {
  const { large, all } = patchesOf(width, labels, palette.length, leastPixels);
  const most = Math.max(...large.filter((_, label) => !grounds.has(label)));
  if (most > mostPatches || all > Math.max(mostPatches, labels.length / pixelsPerSpeck)) throw tooBusy(file);
  if (pixelsBetweenEdges(width, labels) < leastBetweenEdges)
    throw new Refused([stop('no-area', { file }, tooFine)]);
}

const hex = (colour: Colour): string =>
  `#${colour.map((channel) => Math.round(channel).toString(16).padStart(2, '0')).join('')}`;

function tracedFinding(
  { kind, width, height, resolution }: PictureHead,
  size: PictureSize,
  layers: readonly TileLayer[],
  grounds: readonly string[],
): string {
  const colours = layers.map(({ colour }) => colour).join(', ');
  const left = grounds.length > 0 ? `; ${grounds.join(', ')} was left as the ground` : '';
  const by = resolution ? 'by its own resolution' : 'by the width given';
  const pixel = inMm(size.pixel.x);
  return `is a ${kind} of ${width} x ${height} pixels, ${pixel} each ${by}: traced in ${layers.length === 1 ? 'one colour' : `${layers.length} colours`} (${colours})${left}. Edges lie within half a pixel; look at the traced picture before you cut`;
}
