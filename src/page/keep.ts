// Keeping the bench, its list and its colours in the browser, so that a reload or a crash loses nothing. Nothing leaves the machine.
import type { Bench } from './model/bench.ts';
import { isColours } from './model/colours.ts';
import type { GivenList } from './model/given-list.ts';
import type { Held } from './model/held.ts';

const database = 'seamwright';
const store = 'bench';
const keys = { bench: 'last', list: 'list', colours: 'colours' } as const satisfies Record<
  keyof Held,
  string
>;
/** Under which stands a number that is another whenever anything is kept. */
const markKey = 'mark';

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => void request.result.createObjectStore(store);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('blocked'));
  });
}

/** Asks for what stands under a key. */
type Read = (key: string, take: (value: unknown) => void) => void;

const parts = ['bench', 'list', 'colours'] as const;

/**
 * How something is kept. `asked`: unless another tab has kept something since. `over`: in place of what that was. `at-once`: when the page
 * goes, and there is no time left to look for that.
 */
type Manner = 'asked' | 'over' | 'at-once';

/** What is kept, as one tab sees it: another tab may keep something else meanwhile, and neither is to write over the other unasked. */
export class Keeper {
  /** Held open: a page that goes has no time left to open it. */
  #base: IDBDatabase | undefined;
  /** The mark of what this tab took or kept last. */
  #seen: unknown;
  /** What it kept last, part by part. */
  #last: Partial<Held> = {};

  /** What is kept, to go on from; without what is of another make. */
  async take(): Promise<Partial<Held>> {
    const values: Partial<Record<keyof Held, unknown>> = {};
    await this.#within('readonly', (_, read) => {
      for (const part of parts)
        read(keys[part], (value) => {
          values[part] = value;
        });
      read(markKey, (mark) => {
        this.#seen = mark;
      });
    });
    const { bench, list, colours } = values;
    this.#last = {
      ...(isBench(bench) ? { bench } : {}),
      ...(isList(list) ? { list } : {}),
      ...(isColours(colours) ? { colours } : {}),
    };
    return this.#last;
  }

  /** Whether another tab has kept something since. */
  async isOvertaken(): Promise<boolean> {
    let mark: unknown;
    await this.#within('readonly', (_, read) => {
      read(markKey, (value) => {
        mark = value;
      });
    });
    return this.#isOthers(mark);
  }

  /** Keeps what was changed, or all where nothing is kept any more; false where that is another tab's to keep. */
  async keep(now: Held, manner: Manner = 'asked'): Promise<boolean> {
    const before = this.#seen;
    let isKept = false;
    const put = (held: IDBObjectStore, isAll: boolean) => {
      for (const part of parts) if (isAll || now[part] !== this.#last[part]) held.put(now[part], keys[part]);
      this.#seen = Math.random();
      held.put(this.#seen, markKey);
      isKept = true;
    };
    try {
      await this.#within('readwrite', (held, read) => {
        if (manner === 'asked')
          read(markKey, (mark) => this.#isOthers(mark) || put(held, mark === undefined));
        else put(held, manner === 'over');
        if (manner === 'at-once') held.transaction.commit();
      });
    } catch (fault) {
      this.#seen = before;
      throw fault;
    }
    if (isKept) this.#last = now;
    return isKept;
  }

  #isOthers(mark: unknown): boolean {
    return mark !== undefined && mark !== this.#seen;
  }

  /** One transaction, done whole or not at all. @throws the browser's error where it keeps nothing, or is full. */
  async #within(mode: IDBTransactionMode, work: (held: IDBObjectStore, read: Read) => void): Promise<void> {
    const base = this.#base ?? (await this.#opened());
    await new Promise<void>((resolve, reject) => {
      const transaction = base.transaction(store, mode);
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error);
      transaction.onerror = () => reject(transaction.error);
      const held = transaction.objectStore(store);
      // What throws on the way, in an answer of the browser's too, undoes all of it, and is what is told.
      const attempt = (step: () => void) => {
        try {
          step();
        } catch (fault) {
          reject(fault);
          transaction.abort();
        }
      };
      const read: Read = (key, take) => {
        const request: IDBRequest<unknown> = held.get(key);
        request.onsuccess = () => attempt(() => take(request.result));
      };
      attempt(() => work(held, read));
    });
  }

  async #opened(): Promise<IDBDatabase> {
    const base = await opened();
    const letGo = () => {
      base.close();
      this.#base = undefined;
    };
    // Cleared from another tab, or by the browser: what is changed next opens it anew.
    base.onversionchange = letGo;
    base.onclose = letGo;
    this.#base = base;
    return base;
  }
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
