// How a picture made of pixels is traced, as shells ask for it.
export { mostColours } from '../../artwork/picture/picture-colours.ts';
export type { TraceOptions } from '../../artwork/picture/traced-picture.ts';
