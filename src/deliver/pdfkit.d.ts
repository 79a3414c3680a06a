// What we use of pdfkit. Its published types bring Node's globals with them, and the core is to have none.
declare module 'pdfkit' {
  export default class PDFDocument {
    constructor(options: {
      readonly autoFirstPage: boolean;
      readonly compress: boolean;
      readonly font: null;
      readonly info: Readonly<Record<string, string | Date>>;
    });
    /** The page that is being drawn, and what was drawn on it so far. */
    readonly page: {
      readonly content: { buffer: readonly Uint8Array[]; readonly data: { Filter?: string } };
    };
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    on(event: 'data', take: (chunk: Uint8Array) => void): this;
    on(event: 'end', take: () => void): this;
    on(event: 'error', take: (fault: Error) => void): this;
    save(): this;
    restore(): this;
    scale(x: number, y: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    clip(): this;
    lineWidth(width: number): this;
    lineCap(cap: 'round'): this;
    dash(pattern: readonly number[], options: { readonly phase: number }): this;
    undash(): this;
    lineJoin(join: 'round'): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    strokeColor(colour: string): this;
    fillColor(colour: string, opacity: number): this;
    stroke(): this;
    fill(rule: 'even-odd'): this;
    image(
      png: Uint8Array,
      x: number,
      y: number,
      size: { readonly width: number; readonly height: number },
    ): this;
    end(): void;
  }
}
