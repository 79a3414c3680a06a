// Colours stacked as layers keep one order each; a drawing that paints a colour again, over another, has more.
import { type Finding, look } from '../finding.ts';
import type { Box } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';

/** One painted thing: its colour, and a box around it, mm. */
export interface PaintedBox {
  readonly colour: string;
  readonly box: Box;
}

/**
 * A finding where a colour is painted over another that is stacked above it: layers go on in the order in which their
 * colours first appear, so there the vessel will not look like the drawing. Boxes only: it may ask once too often.
 */
export function paintingOrderFindings(painted: readonly PaintedBox[], file: string): Finding[] {
  const rank = new Map<string, number>();
  for (const { colour } of painted) if (!rank.has(colour)) rank.set(colour, rank.size);
  if (rank.size < 2) return [];
  const rankOf = (item: PaintedBox | undefined): number => rank.get(item?.colour ?? '') ?? 0;
  const index = new BoxIndex(painted.length, (add) => {
    for (const { box } of painted) add(box.minX, box.minY, box.maxX, box.maxY);
  });
  const said = new Set<string>();
  const found: Finding[] = [];
  painted.forEach((item, i) => {
    const { minX, minY, maxX, maxY } = item.box;
    const below = index
      .meeting(minX, minY, maxX, maxY)
      .find((earlier) => earlier < i && rankOf(painted[earlier]) > rankOf(item));
    const under = below === undefined ? undefined : painted[below];
    const pair = under && `${item.colour} ${under.colour}`;
    if (!under || !pair || said.has(pair)) return;
    said.add(pair);
    found.push(
      look(
        'painting-order',
        { file, x: item.box.minX, y: item.box.minY },
        `paints ${item.colour} over ${under.colour}, but as layers ${under.colour} lies over ${item.colour}; give what lies on top a colour of its own`,
      ),
    );
  });
  return found;
}
