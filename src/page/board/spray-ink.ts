// Sprays on the flat drawing: their colours blended up the wall, as the vessel shows them.
import { blendedAt } from '../../job/view/blended-colour.ts';
import { type FlatPlace, levelCentre, onGuide } from '../../job/view/flat-place.ts';

type Band = FlatPlace['band'];

/** Colours from foot to lip, and from where to where up the wall they are blended. */
export interface Spray {
  readonly colours: readonly string[];
  readonly over: Band;
}

/** A canvas mixes two colours in a way of its own; between so many to a colour that shows no more. */
const stops = 8;

const blended = (gradient: CanvasGradient, colours: readonly string[], shareAt: (at: number) => number) => {
  const count = stops * Math.max(1, colours.length - 1);
  for (let i = 0; i <= count; i++) gradient.addColorStop(i / count, blendedAt(colours, shareAt(i / count)));
  return gradient;
};

/**
 * What a canvas fills a spray on gores with: straight from the foot's side of their drawing to the lip's. Each gore lies along its middle line,
 * where that is their height up the wall; towards its sides levels rise by what a gore's edge is longer than its middle.
 */
export function goreSprayInk(
  ink: Pick<CanvasRenderingContext2D, 'createLinearGradient'>,
  { minY, maxY }: { readonly minY: number; readonly maxY: number },
  { colours }: Pick<Spray, 'colours'>,
): CanvasGradient {
  return blended(ink.createLinearGradient(0, maxY, 0, minY), colours, (at) => at);
}

/** What a canvas fills a piece's spray with, in the piece's own mm: around its point for a cone, straight for a cylinder. */
export function sprayInk(
  ink: Pick<CanvasRenderingContext2D, 'createLinearGradient' | 'createRadialGradient'>,
  place: FlatPlace,
  { colours, over }: Spray,
): CanvasGradient {
  const { from, to } = place.band;
  const [foot, lip] = [onGuide(place, { turn: 0.5, along: from }), onGuide(place, { turn: 0.5, along: to })];
  const centre = levelCentre(place);
  const off = (end: typeof foot): number => (centre ? Math.hypot(end.x - centre.x, end.y - centre.y) : 0);
  const [inner, outer] = [Math.min(off(foot), off(lip)), Math.max(off(foot), off(lip))];
  const gradient = centre
    ? ink.createRadialGradient(centre.x, centre.y, inner, centre.x, centre.y, outer)
    : ink.createLinearGradient(foot.x, foot.y, lip.x, lip.y);
  const isLipFirst = off(foot) > off(lip);
  return blended(gradient, colours, (at) => {
    const along = from + (to - from) * (isLipFirst ? 1 - at : at);
    return (along - over.from) / (over.to - over.from);
  });
}
