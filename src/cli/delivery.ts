// Files delivered to a folder: all of a run's or none, whatever happens to the run, and one run at a time.
//
// A run writes into a staging folder of its own. Once all is there it notes that (`ready`), and only then moves the files
// into place. A run that died before that left the old files; one that died after is finished by the next run.
import { closeSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { access, mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { Refused, stop } from '../finding.ts';
import type { FileContent } from '../job/deliverables.ts';
import { madeFolder } from './made-folder.ts';
import {
  busy,
  codeOf,
  files,
  isOwn,
  making,
  moveReady,
  type Owner,
  owner,
  ready,
  recover,
  refuseFolder,
  stagingName,
} from './staging.ts';

/** Ended by the maker, as shells tell it: 128 and the number of the signal. */
const signals = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const;

/** What a run does, beside its own end, where the maker ends it: puts right what is not this delivery's, and gives a line that says how it stands. */
export type OnStop = () => Promise<string>;

/** One delivery: `stage` every file, then `finish`; `discard` whatever happened. */
export class Delivery {
  readonly #folder: string;
  readonly #onStop: OnStop;
  readonly #names: string[] = [];
  #isOpen = false;
  /** Whether its files are in their places. */
  #isMoved = false;
  /** Whether the maker has ended it: what fails from then on does so for that. */
  #isStopping = false;

  constructor(folder: string, onStop: OnStop = async () => this.#stand()) {
    this.#folder = folder;
    this.#onStop = onStop;
  }

  get #staging(): string {
    return join(this.#folder, stagingName);
  }

  get #making(): string {
    return join(this.#folder, `${making}${process.pid}`);
  }

  /** Take the folder for this run alone, before there is anything to write. @throws Refused where another run has it. */
  async hold(): Promise<void> {
    await this.#trying(async () => {
      if (!this.#isOpen) await this.#open();
    });
  }

  /** Write one file to the staging place; `name` may lie in a folder. @throws Refused where it can't be written. */
  async stage(name: string, content: FileContent): Promise<void> {
    await this.#trying(async () => {
      if (!this.#isOpen) await this.#open();
      const path = join(this.#staging, files, name);
      // Not made anew where it was taken away in the middle: what was written before would be missing from it.
      await access(join(this.#staging, files));
      if (name.includes('/')) await mkdir(dirname(path), { recursive: true });
      await writeFile(path, content);
    });
    this.#names.push(name);
  }

  /** Stage a file that `write` gives part by part, so that it never stands in memory whole. @throws Refused as `stage` does. */
  async stageParts(
    name: string,
    write: (append: (part: Uint8Array) => void) => Promise<void>,
  ): Promise<void> {
    await this.stage(name, '');
    await this.#trying(async () => {
      const file = openSync(join(this.#staging, files, name), 'w');
      try {
        await write((part) => void writeSync(file, part));
      } finally {
        closeSync(file);
      }
    });
  }

  /** A staged file as it now stands on the disk. */
  async readBack(name: string): Promise<string> {
    return this.#trying(() => readFile(join(this.#staging, files, name), 'utf8'));
  }

  /** Move every staged file into the folder: all of them, or none where a folder stands in the way of one. */
  async finish(): Promise<void> {
    await this.#trying(async () => {
      for (const name of this.#names) refuseFolder(join(this.#folder, name));
      const list = join(this.#staging, ready);
      await writeFile(`${list}.part`, JSON.stringify(this.#names));
      // From here on there is no way back, and nothing of this run comes between: a signal waits. What can't be moved now stays, for the next run to move.
      renameSync(`${list}.part`, list);
      this.#isOpen = false;
      try {
        moveReady(this.#staging, this.#folder);
        this.#isMoved = true;
        await this.#clear();
      } finally {
        this.#letGo();
      }
    });
  }

  /** Take the staging place away, if it was ever made; that it can't be is not worth a word of its own. */
  async discard(): Promise<void> {
    if (!this.#isOpen) return;
    this.#isOpen = false;
    await this.#clear();
    this.#letGo();
  }

  #letGo(): void {
    for (const signal of signalNames) process.off(signal, this.#stopped);
  }

  async #clear(): Promise<void> {
    await rm(this.#staging, { recursive: true, force: true }).catch(() => undefined);
  }

  async #open(): Promise<void> {
    for (const signal of signalNames) process.once(signal, this.#stopped);
    try {
      await madeFolder(this.#folder);
      await recover(this.#folder);
      await this.#take();
    } catch (fault) {
      this.#letGo();
      throw fault;
    }
  }

  async #take(): Promise<void> {
    const made = this.#making;
    const self: Owner = { pid: process.pid, host: hostname() };
    try {
      await mkdir(join(made, files), { recursive: true });
      await writeFile(join(made, owner), JSON.stringify(self));
      // Fails where one is there that holds anything, and each holds its owner.
      await rename(made, this.#staging);
    } catch (fault) {
      await rm(made, { recursive: true, force: true });
      throw ['ENOTEMPTY', 'EEXIST', 'EPERM'].includes(codeOf(fault)) ? busy(this.#folder) : fault;
    }
    this.#isOpen = true;
  }

  readonly #stopped = async (signal: keyof typeof signals): Promise<void> => {
    this.#isStopping = true;
    takeAway(this.#making);
    // Where it was to become ours just now another run's may stand.
    if (this.#isOpen || isOwn(this.#staging)) takeAway(this.#staging);
    process.stderr.write(`${await this.#onStop()}\n`);
    process.exit(signals[signal]);
  };

  #stand(): string {
    return this.#isMoved
      ? `stopped once all was written to ${this.#folder}`
      : `stopped: ${this.#folder} is as it was`;
  }

  async #trying<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (fault) {
      if (this.#isStopping) return await new Promise<never>(() => undefined);
      await this.discard();
      if (fault instanceof Refused) throw fault;
      const code = codeOf(fault);
      const says = `can't be written to (${code})${reasons[code] ?? ''}; give another folder with --out`;
      throw new Refused([stop('unwritable', { file: this.#folder }, says)]);
    }
  }
}

/** What the system's commonest codes mean, behind them. */
const reasons: Readonly<Record<string, string>> = {
  EEXIST: ': a file has its name, or that of a folder above it',
  ENOTDIR: ': a file has its name, or that of a folder above it',
  ENOSPC: ': the disk is full',
  EDQUOT: ': the disk is full',
  EACCES: ': it may only be read',
  EROFS: ': it may only be read',
  EMFILE: ': too many files are open',
  ENAMETOOLONG: ': its path is too long',
};

/** How often what stands in the way of taking a folder away is waited for, and how long, ms. */
const waits = { times: 5, each: 20 };

/** Take a folder away, as far as that can be done at once: what is left the next run takes away. */
function takeAway(folder: string): void {
  const still = new Int32Array(new SharedArrayBuffer(4));
  for (let i = 0; i < waits.times; i++)
    try {
      rmSync(folder, { recursive: true, force: true });
      return;
    } catch {
      // A file on its way into it came in between: node's own retries do not look for it.
      Atomics.wait(still, 0, 0, waits.each);
    }
}

const signalNames = Object.keys(signals) as readonly (keyof typeof signals)[];

/** Stage files by `work`, then move them into the folder together; whatever goes wrong, nothing is left behind. */
export async function delivered<T>(folder: string, work: (delivery: Delivery) => Promise<T>): Promise<T> {
  const delivery = new Delivery(folder);
  try {
    const done = await work(delivery);
    await delivery.finish();
    return done;
  } finally {
    await delivery.discard();
  }
}
