// Rulers along the top and the left of the sheet, in the maker's unit.
import { formatLength, type Units } from '../../lengths/length.ts';
import { rulerWidth, type SheetView, type Size } from './sheet-view.ts';

/** Steps between the numbers of a ruler, in its unit. */
const steps: Readonly<Record<Units, readonly number[]>> = {
  mm: [1, 2, 5, 10, 20, 50, 100, 200, 500],
  in: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10, 20],
};

/** Ticks between two numbers. */
const parts: Readonly<Record<Units, number>> = { mm: 5, in: 4 };

/** Least room between two numbers, px. */
const leastRoom = 56;

export interface Ink {
  readonly paper: string;
  readonly line: string;
  readonly words: string;
}

function stepOf(units: Units, scale: number): number {
  const unit = units === 'mm' ? 1 : 25.4;
  const [first = 1] = steps[units];
  return (
    (steps[units].find((step) => step * unit * scale >= leastRoom) ?? steps[units].at(-1) ?? first) * unit
  );
}

/** Draw both rulers; lengths count from the sheet's `zero`, mm: the lower left corner of the piece. */
export function drawRulers(
  ink: CanvasRenderingContext2D,
  view: SheetView,
  { width, height }: Size,
  zero: { readonly x: number; readonly y: number },
  units: Units,
  { paper, line, words }: Ink,
): void {
  const step = stepOf(units, view.scale);
  const tick = step / parts[units];
  ink.save();
  ink.fillStyle = paper;
  ink.fillRect(0, 0, width, rulerWidth);
  ink.fillRect(0, 0, rulerWidth, height);
  ink.strokeStyle = line;
  ink.fillStyle = words;
  ink.lineWidth = 1;
  ink.font = '11px "Atkinson Hyperlegible", system-ui, sans-serif';
  ink.beginPath();
  const label = (mm: number) => formatLength(Math.abs(mm) < 1e-9 ? 0 : mm, units).replace(/ (mm|in)$/, '');
  const isNumber = (i: number) => i % parts[units] === 0;
  const firstX = Math.ceil(((rulerWidth - view.x) / view.scale - zero.x) / tick);
  for (let i = firstX; ; i++) {
    const x = view.x + (zero.x + i * tick) * view.scale;
    if (x > width) break;
    ink.moveTo(x, isNumber(i) ? 12 : 20);
    ink.lineTo(x, rulerWidth);
    if (isNumber(i)) ink.fillText(label(i * tick), x + 3, 12);
  }
  const firstY = Math.ceil((zero.y - (height - view.y) / view.scale) / tick);
  for (let i = firstY; ; i++) {
    const y = view.y + (zero.y - i * tick) * view.scale;
    if (y < rulerWidth) break;
    ink.moveTo(isNumber(i) ? 12 : 20, y);
    ink.lineTo(rulerWidth, y);
    if (isNumber(i)) {
      ink.save();
      ink.translate(12, y - 3);
      ink.rotate(-Math.PI / 2);
      ink.fillText(label(i * tick), 0, 0);
      ink.restore();
    }
  }
  ink.moveTo(rulerWidth, 0);
  ink.lineTo(rulerWidth, height);
  ink.moveTo(0, rulerWidth);
  ink.lineTo(width, rulerWidth);
  ink.stroke();
  ink.fillStyle = paper;
  ink.fillRect(0, 0, rulerWidth - 1, rulerWidth - 1);
  ink.fillStyle = words;
  ink.fillText(units, 5, 17);
  ink.restore();
}
