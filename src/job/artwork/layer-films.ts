// The layers of a job as its films: stacked or knocked out, grown under one another, with an underlay and a backing.
import { type FilmStackOptions, filmStack, stackReach } from '../../cut/films/film-stack.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { layOut } from '../../pattern/lattice/closing.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { workedTile } from '../../pattern/period/worked-tile.ts';
import type { PatternPlan } from '../closing/pattern-plan.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import type { Job, Layers } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** The colours of a job from the lowest layer up, as far as it names them. */
export const orderOf = ({ layers }: Pick<Job, 'layers'>): { readonly order?: readonly string[] } =>
  layers?.order ? { order: layers.order.map(({ colour }) => colour) } : {};

function optionsOf(layers: Layers, isBackingFilled: boolean): FilmStackOptions {
  const { order = [], style, spread, underlay, backing } = layers;
  return {
    style,
    spread: (layer) => order.find(({ colour }) => colour === layer)?.spread ?? spread,
    isBackingFilled,
    ...(underlay ? { underlay } : {}),
    ...(backing ? { backing } : {}),
  };
}

/** Whether a job's films are to be other than its drawings. */
const changesFilms = ({ order = [], style, spread, underlay, backing }: Layers): boolean =>
  style === 'knocked-out' ||
  underlay !== undefined ||
  backing !== undefined ||
  [spread, ...order.map((layer) => layer.spread ?? 0)].some((by) => by !== 0);

/** A pattern whose tile has the job's films for its layers: worked out at the size it has at the middle of the band. */
export function withFilms(plan: PatternPlan, layers: Layers | undefined): PatternPlan {
  if (!layers || !changesFilms(layers)) return plan;
  const { tile, lattice, closing, lay } = plan;
  const options = optionsOf(layers, false);
  // Whole motifs are laid at their drawn size.
  const size = lay === 'rigid' ? { ...closing, scaleAcross: 1, scaleUp: 1 } : closing;
  const names = tile.layers.map(({ name }) => name);
  return {
    ...plan,
    tile: workedTile(tile, lattice, {
      toSize: layOut(size, tile.height),
      reach: stackReach(names, options),
      work: (drawn) => filmStack(drawn, options),
    }),
  };
}

/** The films of a single motif, at its size on the sheet. */
export const motifFilms = (drawn: readonly WrapLayer[], layers: Layers | undefined): readonly WrapLayer[] =>
  layers && changesFilms(layers) ? filmStack(drawn, optionsOf(layers, true)) : drawn;

/** What a taper makes of a spread, told where it comes to more than rounding. */
const spreadTold = 0.01;

/** What is to be known of films that are spread over a taper. */
export function filmFindings(
  { layers }: Pick<Job, 'layers'>,
  { lay }: PatternPlan,
  { girth, ends }: PatternGround,
  file: TypedIn,
): readonly Finding[] {
  if (!layers || lay === 'rigid') return [];
  const { spread, order = [], underlay } = layers;
  const most = [spread, underlay?.choke ?? 0, ...order.map((layer) => layer.spread ?? 0)].reduce(
    (max, by) => Math.max(max, Math.abs(by)),
    0,
  );
  const [foot, lip] = [ends.foot, ends.lip].map((end) => (most * end) / girth) as [number, number];
  if (Math.max(Math.abs(foot - most), Math.abs(lip - most)) < spreadTold) return [];
  const says = `${inMm(most)} holds at the middle of the band; around the wall it comes to ${inMm(foot)} at the foot edge and ${inMm(lip)} at the lip edge, for the pattern widens with the wall`;
  return [note('spread-on-taper', typedAt(file, 'layers.spread'), says)];
}

/** @throws Refused where the job names a colour that none of its drawings has. */
export function refuseUnknownLayers(
  { layers }: Pick<Job, 'layers'>,
  colours: readonly string[],
  file: TypedIn,
): void {
  const unknown = (layers?.order ?? []).flatMap(({ colour }, i) =>
    colours.includes(colour) ? [] : [{ colour, key: `layers.order[${i}]` }],
  );
  if (unknown.length === 0) return;
  const known = [...new Set(colours)].map(shown).join(', ');
  throw new Refused(
    unknown.map(({ colour, key }) =>
      stop(
        'no-such-layer',
        typedAt(file, key),
        `${shown(colour)} is no colour of this job's drawings; ${known === '' ? 'they have none' : `they have ${known}`}; take it out of "order"`,
      ),
    ),
  );
}
