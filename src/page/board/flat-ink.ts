// Drawing the flat sheet on its canvas.

import { inkOf } from '../../job/view/ink.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { isHidden } from './hidden-groups.ts';
import { drawInk, traceInk } from './ink-path.ts';
import type { LaidOut, LaidPiece } from './laid-out.ts';
import { placeOnSheet } from './laid-out.ts';
import type { Dragged } from './motif-drag.ts';
import { drawPassing, isLines, practise } from './passing-ink.ts';
import { drawRulers } from './rulers.ts';
import { onScreen, type Point, type SheetView, type Size } from './sheet-view.ts';
import { goreSprayInk, type Spray, sprayInk } from './spray-ink.ts';

/** Two places on the sheet, mm, as far as they are given. */
export interface Measured {
  readonly from?: Point;
  readonly to?: Point;
}

export interface SheetSeen {
  readonly laid: LaidOut;
  readonly view: SheetView;
  readonly size: Size;
  /** What is not to be shown: roles, and `layer:` names. */
  readonly hidden: ReadonlySet<string>;
  readonly units: Units;
  readonly measured: Measured;
  readonly pointed: { readonly turn: number; readonly along: number } | undefined;
  readonly dragged: Dragged | undefined;
  /** Of layers that are sprayed, by name. */
  readonly sprays: ReadonlyMap<string, Spray>;
  /** Past the job's own mask. */
  readonly sprayAround: Spray | undefined;
  /** Whether it is drawn while keys come in: areas then wait to be filled until the job is laid afresh. */
  readonly isPassing: boolean;
}

/** Paper and ink: the same by day and by night, for the drawing's colours are those of its files. */
const paper = {
  sheet: '#faf7ef',
  ruler: '#eee9dc',
  line: '#9a927f',
  words: '#4b463a',
  strong: '#0f5257',
  mark: '#e0561d',
};

/** Of 255, as two digits after a colour. */
const fillStrength = '73';

/** Lines are read on it. */
const sprayStrength = 0.6;

/** How far what is drawn may be from its curve, dots of the screen. */
const strays = 0.25;

/** Lines keep this width on the screen, px; seam and edges are stronger than the pattern. */
const lineWidths: Readonly<Record<string, number>> = {
  outline: 1.6,
  seam: 1.8,
  trim: 1.4,
  'flat-limit': 1.6,
};

/** A dot wide, px: at no more than one exactly, rounded, a browser draws a line without working out its two edges. */
const thin = 0.999;

export function drawSheet(canvas: HTMLCanvasElement, seen: SheetSeen): void {
  const { view, size, laid } = seen;
  // All of it is painted over, so nothing behind it shows through.
  const ink = canvas.getContext('2d', { alpha: false });
  if (!ink || size.width === 0) return;
  const dense = globalThis.devicePixelRatio || 1;
  const [width, height] = [Math.round(size.width * dense), Math.round(size.height * dense)];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  ink.setTransform(dense, 0, 0, dense, 0, 0);
  const within = strays / (view.scale * dense);
  const linesDrawn = { paper: paper.sheet, width: thin * dense, within, dense };
  if (seen.isPassing) drawPassing(ink, seen, linesDrawn);
  else {
    practise(seen, linesDrawn);
    ink.fillStyle = paper.sheet;
    ink.fillRect(0, 0, size.width, size.height);
  }
  for (const { piece, at, groups } of laid.pieces) {
    ink.save();
    ink.translate(view.x + at.x * view.scale, view.y + at.y * view.scale);
    ink.scale(view.scale, view.scale);
    if (seen.sprayAround) drawSprayAround(ink, { piece, groups }, seen.sprayAround, within);
    for (const group of groups) {
      if (isHidden(seen.hidden, group) || (seen.isPassing && isLines(group))) continue;
      ink.fillStyle = group.isWords ? group.colour : group.colour + fillStrength;
      ink.strokeStyle = group.colour;
      ink.lineWidth = (lineWidths[group.role] ?? thin) / view.scale;
      ink.setLineDash([...group.dash]);
      const { filled } = group;
      const spray = group.role === 'artwork' && filled ? seen.sprays.get(group.layer ?? '') : undefined;
      // Gores are one drawing, and alone; what is cut apart is shown as it is cut.
      const isOnGores = laid.pieces.length === 1;
      if (spray && (piece.place || isOnGores)) {
        ink.fillStyle = piece.place ? sprayInk(ink, piece.place, spray) : goreSprayInk(ink, piece.box, spray);
        ink.strokeStyle = ink.fillStyle;
      }
      drawInk(ink, group.ink, { filled, stroked: !group.isWords, within });
    }
    ink.restore();
  }
  drawDragged(ink, seen);
  if (!seen.dragged) drawPointed(ink, seen);
  drawMeasured(ink, seen);
  const rulerInk = { paper: paper.ruler, line: paper.line, words: paper.words };
  drawRulers(ink, view, size, { x: laid.box.minX, y: laid.box.maxY }, seen.units, rulerInk);
}

/** What is sprayed past the job's own mask: all of the piece but the mask. */
function drawSprayAround(
  ink: CanvasRenderingContext2D,
  { piece, groups }: Pick<LaidPiece, 'piece' | 'groups'>,
  spray: Spray,
  within: number,
): void {
  const { around, place, box } = piece;
  const outline = groups.find(({ role }) => role === 'outline');
  if (!around || !place || !outline) return;
  ink.save();
  ink.beginPath();
  traceInk(ink, outline.ink, within);
  ink.clip();
  ink.beginPath();
  ink.rect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
  traceInk(ink, inkOf(around.d), within);
  ink.fillStyle = sprayInk(ink, place, spray);
  ink.globalAlpha = sprayStrength;
  ink.fill('evenodd');
  ink.restore();
}

/** How finely a level is followed around, turns. */
const levelStep = 1 / 64;

/** The levels that the middle of a dragged motif stays between, and what it reaches over. */
function drawDragged(ink: CanvasRenderingContext2D, { laid, view, dragged }: SheetSeen): void {
  if (!dragged) return;
  const { limits, at, reach } = dragged;
  const line = (places: readonly { readonly turn: number; readonly along: number }[]) => {
    ink.beginPath();
    let isDown = false;
    for (const place of places) {
      const on = placeOnSheet(laid, place);
      const { x, y } = on ? onScreen(view, on) : { x: 0, y: 0 };
      if (on && isDown) ink.lineTo(x, y);
      else if (on) ink.moveTo(x, y);
      isDown = on !== undefined;
    }
    ink.stroke();
  };
  const level = (along: number, from: number, to: number) => {
    const count = Math.max(2, Math.ceil((to - from) / levelStep));
    return Array.from({ length: count + 1 }, (_, i) => ({ turn: from + ((to - from) * i) / count, along }));
  };
  ink.strokeStyle = paper.mark;
  ink.lineWidth = 2;
  ink.setLineDash([8, 5]);
  line(level(limits.from, 0, 1));
  line(level(limits.to, 0, 1));
  ink.setLineDash([]);
  const [left, right] = [at.turn - reach.aside, at.turn + reach.aside];
  const bottom = level(at.along - reach.down, left, right);
  line([...bottom, ...level(at.along + reach.up, left, right).reverse(), ...bottom.slice(0, 1)]);
}

function drawPointed(ink: CanvasRenderingContext2D, { laid, view, pointed }: SheetSeen): void {
  const place = pointed && placeOnSheet(laid, pointed);
  if (!place) return;
  const { x, y } = onScreen(view, place);
  // On a pattern of any colour it stands out: a bright ring on a pale one.
  for (const [colour, width] of [
    [paper.sheet, 6],
    [paper.mark, 3],
  ] as const) {
    ink.strokeStyle = colour;
    ink.lineWidth = width;
    ink.beginPath();
    ink.arc(x, y, 7, 0, 2 * Math.PI);
    ink.stroke();
  }
}

function drawMeasured(
  ink: CanvasRenderingContext2D,
  { view, measured: { from, to }, units }: SheetSeen,
): void {
  if (!from) return;
  ink.strokeStyle = paper.strong;
  ink.fillStyle = paper.strong;
  ink.lineWidth = 2;
  const a = onScreen(view, from);
  const b = to && onScreen(view, to);
  for (const place of b ? [a, b] : [a]) {
    ink.beginPath();
    ink.arc(place.x, place.y, 4, 0, 2 * Math.PI);
    ink.fill();
  }
  if (!to || !b) return;
  ink.beginPath();
  ink.moveTo(a.x, a.y);
  ink.lineTo(b.x, b.y);
  ink.stroke();
  const says = measuredLength(Math.hypot(to.x - from.x, to.y - from.y), units);
  ink.font = 'bold 14px "Atkinson Hyperlegible", system-ui, sans-serif';
  const [x, y] = [(a.x + b.x) / 2 + 8, (a.y + b.y) / 2 - 8];
  const { width } = ink.measureText(says);
  ink.fillStyle = paper.sheet;
  ink.fillRect(x - 4, y - 15, width + 8, 20);
  ink.fillStyle = paper.strong;
  ink.fillText(says, x, y);
}
