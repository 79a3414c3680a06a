// Keeping the bench, its list and its colours in the browser, so that a reload or a crash loses nothing. Nothing leaves the machine.
import type { Bench } from './model/bench.ts';
import { type Colours, isColours } from './model/colours.ts';
import type { GivenList } from './model/given-list.ts';

const database = 'seamwright';
const store = 'bench';
const keys = { bench: 'last', list: 'list', colours: 'colours' } as const;

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => void request.result.createObjectStore(store);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('blocked'));
  });
}

async function within<T>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const base = await opened();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = base.transaction(store, mode);
      const request = work(transaction.objectStore(store));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error);
      transaction.onerror = () => reject(transaction.error);
    });
  } finally {
    base.close();
  }
}

/** The bench as it was left; undefined where none was kept, or what was kept is of another make. */
export async function keptBench(): Promise<Bench | undefined> {
  const value: unknown = await within('readonly', (held) => held.get(keys.bench));
  return isBench(value) ? value : undefined;
}

/** The list as it was left; undefined where none was kept. */
export async function keptList(): Promise<GivenList | undefined> {
  const value: unknown = await within('readonly', (held) => held.get(keys.list));
  return isList(value) ? value : undefined;
}

/** The colours as they were left; undefined where none were kept. */
export async function keptColours(): Promise<Colours | undefined> {
  const value: unknown = await within('readonly', (held) => held.get(keys.colours));
  return isColours(value) ? value : undefined;
}

/** @throws the browser's error where it keeps nothing, or is full. */
export async function keepBench(bench: Bench): Promise<void> {
  await within('readwrite', (held) => held.put(bench, keys.bench));
}

/** @throws as `keepBench`. */
export async function keepList(list: GivenList): Promise<void> {
  await within('readwrite', (held) => held.put(list, keys.list));
}

/** @throws as `keepBench`. */
export async function keepColours(colours: Colours): Promise<void> {
  await within('readwrite', (held) => held.put(colours, keys.colours));
}

function isList(value: unknown): value is GivenList {
  if (typeof value !== 'object' || value === null) return false;
  const { file, text } = value as Partial<Record<keyof GivenList, unknown>>;
  return typeof file === 'string' && typeof text === 'string';
}

function isBench(value: unknown): value is Bench {
  if (typeof value !== 'object' || value === null) return false;
  const { jobFile, blankFile, job, blank, files, units } = value as Partial<Record<keyof Bench, unknown>>;
  const named = typeof jobFile === 'string' && typeof blankFile === 'string';
  const objects = [job, blank, files].every((part) => typeof part === 'object' && part !== null);
  return named && objects && (units === 'mm' || units === 'in');
}

/** Why the browser keeps nothing, and what to do. */
export function keepingFault(fault: unknown): string {
  const name = fault instanceof DOMException ? fault.name : '';
  if (name === 'QuotaExceededError')
    return 'the browser has no room left to keep this job; save it as a file, then free some room';
  return 'the browser keeps nothing here (a private window, or its settings); save the job as a file before you close it';
}
