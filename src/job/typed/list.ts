// A list of rows, one a vessel.
export interface ListRow {
  /** Line of the file that the row begins at, from 1. */
  readonly line: number;
  /** One a column. */
  readonly cells: readonly string[];
}

/** A row that is left out, and why. */
export interface RefusedRow {
  readonly line: number;
  readonly says: string;
}

export interface List {
  readonly file: string;
  /** Names of the columns, spaces around them taken off. */
  readonly columns: readonly string[];
  /** Rows that say anything. */
  readonly rows: readonly ListRow[];
  /** Rows that have not one cell a column. */
  readonly refused: readonly RefusedRow[];
  /** Whether numbers have a decimal comma: where cells are set apart by semicolons. */
  readonly hasDecimalComma: boolean;
}
