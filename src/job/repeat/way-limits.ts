// What a way to close comes to beside its figures: why `make` refuses it, and at which ends of the band it leaves film over.
import { type Tile, turnedTile } from '../../artwork/tile-layer.ts';
import type { Finding } from '../../finding.ts';
import type { Lattice } from '../../pattern/lattice/lattice.ts';
import type { BandEnd } from '../../pattern/lay/edge-slivers.ts';
import type { RepeatStudy } from '../../pattern/study/repeat-study.ts';
import { endsCut, filmBoxes } from '../../pattern/ways/ends-cut.ts';
import { tileOfWay, type Way } from '../../pattern/ways/ways.ts';
import { rigidRefusal } from '../lay/rigid-pattern.ts';
import { type PatternGround, patternHeightOf } from '../plan/pattern-ground.ts';
import type { PiecesInput } from '../plan/pieces.ts';
import type { Artwork, Job } from '../typed/resolved-job.ts';

interface WaysInput extends Pick<PiecesInput, 'jobFile'> {
  readonly job: PiecesInput['job'] & Pick<Job, 'edges'> & { readonly artwork: Artwork };
}

/** Why `make` refuses ways by the job's lay, by their lattices: told here to be looked at, for another lay may be given. */
export function refusalsOf(
  { job: { artwork, pieces }, jobFile }: WaysInput,
  tile: Tile,
  ways: readonly Way[],
  plans: number,
): ReadonlyMap<Lattice, Finding> {
  const isWhole = plans === 1 && pieces !== 'gores';
  const found = new Map<Lattice, Finding>();
  // Ways of one lattice lay one tile.
  for (const way of ways.filter(({ lattice }, i) => ways.findIndex((one) => one.lattice === lattice) === i)) {
    const refused = rigidRefusal({ ...way, tile: tileOfWay(way, tile) }, artwork, isWhole, jobFile);
    if (refused) found.set(way.lattice, { ...refused, level: 'look' });
  }
  return found;
}

/** At which ends of the band a way leaves film over. Of a vessel that stands on its lip, artwork is laid on its head; whole rows end alike. */
export function endsCutBy(
  { job }: WaysInput,
  tile: Tile,
  { borders: { sides } }: RepeatStudy,
  ground: PatternGround,
): (way: Way) => readonly BandEnd[] {
  const isTurned = job.shown === 'upside-down' && job.edges !== 'whole-rows';
  const laid = isTurned ? turnedTile(tile) : tile;
  const film = filmBoxes(
    laid,
    sides.some(({ border }) => border === 'level'),
  );
  const height = patternHeightOf(job.artwork.lay, ground);
  return (way) => endsCut(way, film, height);
}
