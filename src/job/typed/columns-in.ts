// `{column}` in a text.

/** A column's name within braces. */
export const placeholder = /\{([^{}\n]+)\}/g;

/** Columns that a text is to be filled from, as often as it names them. */
export const columnsIn = (typed: string): readonly string[] =>
  [...typed.matchAll(placeholder)].map(([, name = '']) => name.trim());
