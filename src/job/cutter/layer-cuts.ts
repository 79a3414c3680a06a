// A cut file for each layer: its art, the outline, and register marks that all of them share with the guide.
import { readSvg } from '../../deliver/read-svg.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import type { LayerCut, WrittenPiece } from '../deliverables.ts';
import { cutsEach, type Job } from '../typed/resolved-job.ts';
import { forCutter } from './machine-files.ts';

/** A layer's name as part of a file's: what any system takes. */
const safeName = (layer: string): string =>
  layer
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '') || 'layer';

/**
 * A piece with a cut file for each of its layers where the job asks for that and there is art; all in the coordinates of its guide,
 * with the guide's crosses and quarter-turn ticks, which stand clear of the art. Its squares lie beside the page, and its lines across the film
 * that pieces are laid by, which have names, go through the art: a blade takes neither.
 */
export function withLayerCuts<P extends WrittenPiece>(
  piece: P,
  job: Pick<Job, 'layers' | 'name' | 'cutter'>,
): P {
  if (!cutsEach(job)) return piece;
  const { stem, cut, guide } = piece;
  const drawing = readSvg(cut, `${stem}.cut.svg`);
  const art = drawing.groups.filter(({ role, paths }) => role === 'artwork' && paths.length > 0);
  if (art.length === 0) return piece;
  const rest = drawing.groups.filter(({ role }) => role !== 'artwork');
  const marks = readSvg(guide, `${stem}.guide.svg`, ['register'])
    .groups.filter(({ role, apart }) => role === 'register' && !apart)
    .map((group) => ({ ...group, paths: group.paths.filter(({ id }) => id === undefined) }));
  const taken = new Set<string>();
  const layers = art.map((group): LayerCut => {
    const layer = group.layer ?? '';
    const name = freeName(safeName(ownName(layer, stem)), taken);
    const title = `${job.name}: cut, ${layer}`;
    const text = writeSvg(
      { ...drawing, groups: [group, ...marks, ...rest] },
      { title, filled: false, asRead: true },
    );
    return {
      layer,
      stem: `${stem}-${name}`,
      cut: forCutter({ stem, cut: text, guide }, job.name, job.cutter).cut,
    };
  });
  return { ...piece, layers };
}

/** A motif's layer in the motif's own files goes without the motif's name. */
const ownName = (layer: string, stem: string): string =>
  layer.startsWith(`${stem} `) ? layer.slice(stem.length + 1) : layer === stem ? 'film' : layer;

function freeName(name: string, taken: Set<string>): string {
  let free = name;
  for (let i = 2; taken.has(free); i++) free = `${name}-${i}`;
  taken.add(free);
  return free;
}
