// What we use of bidi-js, whose own types say `default` where the file that Node loads has none.
declare module 'bidi-js' {
  interface EmbeddingLevels {
    /** One a UTF-16 unit of the text; odd ones run to the left. */
    readonly levels: Uint8Array;
  }
  interface Bidi {
    getEmbeddingLevels(text: string, baseDirection?: 'ltr' | 'rtl' | 'auto'): EmbeddingLevels;
  }
  export default function bidiFactory(): Bidi;
}
