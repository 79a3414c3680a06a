// A progressive JPEG of many scans that say nothing: a few bytes each, and every one of them is a walk over the whole picture.

/** A marker with the length of what follows. Source: ITU-T T.81, B.1.1.4. */
function segment(marker: number, data: readonly number[]): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(data.length + 2, 2);
  return Buffer.concat([head, Buffer.from(data)]);
}

/**
 * Grey, `side` by `side`, progressive, so many scans of the higher frequencies. Each is runs of blocks that end at once: one code of one bit,
 * then 14 bits of how many. Source: ITU-T T.81, B.2.2 (frame), B.2.3 (scan), B.2.4 (tables), G.1.2.2 (EOBn).
 */
export function manyScans(side: number, scans: number): Buffer {
  const [high, low] = [side >> 8, side & 0xff];
  const blocks = Math.ceil(side / 8) ** 2;
  const runs = Math.ceil(blocks / 32_767);
  const bits = `${'0'}${'1'.repeat(14)}`.repeat(runs).replace(/$/, '1'.repeat(7));
  const bytes = (bits.match(/.{8}/g) ?? []).flatMap((byte) => {
    const value = Number.parseInt(byte, 2);
    return value === 0xff ? [0xff, 0] : [value];
  });
  const scan = Buffer.concat([segment(0xda, [1, 1, 0x00, 1, 63, 0]), Buffer.from(bytes)]);
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    segment(0xdb, [0, ...Array.from({ length: 64 }, () => 1)]),
    segment(0xc2, [8, high, low, high, low, 1, 1, 0x11, 0]),
    segment(0xc4, [0x10, 1, ...Array.from({ length: 15 }, () => 0), 0xe0]),
    ...Array.from({ length: scans }, () => scan),
    Buffer.from([0xff, 0xd9]),
  ]);
}
