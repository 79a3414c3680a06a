// The instances as the nesting takes them, with the best fill published for each.
import type { Nest } from '../../../src/sheet/nest.ts';
import type { NestPiece } from '../../../src/sheet/nest-board.ts';
import values from './values.json' with { type: 'json' };

interface Restated {
  readonly bestFill: number;
  readonly name: string;
  readonly stripHeight: number;
  readonly pieces: readonly {
    readonly count: number;
    readonly turns: readonly number[];
    readonly points: readonly (readonly number[])[];
  }[];
}

export interface Instance {
  readonly name: string;
  readonly height: number;
  readonly kinds: readonly NestPiece[];
  /** The sum of all pieces' areas. */
  readonly area: number;
  /** Best published share of the strip's used length. */
  readonly bestFill: number;
}

const areaOf = (outline: NestPiece['outline']): number =>
  Math.abs(
    outline.reduce((sum, p, i) => {
      const q = outline[(i + 1) % outline.length] ?? p;
      return sum + (p.x * q.y - p.y * q.x) / 2;
    }, 0),
  );

function instance({ name, stripHeight, pieces, bestFill }: Restated): Instance {
  const kinds = pieces.map(({ count, turns, points }) => ({
    count,
    turns: turns.map((turn) => (turn * Math.PI) / 180),
    outline: points.slice(0, -1).map(([x = 0, y = 0]) => ({ x, y })),
  }));
  const area = kinds.reduce((sum, { count, outline }) => sum + count * areaOf(outline), 0);
  return { name, height: stripHeight, kinds, area, bestFill };
}

export const instances: readonly Instance[] = values.map(instance);

/** The share of the strip's used length that pieces take. */
export const fillOf = ({ area, height }: Instance, { lastUsed }: Nest): number => area / (lastUsed * height);
