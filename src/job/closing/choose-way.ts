// Which way a job's pattern closes by: the one the maker chose, or the one that is clearly best where the tile does not join.
import type { Tile } from '../../artwork/tile.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { scale } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { shown } from '../../lengths/shown.ts';
import { type Lattice, latticeOf } from '../../pattern/lattice/lattice.ts';
import { isAllApart } from '../../pattern/study/all-apart.ts';
import { freeStudyOf, type RepeatStudy, repeatStudyOf } from '../../pattern/study/repeat-study.ts';
import { sureRepeat } from '../../pattern/study/sure-repeat.ts';
import { clearlyBest, isPlainWay, type Way, type WayGround, waysToClose } from '../../pattern/ways/ways.ts';
import { type PatternGround, patternHeightOf } from '../plan/pattern-ground.ts';
import type { Artwork, Job, Repeat } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';
import { type ArtFiles, drawnLength, notJoined, stepsInWords } from './way-words.ts';

export interface ChosenWay {
  /** Left out where the tile goes around by its own steps. */
  readonly way?: Way;
  /** Of a way that covers borders with strips: which of them. */
  readonly covers?: 'sides' | 'both';
  readonly findings: readonly Finding[];
}

/** The lattice of a repeat; a side left out is the tile's own. */
export const latticeOfRepeat = (repeat: Repeat, tile: Tile): Lattice =>
  repeat.kind === 'lattice'
    ? // A step told to the left goes around by its opposite, which repeats the same.
      { a: repeat.a.x < 0 ? scale(repeat.a, -1) : repeat.a, b: repeat.b }
    : latticeOf({ ...repeat, across: sideOf(repeat.across, tile.width), up: sideOf(repeat.up, tile.height) });

/** A side as it is typed. Where it is the tile's own but for how finely it was typed, such as 1.7717in for 45 mm, copies would stand a hair apart. */
const sideOf = (typed: number | undefined, own: number): number =>
  typed === undefined || Math.abs(typed - own) <= joinTolerance ? own : typed;

/** What a tile is found to be, by the repeat that the maker gives or by the one it shows. */
export const studyOf = (tile: Tile, repeat: Repeat): RepeatStudy =>
  (saysRepeat(repeat) ? repeatStudyOf : freeStudyOf)(tile, latticeOfRepeat(repeat, tile));

/** Whether the maker said how the tile repeats. */
export const saysRepeat = (repeat: Repeat): boolean =>
  repeat.kind === 'lattice' ||
  repeat.across !== undefined ||
  repeat.up !== undefined ||
  repeat.drop !== 0 ||
  repeat.shift !== 0;

export const wayGroundOf = (artwork: Artwork, edges: Job['edges'], ground: PatternGround): WayGround => ({
  ...ground,
  patternHeight: patternHeightOf(artwork.lay, ground),
  lay: artwork.lay,
  scale: artwork.scale,
  wholeRows: edges === 'whole-rows',
  ...(artwork.around === undefined ? {} : { around: artwork.around }),
});

/**
 * The way to lay a tile by, from what `studied` finds of it; undefined where it goes around by its own steps, as nearly all do.
 * @throws Refused where the way chosen is none, or where the tile does not join and no way is clearly best.
 */
export function chosenWay(
  tile: Tile,
  artwork: Artwork,
  edges: Job['edges'],
  ground: PatternGround,
  files: ArtFiles,
  studied: typeof studyOf = studyOf,
): ChosenWay | undefined {
  const { way: asked, repeat } = artwork;
  if (asked === undefined && (saysRepeat(repeat) || isAllApart(tile))) return undefined;
  const study = studied(tile, repeat);
  const isPlain = study.joins && !study.stepped;
  // As nearly all tiles do, and while a maker types: what `repeat` lists is not worked out for it.
  if (isPlain && asked === undefined)
    return study.isDoubtful && tile.goesOn ? { findings: [doubtNote(files)] } : undefined;
  if (isPlain && asked === 'as-drawn') return undefined;
  const wayGround = wayGroundOf(artwork, edges, ground);
  const ways = waysToClose(tile, study, wayGround);
  if (asked !== undefined) {
    const way = wayNamed(asked, ways, files);
    return { way, findings: [], ...coversOf(study, way) };
  }
  const taken = takenWay(study, ways, artwork, wayGround);
  if (!taken) throw new Refused([notJoined(study, ways, files)]);
  const told = study.stepped ? steppedNote(taken, files) : foundNote(study, taken, files);
  return { way: taken, findings: [told] };
}

/** The way that is taken where none is named, of those by the count that the job gives; undefined where none is clearly best. */
export function takenWay(
  study: RepeatStudy,
  ways: readonly Way[],
  { repeat, around }: Pick<Artwork, 'repeat' | 'around'>,
  ground: WayGround,
): Way | undefined {
  const plain = () => ways.find((way) => isPlainWay(way, ground));
  // What the maker says of the repeat is believed: where it does not hold, the laid pattern shows it.
  if (saysRepeat(repeat)) return study.joins ? plain() : ways.find(({ kind }) => kind === 'as-drawn');
  // A tile that joins is laid whole, and counts around are of whole tiles.
  if (study.joins && (!study.stepped || around !== undefined)) return plain();
  return clearlyBest(ways, study);
}

/** The way by a finer repeat that a tile surely holds, where it comes nearer to the drawn size than whole tiles do. */
export const nearerFiner = ({ period }: RepeatStudy, [first]: readonly Way[]): Way | undefined =>
  first?.kind === 'period' && (period?.confidence ?? 0) >= sureRepeat ? first : undefined;

/** Borders that strips of a way have to cover: those between rows too where rows do not meet, or their spacing jumps. */
export function coversOf({ borders, jumpsUp }: RepeatStudy, { kind, rows }: Way): Pick<ChosenWay, 'covers'> {
  if (kind !== 'strip') return {};
  const isOpen = jumpsUp || borders.open.some(({ border }) => border === 'level');
  return { covers: rows > 1 && isOpen ? 'both' : 'sides' };
}

/** The way by its key, or by its number in the list that `repeat` gives. */
function wayNamed(asked: string | number, ways: readonly Way[], { job }: ArtFiles): Way {
  const way = typeof asked === 'number' ? ways[asked - 1] : ways.find(({ key }) => key === asked);
  if (way) return way;
  const keys = ways.map(({ key }, i) => `${i + 1} ${shown(key)}`).join(', ');
  const says =
    ways.length === 0
      ? `${shown(asked)} is no way this tile can close here; it has none, so give artwork drawn smaller`
      : `${shown(asked)} is no way this tile can close here; give one of ${keys}`;
  throw new Refused([stop('no-such-way', typedAt(job, 'artwork.way'), says)]);
}

/** Of a picture: crops meet by chance too where nothing crosses their borders aslant. */
const doubtNote = ({ art }: ArtFiles): Finding =>
  note(
    'cannot-be-told',
    { file: art },
    'goes on across its borders as far as its pixels tell, but they would tell the same of some crops of it: look at the rolled picture whether copies stand as far apart as motifs within',
  );

function steppedNote(way: Way, { art }: ArtFiles): Finding {
  const says = `joins its own copy by a repeat of ${stepsInWords(way.lattice)}, and not straight on: that was laid, as the way ${shown(way.key)}`;
  return note('way-taken', { file: art }, says);
}

function foundNote({ period, mismatch }: RepeatStudy, way: Way, { art }: ArtFiles): Finding {
  const sure = Math.round((period?.confidence ?? 0) * 100);
  const says = `does not join its own copy (off by ${drawnLength(mismatch)}), but shows a repeat of ${stepsInWords(way.lattice)} (sure to ${sure} %): that was laid, as the way ${shown(way.key)}; "repeat" lists the others`;
  return note('way-taken', { file: art }, says);
}
