// Files read, with words for what goes wrong.
import { readFile, stat } from 'node:fs/promises';
import { Refused, stop, type Where } from '../finding.ts';
import { mostTogetherBytes, tooLarge } from '../lengths/file-size.ts';
import { typedText } from '../lengths/typed-text.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; check the path',
  EISDIR: 'is a folder, not a file; name the file in it',
  EACCES: 'may not be read; check its permissions',
  ELOOP: 'is a link that leads to itself; name the file that it was to lead to',
};

/** The file and key that named a file, if one did. */
export interface NamedBy {
  readonly file?: string;
  readonly key: string;
}

/** The bytes of a file. `named` is how the maker named it. @throws Refused in words where it can't be read. */
export async function readBytes(path: string, named: string, by?: NamedBy): Promise<Uint8Array> {
  try {
    const there = await stat(path);
    if (!there.isFile() && !there.isDirectory())
      throw new Refused([
        stop(
          'no-file',
          by ?? { file: named },
          `${by ? `"${named}": ` : ''}is a device or a pipe, which may never end; save what it gives as a file, and name that`,
        ),
      ]);
    const large = tooLarge(there.size);
    if (large) throw new Refused([stop('too-large', { file: named }, large)]);
    return await readFile(path);
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    const says = by ? `"${named}": ${reasonOf(fault)}` : reasonOf(fault);
    throw new Refused([stop('unreadable', by ?? { file: named }, says)]);
  }
}

/** The text of a file, without a byte order mark. @throws Refused in words where it can't be read. */
export const readText = async (path: string, named: string, by?: NamedBy): Promise<string> =>
  typedText(await readBytes(path, named, by), named);

const reasonOf = (fault: unknown): string => {
  const code = (fault as { code?: string }).code ?? '';
  return reasons[code] ?? `can't be read (${code || String(fault)})`;
};

/** Counts what files that are in use at once hold together. */
export class FilesTogether {
  #bytes = 0;

  /** The bytes of one more. @throws Refused in words where it can't be read, or they are too large together. */
  async read(read: () => Promise<Uint8Array>, where: Where): Promise<Uint8Array> {
    const bytes = await read();
    this.#bytes += bytes.length;
    if (this.#bytes <= mostTogetherBytes) return bytes;
    const says = `with the files before it comes to ${Math.ceil(this.#bytes / 1e6)} MB; up to ${mostTogetherBytes / 1e6} MB are read together, so name fewer, or simpler ones`;
    throw new Refused([stop('too-large', where, says)]);
  }
}

/** Files of no more than so many bytes together are kept: a list may name another picture in every row. */
const mostKeptBytes = 64_000_000;

/** Files that a job names, each read once, as long as there is room for it among those last asked for. */
export class KeptFiles {
  readonly #bytes = new Map<string, Uint8Array>();
  readonly #beside: (file: string) => string;
  readonly #jobFile: string;
  readonly #most: number;
  #size = 0;

  /** `beside`: the path of a file that the job names; `most`: bytes kept together, but for the last file. */
  constructor(beside: (file: string) => string, jobFile: string, most = mostKeptBytes) {
    this.#beside = beside;
    this.#jobFile = jobFile;
    this.#most = most;
  }

  /** @throws Refused in words that name the job's key, where it can't be read. */
  async bytes(file: string, key: string): Promise<Uint8Array> {
    const known = this.#bytes.get(file);
    const bytes = known ?? (await readBytes(this.#beside(file), file, { file: this.#jobFile, key }));
    this.#drop(file);
    for (const oldest of this.#bytes.keys()) {
      if (this.#size + bytes.length <= this.#most) break;
      this.#drop(oldest);
    }
    this.#bytes.set(file, bytes);
    this.#size += bytes.length;
    return bytes;
  }

  #drop(file: string): void {
    this.#size -= this.#bytes.get(file)?.length ?? 0;
    this.#bytes.delete(file);
  }

  /** The same as text, without a byte order mark. */
  async text(file: string, key: string): Promise<string> {
    return typedText(await this.bytes(file, key), file);
  }
}
