// Chunks of a PNG with sums that are right, so that what is broken in them is reached.
import { crc32, deflateSync } from 'node:zlib';

export const pngStart = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** A chunk of a PNG, its sum as the format has it. Source: Portable Network Graphics, third edition, W3C, section 5.3. */
export function pngChunk(type: string, data: Uint8Array): Buffer {
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** A grey PNG that says it is so large, with pixels for so many bytes packed in it. */
export function greyPng(side: number, unpacked: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(side, 0);
  head.writeUInt32BE(side, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const pixels = deflateSync(Buffer.alloc(unpacked));
  return Buffer.concat([
    pngStart,
    pngChunk('IHDR', head),
    pngChunk('IDAT', pixels),
    pngChunk('IEND', Buffer.alloc(0)),
  ]);
}
