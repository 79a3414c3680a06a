// How the maker wants to see the finished vessel: its colours, and what of it is shown for now, while the page is open.
import { computed, signal } from '@preact/signals';
import type { Colours, Manner } from '../model/colours.ts';
import { changeColours, colours } from '../store.ts';

/** Of a mask: laid, sprayed over, and pulled off again. */
export type Stage = 'masked' | 'sprayed' | 'pulled';

/** What is looked at for now: it is no work that would be undone. */
interface Shown {
  readonly stage: Stage;
  /** Names of layers that are not to be seen. */
  readonly hidden: readonly string[];
  readonly isCoatShown: boolean;
  readonly isSeamShown: boolean;
  readonly isStripShown: boolean;
}

export type Looks = Colours & Shown;

const shown = signal<Shown>({
  stage: 'pulled',
  hidden: [],
  isCoatShown: true,
  isSeamShown: true,
  isStripShown: true,
});

export const looks = computed<Looks>(() => ({ ...colours.value, ...shown.value }));

export const show = (part: Partial<Shown>): void => {
  shown.value = { ...shown.peek(), ...part };
};

/** Give a part of the vessel another colour; a step back gives it back the one before. */
export const colour = (part: Partial<Colours>, at: string): void =>
  changeColours({ ...colours.peek(), ...part }, `colour ${at}`);

/** Whether its colours lie open beside it. */
export const isColouring = signal(false);

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
