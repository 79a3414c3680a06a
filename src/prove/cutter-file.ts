// What a cutter was given, read back: the lines that its knife is to cut, and the way of its axis where that is told.
import { type DeliveredFile, type PieceText, readDelivered } from './delivered-file.ts';

/** A drag knife that the files work out the way for. Lengths in mm. */
export interface AskedKnife {
  /** How far the tip trails behind the axis. */
  readonly offset: number;
  /** How far a line may be cut past its corners on purpose; 0 where corners are swung round. */
  readonly pastCorner: number;
}

/** The two files of a piece as they are proved. */
export interface ReadFiles {
  /** The lines that are wanted. */
  readonly cut: DeliveredFile;
  readonly guide: DeliveredFile;
  /** What the axis follows, where that is not the lines themselves. */
  readonly axis?: DeliveredFile;
}

const isCut = ({ role }: { readonly role: string }): boolean => role === 'artwork' || role === 'outline';

/** What is known of the cutter that the files are for. */
export interface AskedCutter {
  /** Left out where the files hold the lines themselves. */
  readonly knife?: AskedKnife;
  /** What every length of the files is to be larger by, because the machine makes it smaller; left out where it is true. */
  readonly scale?: { readonly across: number; readonly up: number };
}

/** A file for a machine that is off, as what it comes out as. */
function asMade(file: DeliveredFile, { scale }: AskedCutter): DeliveredFile {
  if (!scale) return file;
  const { across, up } = scale;
  return {
    ...file,
    units: { across: file.units.across / across, up: file.units.up / up },
    toTrue: { a: 1 / across, b: 0, c: 0, d: 1 / up, e: 0, f: 0 },
  };
}

/**
 * A piece's files; undefined where one is missing. Where the cut file holds the way of a knife's axis the wanted lines
 * are those of the guide, and that the tip cuts them is proved apart (`check-knife.ts`).
 */
export function readFiles({ stem, cut, guide }: PieceText, cutter: AskedCutter = {}): ReadFiles | undefined {
  if (cut === undefined || guide === undefined) return undefined;
  const files = {
    cut: asMade(readDelivered(cut, `${stem}.cut.svg`), cutter),
    guide: readDelivered(guide, `${stem}.guide.svg`),
  };
  if (!cutter.knife) return files;
  // The guide's own numbers are true.
  const { toTrue: _, ...page } = files.cut;
  return { ...files, axis: files.cut, cut: { ...page, groups: files.guide.groups.filter(isCut) } };
}

/** What is to be cut of a piece that may have no guide. */
export const readCut = (text: PieceText, cutter: AskedCutter = {}): DeliveredFile | undefined =>
  text.cut === undefined
    ? undefined
    : cutter.knife
      ? (readFiles(text, cutter)?.cut ?? readDelivered('', `${text.stem}.guide.svg`))
      : asMade(readDelivered(text.cut, `${text.stem}.cut.svg`), cutter);
