// What was worked out, kept for the next job that asks for the same: memory stays flat, because little is kept.

/** So many results of a kind are kept: rows of a list go over a few cups, not over hundreds. */
const mostKept = 3;

export class Recall {
  readonly #kinds = new Map<string, Map<string, unknown>>();

  /** The result of `make` for a key of a kind: made once, as long as it is among the last few asked for. */
  of<T>(kind: string, key: string, make: () => T): T {
    const kept = this.#kinds.get(kind) ?? new Map<string, unknown>();
    this.#kinds.set(kind, kept);
    // A kind is only ever asked for by one caller, who makes one type of it.
    const known = kept.has(key) ? (kept.get(key) as T) : make();
    kept.delete(key);
    kept.set(key, known);
    for (const oldest of kept.keys()) if (kept.size > mostKept) kept.delete(oldest);
    return known;
  }
}

/** What depends on `of` alone is worked out once, where there is a memory; on files only by their names. */
export const remembered = <T>(recall: Recall | undefined, kind: string, of: unknown, make: () => T): T =>
  recall ? recall.of(kind, JSON.stringify(of), make) : make();
