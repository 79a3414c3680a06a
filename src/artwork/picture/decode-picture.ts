// Adapter: pixels of PNG files by fast-png and fflate (MIT), of JPEG files by jpeg-js (BSD-3-Clause). Plain JavaScript, alike in
// Node and a browser. Both would unpack whatever a file holds, so what it may unpack to is measured first.
import { convertIndexedToRgb, decode as decodePng } from 'fast-png';
import { Unzlib } from 'fflate';
import { decode as decodeJpeg } from 'jpeg-js';
import { isPng, mostPixels, type PictureHead, pngChunks } from './picture-head.ts';

/** Pixels in rows from the top left, red, green and blue, 0 to 255, on white where they are see-through. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** Why a picture is not read, in a maker's words: it is packed to do harm, or of a kind that would come out wrong. */
class Unread extends Error {}

/** The picture of a file whose head was read. @throws Error in a maker's words where it is broken, or unpacks to more than its head says. */
export function decodePicture(bytes: Uint8Array, head: PictureHead): Picture {
  try {
    return isPng(bytes) ? pngPicture(bytes, head) : jpegPicture(bytes, head);
  } catch (fault) {
    if (fault instanceof Unread) throw fault;
    // What the decoders say of a broken file is said to whoever reads their code.
    throw new Error('it is damaged, cut short or of a kind that is not read');
  }
}

/** A progressive JPEG has some ten scans. Each is a walk over all of it, and one of a few bytes does. */
const mostScans = 64;

function jpegPicture(bytes: Uint8Array, { depth }: PictureHead): Picture {
  // Its decoder would take the lowest eight for all of them.
  if (depth !== 8) throw new Unread(`it holds ${depth} bits a colour, and of a JPEG 8 are read`);
  if (hasMoreScans(bytes, mostScans)) throw new Unread(`it is packed in more than ${mostScans} scans`);
  const limits = { maxResolutionInMP: mostPixels / 1e6, maxMemoryUsageInMB: 512 };
  const { width, height, data } = decodeJpeg(bytes, { useTArray: true, formatAsRGBA: true, ...limits });
  return { width, height, rgb: onWhite(data, 4, 255, width * height) };
}

/** Whether a JPEG holds more scans than so many. Source: ITU-T T.81, B.1.1: what is packed holds no marker but those of restarts. */
function hasMoreScans(bytes: Uint8Array, most: number): boolean {
  let scans = 0;
  for (let at = bytes.indexOf(0xff); at >= 0 && scans <= most; at = bytes.indexOf(0xff, at + 1))
    if (bytes[at + 1] === 0xda) scans++;
  return scans > most;
}

const kept: ReadonlySet<string> = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);

function pngPicture(bytes: Uint8Array, head: PictureHead): Picture {
  const chunks = [...pngChunks(bytes)].filter(({ type, to }) => kept.has(type) && to <= bytes.length);
  refuseBomb(
    chunks.filter(({ type }) => type === 'IDAT').map(({ from, to }) => bytes.subarray(from + 8, to - 4)),
    head,
  );
  const decoded = decodePng(
    joined([bytes.subarray(0, 8), ...chunks.map(({ from, to }) => bytes.subarray(from, to))]),
    { checkCrc: true },
  );
  const { width, height, channels, depth, palette } = decoded;
  if (palette) {
    const data = convertIndexedToRgb({ ...decoded, palette });
    return { width, height, rgb: onWhite(data, palette[0]?.length ?? 3, 255, width * height) };
  }
  // Source: PNG, third edition, 11.2.1: colour type 3, whose pixels are places in a palette.
  if (bytes[25] === 3) throw new Unread('its pixels are numbers of a palette that it does not hold');
  const clear = decoded.transparency;
  const data = depth < 8 ? spreadBits(decoded.data, width, height, depth) : decoded.data;
  const picture = onWhite(data, channels, depth === 16 ? 65_535 : 255, width * height);
  if (clear && clear.length > 0) clearColour(picture, data, channels, clear, depth);
  return { width, height, rgb: picture };
}

/** Grey levels of one, two or four bits, packed in rows, as bytes. */
function spreadBits(packed: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const grey = new Uint8Array(width * height);
  const row = Math.ceil((width * depth) / 8);
  const most = 2 ** depth - 1;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const bit = x * depth;
      const byte = packed[y * row + (bit >> 3)] ?? 0;
      grey[y * width + x] = (255 * ((byte >> (8 - depth - (bit & 7))) & most)) / most;
    }
  return grey;
}

/** The one colour that a PNG without alpha may name as see-through. */
function clearColour(
  rgb: Uint8Array,
  data: ArrayLike<number>,
  channels: number,
  clear: ArrayLike<number>,
  depth: number,
): void {
  const scale = depth < 8 ? 255 / (2 ** depth - 1) : 1;
  for (let i = 0; i < rgb.length / 3; i++) {
    let isClear = true;
    for (let k = 0; k < channels; k++)
      isClear &&= data[i * channels + k] === Math.floor((clear[k] ?? -1) * scale);
    if (isClear) rgb.fill(255, 3 * i, 3 * i + 3);
  }
}

/** Grey or coloured pixels, with or without alpha, as red, green and blue on white. */
function onWhite(data: ArrayLike<number>, channels: number, most: number, count: number): Uint8Array {
  const rgb = new Uint8Array(3 * count);
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  const alpha = channels % 2 === 0 ? channels - 1 : -1;
  const scale = 255 / most;
  for (let i = 0; i < count; i++) {
    const at = i * channels;
    const share = alpha < 0 ? 1 : (data[at + alpha] ?? most) / most;
    const ground = 255 * (1 - share) + 0.5;
    rgb[3 * i] = ground + share * scale * (data[at] ?? 0);
    rgb[3 * i + 1] = ground + share * scale * (data[at + green] ?? 0);
    rgb[3 * i + 2] = ground + share * scale * (data[at + blue] ?? 0);
  }
  return rgb;
}

/** Bytes unpacked at a time: each makes no more than about a thousand. */
const slice = 1 << 14;

/** @throws Unread where packed rows unpack to far more than the picture has room for: 8 bytes a pixel and one a row, twice for interlacing. */
function refuseBomb(packed: readonly Uint8Array[], { width, height }: PictureHead): void {
  const most = 2 * (8 * width * height + height) + 1024;
  let unpacked = 0;
  const meter = new Unzlib((chunk) => {
    unpacked += chunk.length;
    if (unpacked > most) throw new Unread('it unpacks to more than its size says');
  });
  for (const part of packed)
    for (let at = 0; at < part.length; at += slice) meter.push(part.subarray(at, at + slice));
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
