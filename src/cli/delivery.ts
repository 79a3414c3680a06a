// Files delivered to a folder: all of a run's or none, whatever happens to the run, and one run at a time.
//
// A run writes into a staging folder of its own. Once all is there it notes that (`ready`), and only then moves the files
// into place. A run that died before that left the old files; one that died after is finished by the next run.
import {
  closeSync,
  existsSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { access, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, isAbsolute, join, normalize } from 'node:path';
import { Refused, stop } from '../finding.ts';
import type { FileContent } from '../job/deliverables.ts';

const stagingName = '.seamwright-writing';
/** In the staging folder: who writes there, the files to be, and the list of them once they are whole. */
const owner = 'owner.json';
const files = 'files';
const ready = 'ready.json';

/** A staging folder before its owner is noted in it, and one that a dead run left; numbered by the process at work on it. */
const making = '.seamwright-making-';
const left = '.seamwright-left-';

/** Ended by the maker, as shells tell it: 128 and the number of the signal. */
const signals = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const;

interface Owner {
  readonly pid: number;
  readonly host: string;
}

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
    await mkdir(this.#folder, { recursive: true });
    await recover(this.#folder);
    const made = join(this.#folder, `${making}${process.pid}`);
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
    for (const signal of signalNames) process.once(signal, this.#stopped);
  }

  readonly #stopped = async (signal: keyof typeof signals): Promise<void> => {
    this.#isStopping = true;
    try {
      // A file on its way into it may come in between.
      rmSync(this.#staging, { recursive: true, force: true, maxRetries: 5, retryDelay: 20 });
    } catch {
      // The next run takes it away.
    }
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
      const says = `can't be written to (${codeOf(fault)}); give another folder with --out`;
      throw new Refused([stop('unwritable', { file: this.#folder }, says)]);
    }
  }
}

const signalNames = Object.keys(signals) as readonly (keyof typeof signals)[];

const codeOf = (fault: unknown): string => (fault as { code?: string }).code ?? String(fault);

/**
 * What a run that died left in a folder is put right: its files are moved into place if all of them were whole, and
 * taken away if not. @throws Refused where another run is writing there now, or where it can't be done.
 */
export async function recover(folder: string): Promise<void> {
  try {
    await putRight(folder);
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    const says = `what a run that was stopped left here can't be put right (${codeOf(fault)}); see to it that the folder can be written to, and run again`;
    throw new Refused([stop('unwritable', { file: folder }, says)]);
  }
}

async function putRight(folder: string): Promise<void> {
  await finishLeft(folder);
  const staging = join(folder, stagingName);
  if (!isThere(staging)) return;
  if (await isAlive(staging)) throw busy(folder);
  // Of two runs that find it, the one whose rename succeeds has it.
  const own = join(folder, `${left}${process.pid}`);
  try {
    await rename(staging, own);
  } catch (fault) {
    if (codeOf(fault) === 'ENOENT') return;
    throw fault;
  }
  // What was looked at may have been put right, and another run begun, before this one had it.
  if (await isAlive(own)) {
    await rename(own, staging);
    throw busy(folder);
  }
  await finishLeft(folder);
}

/** What dead runs left under a name of its own. */
async function finishLeft(folder: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const at = [making, left].find((start) => name.startsWith(start));
    if (at === undefined || isOthers(Number(name.slice(at.length)))) continue;
    const path = join(folder, name);
    moveReady(path, folder);
    await rm(path, { recursive: true, force: true });
  }
}

/** Whether there is anything of this name, be it a link to nothing. */
const isThere = (path: string): boolean => existsSync(path) || isLink(path);

/**
 * Move the files that are listed as whole; those that were moved before are not there any more. No run of ours makes links: through
 * one of a folder that was given on, files from anywhere would be moved, or to anywhere.
 */
function moveReady(staging: string, folder: string): void {
  if (isLink(staging) || isLink(join(staging, files))) return;
  const waiting = readyIn(staging).filter(
    (name) =>
      existsSync(join(staging, files, name)) &&
      !isThroughLink(join(staging, files), name) &&
      !isThroughLink(folder, name),
  );
  for (const name of waiting) refuseFolder(join(folder, name));
  for (const name of waiting) {
    const to = join(folder, name);
    if (name.includes('/')) mkdirSync(dirname(to), { recursive: true });
    renameSync(join(staging, files, name), to);
  }
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    // Nothing is there, or on the way to it.
    return false;
  }
}

/** Whether a folder on the way from a base to a file is a link. */
const isThroughLink = (base: string, name: string): boolean =>
  name.split('/').some((_, i, parts) => i > 0 && isLink(join(base, ...parts.slice(0, i))));

/** What is listed as whole; nothing where there is no list, or one that no run of ours wrote, which could name files anywhere. */
function readyIn(staging: string): readonly string[] {
  const list = join(staging, ready);
  const names = existsSync(list) ? parsed(readFileSync(list, 'utf8')) : undefined;
  return Array.isArray(names) && names.every(isWithin) ? names : [];
}

const isWithin = (name: unknown): name is string =>
  typeof name === 'string' && !isAbsolute(name) && !/^\.\.(?:[/\\]|$)/.test(normalize(name));

/** What a text tells as JSON; undefined where it is none, as after the current failed. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function isAlive(staging: string): Promise<boolean> {
  const text = await readFile(join(staging, owner), 'utf8').catch(() => '');
  const { pid, host } = (parsed(text) ?? {}) as Partial<Owner>;
  // A run notes itself before anything else: one that did not is none, or its note was lost.
  if (typeof pid !== 'number' || typeof host !== 'string') return false;
  // Of another machine it can't be told: it is taken as alive.
  return host !== hostname() || isOthers(pid);
}

/** Whether another process runs under a number; one whose number is ours now has died. */
const isOthers = (pid: number): boolean => pid !== process.pid && isRunning(pid);

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (fault) {
    return codeOf(fault) === 'EPERM';
  }
}

const busy = (folder: string): Refused =>
  new Refused([
    stop(
      'busy',
      { file: folder },
      `another run is writing here; wait for it, or give another folder with --out; if none is, delete ${stagingName} in it`,
    ),
  ]);

function refuseFolder(path: string): void {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  const says =
    'is a folder, and a file of this name is to be written; move it away, or give another folder with --out';
  throw new Refused([stop('unwritable', { file: path }, says)]);
}

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
