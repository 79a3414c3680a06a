// How many patches the colours of a picture fall into: told from its pixels at once, where following their edges would take minutes.

export interface Patches {
  /** Of each colour, by its label: patches of at least so many pixels. */
  readonly large: readonly number[];
  /** Patches of any size, of all colours together. */
  readonly all: number;
}

/**
 * Patches of pixels of one label that hang together by their sides. Source: connected components in two passes by joined sets
 * (A. Rosenfeld and J. Pfaltz, Sequential operations in digital picture processing, J. ACM 13, 1966, from memory).
 */
export function patchesOf(width: number, labels: Uint8Array, colours: number, leastPixels: number): Patches {
  const up = new Int32Array(labels.length);
  const root = (of: number): number => {
    let at = of;
    for (let next = up[at] ?? at; next !== at; next = up[at] ?? at) {
      up[at] = up[next] ?? next;
      at = up[at] ?? at;
    }
    return at;
  };
  for (let i = 0; i < labels.length; i++) {
    up[i] = i;
    if (i % width > 0 && labels[i] === labels[i - 1]) up[i] = root(i - 1);
    if (i >= width && labels[i] === labels[i - width]) {
      const [one, other] = [root(i), root(i - width)];
      up[Math.max(one, other)] = Math.min(one, other);
    }
  }
  const sizes = new Int32Array(labels.length);
  for (let i = 0; i < labels.length; i++) {
    const at = root(i);
    sizes[at] = (sizes[at] ?? 0) + 1;
  }
  const large = Array.from({ length: colours }, () => 0);
  let all = 0;
  sizes.forEach((size, i) => {
    if (size === 0) return;
    all++;
    const label = labels[i] ?? 0;
    if (size >= leastPixels) large[label] = (large[label] ?? 0) + 1;
  });
  return { large, all };
}

/** How many pixels there are, on the mean, to each side of a pixel that is an edge between two labels; Infinity where none is. */
export function pixelsBetweenEdges(width: number, labels: Uint8Array): number {
  let sides = 0;
  for (let i = 0; i < labels.length; i++) {
    if (i % width > 0 && labels[i] !== labels[i - 1]) sides++;
    if (i >= width && labels[i] !== labels[i - width]) sides++;
  }
  return labels.length / sides;
}
