// How the maker wants to see the finished vessel. Kept while the page is open; no file of the job says it.
import { signal } from '@preact/signals';

/** How colour comes onto the vessel: film cut to the art, art printed on a film, or spray through a mask. */
export type Manner = 'cut' | 'print' | 'mask';

/** Of a mask: laid, sprayed over, and pulled off again. */
export type Stage = 'masked' | 'sprayed' | 'pulled';

export interface Looks {
  /** `#rrggbb`, as colour fields give it. */
  readonly blank: string;
  readonly coat: string;
  /** What is printed on, or masked with. */
  readonly film: string;
  /** Left out: as the job's film is used. */
  readonly manner?: Manner;
  readonly stage: Stage;
  /** Of layers by name, where the maker chose others than the artwork's own; several are blended from foot to lip. */
  readonly layers: Readonly<Record<string, readonly string[]>>;
  /** Names of layers that are not to be seen. */
  readonly hidden: readonly string[];
  readonly isCoatShown: boolean;
  readonly isSeamShown: boolean;
  readonly isStripShown: boolean;
}

export const looks = signal<Looks>({
  blank: '#c9cdd0',
  coat: '#e8dcc0',
  film: '#f4f1e8',
  stage: 'pulled',
  layers: {},
  hidden: [],
  isCoatShown: true,
  isSeamShown: true,
  isStripShown: true,
});

/** Under these names the colours of a job's own mask are kept. */
export const maskNames = { film: 'mask', spray: 'around it' } as const;

/** Most colours that are blended along the wall. */
export const mostBlended = 4;

export const coloursOf = (
  { layers }: Looks,
  { name, colour }: { readonly name: string; readonly colour: string },
): readonly string[] => layers[name] ?? [colour];

export const mannerOf = ({ manner }: Looks, use: 'decal' | 'mask'): Manner =>
  manner ?? (use === 'mask' ? 'mask' : 'cut');

/** From where it is seen. */
export interface Side {
  /** The turn that faces the viewer, from 0 at the seam. */
  readonly facing: number;
  /** How far the eye is above the level, radians. */
  readonly elevation: number;
  /** 1 shows the whole vessel. */
  readonly zoom: number;
}

/** The front, a little from above. */
export const front: Side = { facing: 0.5, elevation: 0.2, zoom: 1 };
export const side = signal<Side>(front);

/** Straight up and down are left out: there left and right would change places. */
const elevations = { least: -1.2, most: 1.4 } as const;
const zooms = { least: 0.6, most: 8 } as const;

const within = (value: number, { least, most }: { readonly least: number; readonly most: number }): number =>
  Math.min(most, Math.max(least, value));

/** The side after the vessel is turned: `around` in turns, growing facing turn; `up` in radians, the eye rising. */
export const turnedBy = (from: Side, around: number, up: number): Side => ({
  ...from,
  facing: (((from.facing + around) % 1) + 1) % 1,
  elevation: within(from.elevation + up, elevations),
});

export const nearerBy = (from: Side, factor: number): Side => ({
  ...from,
  zoom: within(from.zoom * factor, zooms),
});
