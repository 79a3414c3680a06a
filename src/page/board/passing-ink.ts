// The pattern while keys come in: its lines alone, as pixels. Filling its areas takes twice as long, and tells nothing that the lines do not.
import type { InkedGroup } from '../../job/view/followed-view.ts';
import { whenIdle } from '../when-idle.ts';
import { blankPixels, drawHairlines, fillPixels, type Pixels } from './hairlines.ts';
import { isHidden } from './hidden-groups.ts';
import { InkChords } from './ink-chords.ts';
import type { LaidOut } from './laid-out.ts';
import type { SheetView } from './sheet-view.ts';

/** Whether a group is drawn here. */
export const isLines = ({ role, isWords, dash }: InkedGroup): boolean =>
  role === 'artwork' && !isWords && dash.length === 0;

interface LinesLook {
  readonly paper: string;
  /** Dots of the screen. */
  readonly width: number;
  /** How far what is drawn may be from its curve, mm. */
  readonly within: number;
  /** Dots to the px. */
  readonly dense: number;
}

interface Seen {
  readonly laid: LaidOut;
  readonly view: SheetView;
  readonly hidden: ReadonlySet<string>;
}

/** Of each canvas, kept from key to key. */
const keptOf = new WeakMap<HTMLCanvasElement, Kept>();

interface Kept {
  readonly pixels: Pixels;
  readonly picture: ImageData;
  readonly chords: InkChords;
}

function keptFor(canvas: HTMLCanvasElement): Kept {
  const { width, height } = canvas;
  const kept = keptOf.get(canvas);
  if (kept?.pixels.width === width && kept.pixels.height === height) return kept;
  const pixels = blankPixels(width, height);
  const picture = new ImageData(new Uint8ClampedArray(pixels.colours.buffer), width, height);
  const made = { pixels, picture, chords: new InkChords() };
  keptOf.set(canvas, made);
  return made;
}

/** The sheet with the pattern's lines alone. */
export function drawPassing(ink: CanvasRenderingContext2D, seen: Seen, look: LinesLook): void {
  const kept = keptFor(ink.canvas);
  fillPixels(kept.pixels, look.paper);
  drawLines(kept, seen, look);
  ink.putImageData(kept.picture, 0, 0);
}

function drawLines(
  { pixels, chords }: Pick<Kept, 'pixels' | 'chords'>,
  { laid, view, hidden }: Seen,
  look: LinesLook,
  most?: number,
): void {
  const { dense, within, ...rest } = look;
  const scale = view.scale * dense;
  for (const { at, groups } of laid.pieces) {
    const origin = { x: view.x * dense + at.x * scale, y: view.y * dense + at.y * scale };
    for (const group of groups) {
      if (!isLines(group) || isHidden(hidden, group)) continue;
      chords.follow(group.ink, within, most);
      drawHairlines(pixels, chords, { ...rest, scale, origin, colour: group.colour });
    }
  }
}

/** A browser makes quick code only of what has run a few times: so many, of so many shapes. */
const practice = { times: 8, shapes: 60 } as const;
let practised = 0;

/** Draws some of the lines where nobody sees them, whenever the page is idle: the first keys are not to wait for quick code. */
export function practise(seen: Seen, look: LinesLook): void {
  if (practised >= practice.times) return;
  whenIdle(() => {
    practised++;
    drawLines({ pixels: blankPixels(512, 512), chords: new InkChords() }, seen, look, practice.shapes);
    practise(seen, look);
  });
}
