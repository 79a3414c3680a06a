// What the proof holds delivered gores against. All mm.
import type { Band } from '../blank/flat-band.ts';
import type { Asked } from './asked.ts';
import type { AskedSheets } from './checks/check-sheets.ts';
import type { GoreSurface } from './written/rolled-gore.ts';

export interface AskedGores extends Pick<Asked, 'trim' | 'overlap' | 'film' | 'layers' | 'cutter'> {
  /** Endless upwards where it is a roll. */
  readonly sheet?: AskedSheets;
  readonly surface: GoreSurface;
  /** The finished band, mm up the surface. */
  readonly band: Band;
  /** Strain that a gore so wide asks at a place, as a share. */
  readonly strainAt: (on: number, width: number) => number;
}
