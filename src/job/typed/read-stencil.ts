// A stencil of a job, as typed.
import type { Stencil } from './resolved-mask.ts';
import { optional, type Reader, readKeys } from './schema.ts';
import { given, length } from './schema-values.ts';

export const stencilKeys = { bridge: optional('Width of bridges', length()) };

export const readStencil: Reader<Stencil> = (value, place) => {
  const keys = readKeys(value, stencilKeys, place);
  return keys && given({ bridge: keys.bridge });
};
