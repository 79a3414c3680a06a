// Faults of artwork and film in a maker's words.
import type { DrawnFault, LayerFault } from '../../cut/checks/art-faults.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import type { Finding, Level, Where } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { formatLength } from '../../lengths/length.ts';

/** Film that stays for good, or that keeps colour off and is pulled again. */
export type FilmUse = 'decal' | 'mask';

const mm = (value: number): string => formatLength(Number(value.toFixed(2)), 'mm');
const about = (value: number): string => `${value.toFixed(1)} mm`;
/** How far a fault goes on, where that is more than a point. */
const goingOn = (length: number): string => (length < 0.05 ? '' : ` for ${about(length)}`);
const squareMm = (value: number): string => `${value < 1 ? value.toFixed(2) : value.toFixed(1)} mm²`;

/** An area under a limit, never told as the limit itself. */
const underLimit = (value: number, limit: number): string =>
  squareMm(value) === squareMm(limit) ? `${Math.floor(value * 100) / 100} mm²` : squareMm(value);

function filmWords({ rule, size, length, place }: LayerFault, limits: CutLimits, use: FilmUse): string {
  switch (rule) {
    case 'thin-film':
      if (size === 0)
        return `film meets in a point alone and comes apart there when it is weeded or carried; join it by ${mm(limits.minWidth)} or part it by ${mm(limits.minGap)}`;
      return `film is ${place?.kind === 'whole' ? 'nowhere wider than ' : ''}${mm(size)}${place?.kind === 'whole' ? '' : ' wide'}${goingOn(length)}, and less than ${mm(limits.minWidth)} tears when it is weeded or carried; widen it`;
    case 'thin-gap':
      return `a gap is ${mm(size)} wide${goingOn(length)}, and a blade opens none under ${mm(limits.minGap)}; widen it`;
    case 'small-piece':
      return `a piece of ${underLimit(size, limits.minPiece)} is under the ${squareMm(limits.minPiece)} that hold on to the backing and the wall${use === 'mask' ? ', and in a spray' : ''}; make it larger`;
    case 'sharp':
      return `a point of ${degrees(size).toFixed(1)} degrees is narrower than ${mm(limits.minWidth)}${goingOn(length)} and lifts; make it blunter than ${degrees(limits.minAngle).toFixed(0)} degrees`;
  }
}

/** Of a point the angle is told in degrees. */
const shownSize = ({ rule, size }: LayerFault): number => (rule === 'sharp' ? degrees(size) : size);

export const filmFinding = (fault: LayerFault, where: Where, limits: CutLimits, use: FilmUse): Finding => ({
  rule: fault.rule,
  level: 'look',
  where,
  size: shownSize(fault),
  length: fault.length,
  layer: fault.layer,
  says: filmWords(fault, limits, use),
});

function drawnWords(fault: DrawnFault, limits: CutLimits): string {
  const { rule, size, line, other, nearest, count = 0, apart = precision } = fault;
  switch (rule) {
    case 'stroke-without-area':
      return `is a stroke ${formatLength(size, 'mm')} wide: an edge for a blade to follow, and no area of film; fill the shape, or give the stroke a width that film can stand (${mm(limits.minWidth)})`;
    case 'open-line':
      return `is open, its ends ${mm(size)} apart${nearest === undefined ? '' : `, and the end of another line lies ${mm(nearest)} away`}; cut as drawn, nothing comes out of it: close it`;
    case 'doubled-line':
      return `runs along another line of ${line.colour} for ${about(size)}; cut as drawn, the blade goes there twice: delete one of the two or unite them`;
    case 'self-crossing':
      return `crosses itself ${size === 1 ? 'once' : `${size} times`}; cut as drawn, it falls into pieces: unite it in your drawing program`;
    case 'close-nodes':
      return `has ${count} nodes closer to the next than the cutter's step of ${mm(limits.step)}, the closest ${formatLength(size, 'mm')}; simplify the line`;
    case 'layer-edges':
      return `edges of ${line.colour} and ${other?.colour ?? line.colour} ${apart <= precision ? 'lie on one another' : `run within ${mm(apart)} of one another`} for ${about(size)}; laid by hand a bare line will show between them, so let the lower one run under the upper`;
  }
}

export const drawnFinding = (fault: DrawnFault, where: Where, limits: CutLimits): Finding => ({
  rule: fault.rule,
  level: levelOf(fault.rule),
  where: { ...where, ...(fault.line.id === undefined ? {} : { element: fault.line.id }) },
  size: fault.size,
  layer: fault.line.colour,
  says: drawnWords(fault, limits),
});

const levelOf = (rule: DrawnFault['rule']): Level => (rule === 'close-nodes' ? 'note' : 'look');
