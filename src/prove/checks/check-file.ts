// Is each file plain paths in mm, whole, and its shapes closed?
import { atMost, type Check } from '../check.ts';
import type { ReadPiece } from '../written/piece.ts';

export function fileChecks(pieces: readonly ReadPiece[]): Check[] {
  const faults = pieces.flatMap(({ cut, guide, faults: unread }) => [
    ...cut.faults.map((fault) => `${cut.name}: ${fault}`),
    ...guide.faults.map((fault) => `${guide.name}: ${fault}`),
    ...unread,
  ]);
  const open = pieces.flatMap(({ outline, layers }) =>
    [...outline, ...layers.flatMap(({ shapes }) => shapes.flat())].filter(({ closed }) => !closed),
  );
  const [first] = faults;
  return [
    atMost({
      rule: 'plain-file',
      value: faults.length,
      limit: 0,
      unit: 'count',
      says: `things in the files that are not plain paths in mm${first === undefined ? '' : `, such as ${first}`}`,
    }),
    atMost({ rule: 'closed', value: open.length, limit: 0, unit: 'count', says: 'cut shapes left open' }),
  ];
}
