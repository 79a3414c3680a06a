// Sizes of paper that printers take.

export interface Paper {
  readonly name: string;
  /** The short side, mm. */
  readonly across: number;
  /** The long side, mm. */
  readonly up: number;
}

/** ISO 216 A sizes, and the ANSI/ASME Y14.1 sizes A and B as 8.5 x 11 in and 11 x 17 in; all from memory. */
export const papers: readonly Paper[] = [
  { name: 'a4', across: 210, up: 297 },
  { name: 'a3', across: 297, up: 420 },
  { name: 'letter', across: 8.5 * 25.4, up: 11 * 25.4 },
  { name: 'tabloid', across: 11 * 25.4, up: 17 * 25.4 },
];
