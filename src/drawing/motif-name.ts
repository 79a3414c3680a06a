// The names of motifs: stems of their own files, and of their layers on a wrap. A pattern's layers are named by colours.

/** Kinds of things that are laid once. */
export type MotifKind = 'item' | 'lettering';

export const motifName = (kind: MotifKind, index: number): string => `${kind}-${index + 1}`;

/** Whether a layer is one of a motif. */
export const isMotifLayer = (layer: string): boolean => /^(?:item|lettering)-\d+(?: |$)/.test(layer);

/** Whether a layer is one of the motif of this name. */
export const isLayerOf = (layer: string, name: string): boolean =>
  layer === name || layer.startsWith(`${name} `);
