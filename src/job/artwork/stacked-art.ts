// Drawings read and laid over one another as one tile.
import { type StackedArt, stackedTile } from '../../artwork/stacked-tile.ts';
import type { Normalise } from '../../artwork/svg/svg-normalise.ts';
import { type ArtContent, readTile } from '../../artwork/tile.ts';

/** A drawing's content, and the colour that it is all in where it is one film. */
export interface SheetContent {
  readonly content: ArtContent;
  readonly file: string;
  readonly colour?: string;
}

/** @throws Refused where one can't be read, or they are no tile together. */
export function readStacked(
  drawings: readonly SheetContent[],
  normalise: Normalise,
  options: Parameters<typeof readTile>[3],
  order?: readonly string[],
): StackedArt {
  const sheets = drawings.map(({ content, ...sheet }) => {
    const { tile, ...rest } = readTile(content, sheet.file, normalise, { ...options, isRepeated: true });
    return { ...sheet, art: { ...tile, ...rest } };
  });
  return stackedTile(sheets, order);
}
