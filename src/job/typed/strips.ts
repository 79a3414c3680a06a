// Where cover strips lie on a pattern.

/** Cover strips on a pattern, of a width in mm: up the wall at turns, level at heights along the wall. */
export interface Strips {
  readonly width: number;
  readonly turns: readonly number[];
  readonly along: readonly number[];
}

/** As a job asks for them, over borders that do not meet: their places are worked out where its way is one that has them. */
export type AskedStrips = Partial<Strips> & Pick<Strips, 'width'>;
