// How a picture made of pixels is traced, as shells ask for it.
export { mostColours } from '../artwork/picture-colours.ts';
export type { TraceOptions } from '../artwork/traced-picture.ts';
