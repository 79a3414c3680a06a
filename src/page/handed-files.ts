// The files that a thread was handed: each once, and let go again when it is long off the bench and there are many.

/** Bytes of files off the bench that a thread keeps, for undo to come back to: as much as the largest file that is read. */
export const roomForPast = 50_000_000;

/** What the thread is told before a question: what to keep, and what to let go, by mark. */
export interface Handing {
  readonly marks: Readonly<Record<string, number>>;
  readonly keep: readonly { readonly mark: number; readonly bytes: Uint8Array }[];
  readonly letGo: readonly number[];
}

export class HandedFiles {
  /** The marks of what the thread has, by its bytes; what was asked for last comes last. */
  readonly #marks = new Map<Uint8Array, number>();
  readonly #room: number;
  #last = 0;

  constructor(room = roomForPast) {
    this.#room = room;
  }

  /** For a question about these files. A mark is never given again to other bytes. */
  hand(files: Readonly<Record<string, Uint8Array>>): Handing {
    const keep: { mark: number; bytes: Uint8Array }[] = [];
    const marks: Record<string, number> = {};
    for (const [name, bytes] of Object.entries(files)) {
      const known = this.#marks.get(bytes);
      const mark = known ?? ++this.#last;
      if (known === undefined) keep.push({ mark, bytes });
      this.#marks.delete(bytes);
      this.#marks.set(bytes, mark);
      marks[name] = mark;
    }
    return { marks, keep, letGo: this.#letGo(new Set(Object.values(marks))) };
  }

  /** Lets go of what is off the bench, what was asked for longest ago first, until there is room. */
  #letGo(onBench: ReadonlySet<number>): number[] {
    const past = [...this.#marks].filter(([, mark]) => !onBench.has(mark));
    let size = past.reduce((sum, [bytes]) => sum + bytes.length, 0);
    const gone: number[] = [];
    for (const [bytes, mark] of past) {
      if (size <= this.#room) break;
      this.#marks.delete(bytes);
      size -= bytes.length;
      gone.push(mark);
    }
    return gone;
  }
}
