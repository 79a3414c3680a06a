// What report.json tells of the template: the whole, and each part of it that is cut apart.

import { moveContour, rotation } from '../../geometry/affine.ts';
import { tightBox } from '../../geometry/measure.ts';
import { degrees } from '../../lengths/angle.ts';
import { sweep } from '../../unroll/flat-wall.ts';
import { outline, slantRadii, type Template, turnOfEdge } from '../../unroll/template.ts';
import type { Draft } from '../draft.ts';
import type { Plan } from '../plan/plan.ts';
import type { TemplateReport } from '../report.ts';

function templateReport(
  template: Template,
  runOff: number,
  { band, strain }: Pick<Plan, 'band' | 'strain'>,
  turned = 0,
): TemplateReport {
  const { wall, band: onSheet, trim, overlap, shape, seam } = template;
  const middle = (onSheet.from + onSheet.to) / 2;
  const box = tightBox([moveContour(rotation(turned), outline(template))]);
  const radii = slantRadii(template);
  const turns = { from: turnOfEdge(wall, seam.start, middle), to: turnOfEdge(wall, seam.finish, middle) };
  return {
    shape,
    parts: [],
    turns,
    ...(shape === 'sector' ? { innerRadius: radii.inner, outerRadius: radii.outer } : {}),
    sweepDeg: shape === 'sector' ? Math.abs(degrees(sweep(wall))) * (turns.to - turns.from) : 0,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    overlap,
    trim,
    band,
    ...(strain.length === 0 ? {} : { strain: strainReport(strain) }),
    runOff,
  };
}

/** The template of a job's drafts: with parts where there are stacked pieces, panels, or panels of stacked pieces. */
export function templateOfDrafts(drafts: readonly Draft[], runOff: number): TemplateReport {
  const pieces: TemplateReport[] = [];
  for (const { plan, panel, turned } of drafts) {
    const { template } = plan;
    if (!panel) {
      pieces.push(templateReport(template, runOff, plan, turned));
      continue;
    }
    const { index, left, right, whole } = panel;
    if (index === 0) pieces.push(templateReport(whole, runOff, plan));
    const piece = pieces.pop();
    if (!piece) throw new Error('the first panel of a piece comes first');
    const part: TemplateReport = {
      ...templateReport(template, runOff, plan, turned),
      panel: {
        ...(left === undefined ? {} : { left }),
        ...(right === undefined ? {} : { right }),
        turnedDeg: degrees(turned),
      },
    };
    pieces.push({ ...piece, parts: [...piece.parts, part] });
  }
  return wholeTemplate(pieces);
}

/** The template of a whole job: its only piece, or stacked pieces with what they have in common. */
function wholeTemplate(pieces: readonly TemplateReport[]): TemplateReport {
  const [first] = pieces;
  const last = pieces.at(-1);
  if (!first || !last) throw new Error('a template has at least one piece');
  if (pieces.length === 1) return first;
  const most = (of: (piece: TemplateReport) => number) => Math.max(...pieces.map(of));
  return {
    shape: 'stepped',
    parts: pieces,
    turns: first.turns,
    sweepDeg: most(({ sweepDeg }) => sweepDeg),
    width: most(({ width }) => width),
    height: pieces.reduce((sum, { height }) => sum + height, 0),
    overlap: first.overlap,
    trim: { foot: first.trim.foot, lip: last.trim.lip },
    band: { from: first.band.from, to: last.band.to },
    strain: {
      stretch: most(({ strain }) => strain?.stretch ?? 0),
      gathered: most(({ strain }) => strain?.gathered ?? 0),
    },
    runOff: first.runOff,
  };
}

const strainReport = (
  strain: readonly { readonly strain: number }[],
): { stretch: number; gathered: number } => ({
  stretch: Math.max(0, ...strain.map((place) => place.strain)),
  gathered: Math.max(0, ...strain.map((place) => -place.strain)),
});
