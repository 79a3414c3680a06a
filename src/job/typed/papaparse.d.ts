// What we use of papaparse. Its published types bring Node's globals with them, and the core is to have none.
declare module 'papaparse' {
  export interface ParseFault {
    readonly type: string;
    readonly code: string;
    readonly message: string;
  }
  export interface ParseStep {
    /** The cells of one row. */
    readonly data: readonly string[];
    readonly errors: readonly ParseFault[];
    /** Where in the text the next row begins. */
    readonly meta: { readonly cursor: number };
  }
  export interface ParseConfig {
    readonly delimiter: string;
    readonly newline: '\n';
    readonly fastMode: false;
    readonly step: (row: ParseStep, parser: { abort(): void }) => void;
  }
  const papa: { readonly parse: (text: string, config: ParseConfig) => void };
  export default papa;
}
