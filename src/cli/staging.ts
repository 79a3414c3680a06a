// What a run writes into before it is done, and what is put right of one that died.
import { existsSync, lstatSync, mkdirSync, readFileSync, renameSync, statSync } from 'node:fs';
import { readdir, readFile, rename, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, isAbsolute, join, normalize } from 'node:path';
import { Refused, stop } from '../finding.ts';

/** The staging folder's name in the folder that is written to. */
export const stagingName = '.seamwright-writing';
/** In the staging folder: who writes there, the files to be, and the list of them once they are whole. */
export const owner = 'owner.json';
export const files = 'files';
export const ready = 'ready.json';

/** A staging folder before its owner is noted in it, and one that a dead run left; numbered by the process at work on it. */
export const making = '.seamwright-making-';
const left = '.seamwright-left-';

/** Who writes there. */
export interface Owner {
  readonly pid: number;
  readonly host: string;
}

export const codeOf = (fault: unknown): string => (fault as { code?: string }).code ?? String(fault);

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
export function moveReady(staging: string, folder: string): void {
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

/** Whether a staging folder is this run's. */
export function isOwn(staging: string): boolean {
  const note = join(staging, owner);
  const { pid, host } = ownerIn(existsSync(note) ? readFileSync(note, 'utf8') : '');
  return pid === process.pid && host === hostname();
}

const ownerIn = (text: string): Partial<Owner> => (parsed(text) ?? {}) as Partial<Owner>;

async function isAlive(staging: string): Promise<boolean> {
  const text = await readFile(join(staging, owner), 'utf8').catch(() => '');
  const { pid, host } = ownerIn(text);
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

export const busy = (folder: string): Refused =>
  new Refused([
    stop(
      'busy',
      { file: folder },
      `another run is writing here; wait for it, or give another folder with --out; if none is, delete ${stagingName} in it`,
    ),
  ]);

export function refuseFolder(path: string): void {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  const says =
    'is a folder, and a file of this name is to be written; move it away, or give another folder with --out';
  throw new Refused([stop('unwritable', { file: path }, says)]);
}
