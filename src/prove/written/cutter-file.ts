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

const isCut = ({ role }: { readonly role: string }): boolean =>
  ['artwork', 'relief', 'outline'].includes(role);

/** What is known of the cutter that the files are for. */
export interface AskedCutter {
  /** Left out where the files hold the lines themselves. */
  readonly knife?: AskedKnife;
  /** What every length of the files is to be larger by, because the machine makes it smaller; left out where it is true. */
  readonly scale?: { readonly across: number; readonly up: number };
}

/** A file for a machine that is off, as what it comes out as. */
export function asMade(file: DeliveredFile, { scale }: AskedCutter): DeliveredFile {
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
export function readFiles(text: PieceText, cutter: AskedCutter = {}): ReadFiles | undefined {
  const cut = readAllCut(text);
  if (cut === undefined || text.guide === undefined) return undefined;
  const guide = readDelivered(text.guide, `${text.stem}.guide.svg`);
  const files = { cut: asMade(inGuideOrder(cut, guide), cutter), guide };
  if (!cutter.knife) return files;
  // The guide's own numbers are true.
  const { toTrue: _, ...page } = files.cut;
  return { ...files, axis: files.cut, cut: { ...page, groups: files.guide.groups.filter(isCut) } };
}

/** What is to be cut of a piece that may have no guide. */
export function readCut(text: PieceText, cutter: AskedCutter = {}): DeliveredFile | undefined {
  const cut = readAllCut(text);
  if (cut === undefined) return undefined;
  if (!cutter.knife) return asMade(cut, cutter);
  return readFiles(text, cutter)?.cut ?? readDelivered('', `${text.stem}.guide.svg`);
}

/** All that is cut of a piece: its one file; or those of its layers, the outline taken from the first. */
function readAllCut({ stem, cut, layers = [] }: PieceText): DeliveredFile | undefined {
  const [first, ...others] = layers.map((layer) => readDelivered(layer.cut, `${layer.stem}.cut.svg`));
  if (!first) return cut === undefined ? undefined : readDelivered(cut, `${stem}.cut.svg`);
  const art = others.flatMap(({ groups }) => groups.filter(({ role }) => role === 'artwork'));
  return {
    ...first,
    groups: [...first.groups.filter(isCut), ...art],
    faults: [first, ...others].flatMap(({ name, faults }) => faults.map((fault) => `${name}: ${fault}`)),
  };
}

/** A cut file with its layers in the order of the guide: files of single layers have none of their own. */
function inGuideOrder(cut: DeliveredFile, { groups }: DeliveredFile): DeliveredFile {
  const order = groups.filter(({ role }) => role === 'artwork').map(({ layer }) => layer);
  const rank = ({ role, layer }: (typeof cut.groups)[number]) =>
    role === 'artwork' && order.includes(layer) ? order.indexOf(layer) : order.length;
  return { ...cut, groups: [...cut.groups].sort((one, other) => rank(one) - rank(other)) };
}
