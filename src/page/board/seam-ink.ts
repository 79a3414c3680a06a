// Drawing the two ends of a wrap as they meet: the seam upright in the middle, the end left of it, the beginning right.
import type { SeamEnds } from '../../job/view/flat-ends.ts';
import type { FlatPiece } from '../../job/view/flat-view.ts';
import { formatLength, type Units } from '../../lengths/length.ts';
import type { Size } from './sheet-view.ts';

export interface SeamSeen {
  readonly ends: SeamEnds;
  /** The height in the middle of the window, mm along. */
  readonly along: number;
  /** Screen px to the mm. */
  readonly scale: number;
  readonly size: Size;
  /** How far the ends are held apart, px. */
  readonly apart: number;
  readonly units: Units;
}

/** As on the flat board: paper and ink stay by night. */
const paper = { sheet: '#faf7ef', line: '#9a927f', words: '#4b463a', seam: '#8a2f6b' };

const fillStrength = 0.6;

/** Lengths a scale bar may have, by unit, mm. */
const bars: Readonly<Record<Units, readonly number[]>> = {
  mm: [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50],
  in: [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2].map((inches) => inches * 25.4),
};

export function drawSeam(canvas: HTMLCanvasElement, seen: SeamSeen): void {
  const { size, ends, apart } = seen;
  const ink = canvas.getContext('2d');
  if (!ink || size.width === 0) return;
  const dense = globalThis.devicePixelRatio || 1;
  canvas.width = Math.round(size.width * dense);
  canvas.height = Math.round(size.height * dense);
  ink.setTransform(dense, 0, 0, dense, 0, 0);
  ink.fillStyle = paper.sheet;
  ink.fillRect(0, 0, size.width, size.height);
  const shifts = apart > 0 ? [-apart / 2, apart / 2] : [0];
  drawEnd(ink, seen, { piece: ends.finish, side: 'end', shift: -apart / 2, motion: ends.motion });
  drawEnd(ink, seen, { piece: ends.start, side: 'beginning', shift: apart / 2 });
  for (const shift of shifts) drawMeeting(ink, seen, shift);
  drawBar(ink, seen);
}

interface End {
  readonly piece: FlatPiece;
  readonly side: 'end' | 'beginning';
  /** How far it is held aside, px. */
  readonly shift: number;
  readonly motion?: SeamEnds['motion'];
}

/** To the drawing of the beginning, mm. */
function toDrawing(
  ink: CanvasRenderingContext2D,
  { ends: { at, up }, scale, size }: SeamSeen,
  shift: number,
): void {
  ink.translate(size.width / 2 + shift, size.height / 2);
  ink.rotate(-Math.PI / 2 - up);
  ink.scale(scale, scale);
  ink.translate(-at.x, -at.y);
}

/** The outline of more than any end takes. */
const everywhere = 'M-1e5-1e5H1e5V1e5H-1e5Z';

/** The line where the ends meet. */
function drawMeeting(ink: CanvasRenderingContext2D, seen: SeamSeen, shift: number): void {
  const { scale, ends } = seen;
  ink.save();
  toDrawing(ink, seen, shift);
  ink.strokeStyle = paper.seam;
  ink.lineWidth = 1 / scale;
  ink.setLineDash([10, 5, 2, 5].map((px) => px / scale));
  ink.stroke(new Path2D(ends.covered));
  ink.restore();
}

function drawEnd(ink: CanvasRenderingContext2D, seen: SeamSeen, end: End): void {
  const { piece, side, shift, motion } = end;
  const { scale, ends } = seen;
  ink.save();
  toDrawing(ink, seen, shift);
  ink.clip(new Path2D(`${side === 'end' ? everywhere : ''}${ends.covered}`), 'evenodd');
  if (motion) ink.transform(motion.a, motion.b, motion.c, motion.d, motion.e, motion.f);
  for (const { role, colour, filled, dash, isWords, d } of piece.groups) {
    if (role === 'note' || role === 'register' || role === 'seam' || isWords) continue;
    const path = new Path2D(d);
    if (filled) {
      ink.globalAlpha = fillStrength;
      ink.fillStyle = colour;
      ink.fill(path, 'evenodd');
      ink.globalAlpha = 1;
    }
    ink.strokeStyle = colour;
    ink.lineWidth = 1.2 / scale;
    ink.setLineDash([...dash]);
    ink.stroke(path);
  }
  ink.restore();
}

function drawBar(ink: CanvasRenderingContext2D, { scale, size, units }: SeamSeen): void {
  const length = bars[units].find((mm) => mm * scale >= 48) ?? bars[units].at(-1) ?? 1;
  // Above where the figures below grow to when they take two lines.
  const [x, y] = [16, size.height - 46];
  ink.fillStyle = paper.sheet;
  ink.fillRect(x - 6, y - 26, length * scale + 12, 34);
  ink.strokeStyle = paper.words;
  ink.lineWidth = 2;
  ink.beginPath();
  ink.moveTo(x, y - 5);
  ink.lineTo(x, y);
  ink.lineTo(x + length * scale, y);
  ink.lineTo(x + length * scale, y - 5);
  ink.stroke();
  ink.fillStyle = paper.words;
  ink.font = '13px "Atkinson Hyperlegible", system-ui, sans-serif';
  ink.fillText(formatLength(length, units), x, y - 9);
}
