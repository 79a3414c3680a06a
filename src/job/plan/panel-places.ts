// Panels by name: which letters their joints carry, and what their files are called.
import type { PanelJoints } from '../../cut/guide/panel-marks.ts';
import { type PanelOptions, panelsOf } from '../../unroll/panel.ts';
import type { Template } from '../../unroll/template.ts';

/** Where a panel stands among those of its piece. */
export interface PanelPlace {
  /** In the order of turns, from 0. */
  readonly index: number;
  readonly count: number;
  /** Letters of the joints at its left and right; none at the outer ends. */
  readonly left?: string;
  readonly right?: string;
  /** The template it is a part of. */
  readonly whole: Template;
}

/** How a band is cut level. */
export interface Levels {
  /** Heights of the cuts, mm along, rising; none where it is not cut. */
  readonly at: readonly number[];
  /** How far each piece goes on past its lip edge, under the one above, mm. */
  readonly overlap: number;
}

/** Both sides of a joint carry the same capital letter; past Z it stands twice. */
const jointLetter = (index: number): string =>
  String.fromCharCode('A'.charCodeAt(0) + (index % 26)).repeat(1 + Math.floor(index / 26));

/** A panel's own letter: small, so that it is not taken for a joint's. */
export const panelLetter = (index: number): string => String.fromCharCode('a'.charCodeAt(0) + index);

/** The panels of a template, each with its place. */
export function panelPlaces(
  whole: Template,
  options: PanelOptions,
): readonly { readonly template: Template; readonly panel: PanelPlace }[] {
  const panels = panelsOf(whole, options);
  return panels.map((template, index) => ({
    template,
    panel: {
      index,
      count: panels.length,
      whole,
      ...(index > 0 ? { left: jointLetter(index - 1) } : {}),
      ...(index < panels.length - 1 ? { right: jointLetter(index) } : {}),
    },
  }));
}

/** Where a part stands among those of its job: which level, counted from the foot, and the panels each level is parted in. */
export interface LevelPlace {
  readonly index: number;
  readonly joints: readonly number[];
  readonly levels: Levels;
}

/** The letters of the level cuts at a part's foot and lip edges: they go on after those of the joints up the wall. */
export function levelLetters({ index, joints, levels }: LevelPlace): {
  readonly foot?: string;
  readonly lip?: string;
} {
  const { length } = levels.at;
  return {
    ...(index > 0 && index <= length ? { foot: jointLetter(joints.length + index - 1) } : {}),
    ...(index < length ? { lip: jointLetter(joints.length + index) } : {}),
  };
}

/** The joints of a part as they are marked. */
export function markedJoints(place: LevelPlace, panel: PanelPlace | undefined): PanelJoints {
  const { overlap } = place.levels;
  const { foot, lip } = levelLetters(place);
  return {
    ...(panel?.left === undefined ? {} : { left: { letter: panel.left, overlap } }),
    ...(panel?.right === undefined ? {} : { right: { letter: panel.right } }),
    ...(foot === undefined ? {} : { foot: { letter: foot, overlap } }),
    ...(lip === undefined ? {} : { lip: { letter: lip } }),
  };
}

/** What a part's files are called after the stem: `1` for a piece from the foot, `a` for a panel, `1-a` for its panel. */
export const markOf = (
  { index, count }: { readonly index: number; readonly count: number },
  panel: PanelPlace | undefined,
): string =>
  [...(count > 1 ? [String(index + 1)] : []), ...(panel ? [panelLetter(panel.index)] : [])].join('-');
