// Adapter: fflate (MIT) packs and unpacks bytes. One library everywhere, so that files are the same bytes in Node and in a browser,
// whose own packers differ.
import { unzipSync, unzlibSync, Zip, ZipDeflate, zipSync, zlibSync } from 'fflate';

/** How hard pictures and pages are packed, of 9: the library's own 6 takes up to twice as long for files a fiftieth smaller. */
export const packing = { level: 4 } as const;

/** Bytes packed as a PDF takes them (RFC 1950). */
export const packed = (bytes: Uint8Array): Uint8Array => zlibSync(bytes, packing);

/** The one date of all files in an archive: same files, same bytes. The format knows none before 1980. */
const noDate = new Date(1980, 0, 1);

/** A zip archive of files by name; names may have folders in them. */
export const zipped = (files: Readonly<Record<string, Uint8Array>>): Uint8Array =>
  zipSync({ ...files }, { mtime: noDate });

/** A zip archive that is written as files come, so that it never stands in memory whole. Same files in the same order, same bytes. */
export class ZipWriter {
  readonly #zip: Zip;

  /** `take` is given the archive's bytes, part by part. */
  constructor(take: (part: Uint8Array) => void) {
    this.#zip = new Zip((fault, part) => {
      if (fault) throw fault;
      take(part);
    });
  }

  add(name: string, bytes: Uint8Array): void {
    const file = new ZipDeflate(name);
    file.mtime = noDate;
    this.#zip.add(file);
    file.push(bytes, true);
  }

  end(): void {
    this.#zip.end();
  }
}

/**
 * The files in a zip archive that `isTaken` takes, by name and size, bytes; nothing else is unpacked.
 * @throws Error where it is not a zip archive.
 */
export const unzipped = (
  archive: Uint8Array,
  isTaken: (name: string, size: number) => boolean,
): Readonly<Record<string, Uint8Array>> =>
  unzipSync(archive, { filter: ({ name, originalSize }) => isTaken(name, originalSize) });

/** Packed bytes (RFC 1950) as they were, `size` of them at the most. @throws Error where they can't be unpacked. */
export const inflated = (bytes: Uint8Array, size: number): Uint8Array =>
  unzlibSync(bytes, { out: new Uint8Array(size) });
