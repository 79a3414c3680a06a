// What a film gives when it is laid, as typed.
import { mostGiving, standardFilm } from '../job/typed/material.ts';
import type { FlagLengths } from './flag-lengths.ts';

export interface FilmFlags {
  readonly stretch?: string;
  readonly gather?: string;
}

/** Shares by which the film stretches and gathers; those of the standard film where they are left out. */
export const givesOfFlags = (
  { stretch, gather }: FilmFlags,
  lengths: FlagLengths,
): { readonly stretch: number; readonly gather: number } => ({
  stretch: lengths.readShare('--stretch', stretch, mostGiving) ?? standardFilm.stretch,
  gather: lengths.readShare('--gather', gather, mostGiving) ?? standardFilm.gather,
});
