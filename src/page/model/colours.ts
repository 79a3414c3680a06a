// The colours that the maker gives the vessel on the screen. No file of the job says them: they are kept in the browser.

/** How colour comes onto the vessel: film cut to the art, art printed on a film, or spray through a mask. */
export type Manner = 'cut' | 'print' | 'mask';

/** Each as `#rrggbb`, as colour fields give it. */
export interface Colours {
  readonly blank: string;
  readonly coat: string;
  /** What is printed on, or masked with. */
  readonly film: string;
  /** Left out: as the job's film is used. */
  readonly manner?: Manner;
  /** Of layers by name, where the maker chose others than the artwork's own; several are blended from foot to lip. */
  readonly layers: Readonly<Record<string, readonly string[]>>;
}

export const firstColours: Colours = { blank: '#c9cdd0', coat: '#e8dcc0', film: '#f4f1e8', layers: {} };

const isColour = (value: unknown): value is string =>
  typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value);

/** Whether what the browser kept is colours of this make. */
export function isColours(value: unknown): value is Colours {
  if (typeof value !== 'object' || value === null) return false;
  const { blank, coat, film, manner, layers } = value as Partial<Record<keyof Colours, unknown>>;
  const isManner = manner === undefined || ['cut', 'print', 'mask'].includes(String(manner));
  if (![blank, coat, film].every(isColour) || !isManner) return false;
  if (typeof layers !== 'object' || layers === null) return false;
  return Object.values(layers).every((all: unknown) => Array.isArray(all) && all.every(isColour));
}
