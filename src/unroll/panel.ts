// Panels: a template in parts side by side, each a template of its own on the same flat wall.
import type { SideEdge, Template } from './template.ts';

export interface PanelOptions {
  /** Turns of the joints, rising, strictly between the two finished sides. */
  readonly joints: readonly number[];
  /** Extra past each joint, the same width from foot to lip, mm; the next panel lies over or under it. */
  readonly overlap: number;
}

/**
 * The panels of a template, in the order of their turns. A joint is a line up the wall: the panel before it goes on past
 * it by the overlap, along an edge parallel to it, and the panel after it begins there. The outer two keep the
 * template's own sides.
 */
export function panelsOf(template: Template, { joints, overlap }: PanelOptions): readonly Template[] {
  const { seam, left, right } = template;
  const at = (turn: number): SideEdge => ({ turn, offset: 0 });
  const starts = [seam.start, ...joints.map(at)];
  return starts.map((start, i): Template => {
    const joint = joints[i];
    const side = i === 0 ? left : start;
    if (joint === undefined) return { ...template, left: side, seam: { start, finish: seam.finish }, right };
    const finish = at(joint);
    return {
      ...template,
      overlap,
      left: side,
      seam: { start, finish },
      right: { turn: joint, offset: overlap },
    };
  });
}
