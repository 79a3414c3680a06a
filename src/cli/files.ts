// Files: read with words for what goes wrong, written so that a run that dies leaves the old ones whole.
import { randomBytes } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Refused, stop } from '../finding.ts';
import type { FileContent } from '../job/deliverables.ts';

/** Largest file read, bytes. */
const mostBytes = 50_000_000;

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; check the path',
  EISDIR: 'is a folder, not a file; name the file in it',
  EACCES: 'may not be read; check its permissions',
};

/** The file and key that named a file, if one did. */
export interface NamedBy {
  readonly file?: string;
  readonly key: string;
}

/** The bytes of a file. `named` is how the maker named it. @throws Refused in words where it can't be read. */
export async function readBytes(path: string, named: string, by?: NamedBy): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > mostBytes)
      throw new Refused([
        stop(
          'too-large',
          { file: named },
          `is ${(size / 1e6).toFixed(0)} MB; up to ${mostBytes / 1e6} MB is read`,
        ),
      ]);
    return await readFile(path);
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    const says = by ? `"${named}": ${reasonOf(fault)}` : reasonOf(fault);
    throw new Refused([stop('unreadable', by ?? { file: named }, says)]);
  }
}

/** The text of a file, without a byte order mark. @throws Refused in words where it can't be read. */
export const readText = async (path: string, named: string, by?: NamedBy): Promise<string> =>
  new TextDecoder().decode(await readBytes(path, named, by));

const reasonOf = (fault: unknown): string => {
  const code = (fault as { code?: string }).code ?? '';
  return reasons[code] ?? `can't be read (${code || String(fault)})`;
};

async function refuseFolder(path: string): Promise<void> {
  const there = await stat(path).catch(() => undefined);
  if (!there?.isDirectory()) return;
  const says =
    'is a folder, and a file of this name is to be written; move it away, or give another folder with --out';
  throw new Refused([stop('unwritable', { file: path }, says)]);
}

/** Files written to a folder's own staging place, then moved into the folder one by one. */
export class Delivery {
  readonly #folder: string;
  readonly #staging: string;
  readonly #names: string[] = [];

  constructor(folder: string) {
    this.#folder = folder;
    this.#staging = join(folder, `.seamwright-${randomBytes(6).toString('hex')}`);
  }

  /** Write one file to the staging place. @throws Refused where the folder can't be written. */
  async stage(name: string, content: FileContent): Promise<void> {
    await this.#trying(async () => {
      await mkdir(this.#staging, { recursive: true });
      await writeFile(join(this.#staging, name), content);
    });
    this.#names.push(name);
  }

  /** The bytes as they now stand on the disk. */
  readBack(name: string): Promise<string> {
    return readFile(join(this.#staging, name), 'utf8');
  }

  /** Move every staged file into the folder: all of them, or none where a folder stands in the way of one. */
  async finish(): Promise<void> {
    await this.#trying(async () => {
      for (const name of this.#names) await refuseFolder(join(this.#folder, name));
      for (const name of this.#names) await rename(join(this.#staging, name), join(this.#folder, name));
      await this.discard();
    });
  }

  /** Take the staging place away, if it was ever made; that it can't be is not worth a word of its own. */
  async discard(): Promise<void> {
    await rm(this.#staging, { recursive: true, force: true }).catch(() => undefined);
  }

  async #trying(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (fault) {
      await this.discard();
      if (fault instanceof Refused) throw fault;
      const code = (fault as { code?: string }).code ?? String(fault);
      throw new Refused([
        stop(
          'unwritable',
          { file: this.#folder },
          `can't be written to (${code}); give another folder with --out`,
        ),
      ]);
    }
  }
}
