// A picture at a place of a page.

/** mm from the page's top left corner. */
export interface PlacedPicture {
  /** A PNG without see-through pixels. */
  readonly png: Uint8Array;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
