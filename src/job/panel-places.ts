// Panels by name: which letters their joints carry, and what their files are called.
import type { PanelJoints } from '../cut/panel-marks.ts';
import { type PanelOptions, panelsOf } from '../unroll/panel.ts';
import type { Template } from '../unroll/template.ts';
import type { PanelPlace } from './draft.ts';

/** Both sides of the joint after a panel carry the same capital letter. */
const jointLetter = (index: number): string => String.fromCharCode('A'.charCodeAt(0) + index);

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

/** The joints of a panel as they are marked. `overlap`: what panels go on past their joints, mm. */
export const markedJoints = ({ left, right }: PanelPlace, overlap: number): PanelJoints => ({
  ...(left === undefined ? {} : { left: { letter: left, overlap } }),
  ...(right === undefined ? {} : { right: { letter: right } }),
});

/** What a part's files are called after the stem: `1` for a piece from the foot, `a` for a panel, `1-a` for its panel. */
export const markOf = (
  { index, count }: { readonly index: number; readonly count: number },
  panel: PanelPlace | undefined,
): string =>
  [...(count > 1 ? [String(index + 1)] : []), ...(panel ? [panelLetter(panel.index)] : [])].join('-');
