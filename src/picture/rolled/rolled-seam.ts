// The seam as it is seen: the line where the two ends meet, the film that lies doubled, and which end is on top.
import { turnOfEdge } from '../../unroll/template.ts';
import { lineText, picturePath, runsOf } from '../rolled-path.ts';
import { type Camera, seen } from './rolled-camera.ts';
import type { Sight } from './rolled-sight.ts';
import { type RolledVessel, rolled, sidesAt } from './rolled-vessel.ts';

const colours = { edge: '#10181e', seam: '#8a2f6b' } as const;

/** Whether the seam is in sight: under no strip, and not at a handle. */
export const showsSeam = ({ strip, covers, seam }: RolledVessel): boolean =>
  strip === undefined && !covers?.turns.includes(0) && seam.start.offset === seam.finish.offset;

/** Whether one end is seen to lie over the other. */
export const showsLap = (vessel: RolledVessel): boolean => showsSeam(vessel) && vessel.overlap > 0;

/**
 * The line where the two ends meet, dashed; where they lap, what lies doubled a little darker, the edge that stays on
 * top in full and the one under it dotted. With the start on top its edge is the seam line itself.
 */
export function seamText(vessel: RolledVessel, sight: readonly Sight[], camera: Camera): string {
  const { finish } = vessel.seam;
  const places = (offset: number) =>
    sight.map(({ along, half }) => {
      const turn =
        offset === 0
          ? sidesAt(vessel, along)[1]
          : turnOfEdge(vessel.wall, { ...finish, offset: finish.offset + offset }, along);
      const within = Math.max(1 - half, Math.min(1 + half, turn));
      return { at: seen(camera, rolled(vessel, { turn: within, along })), isSeen: within === turn };
    });
  const seamLine = runsOf(places(0)).map(lineText).join('');
  const lap = vessel.overlap > 0 ? lapText(vessel, places(0), places(vessel.overlap)) : '';
  const halo = `<g fill="none" stroke="#fff" stroke-opacity=".75" stroke-width=".8">${seamLine}</g>\n`;
  const dashes = `<g data-role="seam" fill="none" stroke="${colours.seam}" stroke-width=".45" stroke-dasharray="2.4 1.6">${seamLine}</g>\n`;
  return lap + halo + dashes;
}

type Places = Parameters<typeof runsOf>[0];

function lapText({ top = 'finish' }: RolledVessel, start: Places, finish: Places): string {
  const area = [...start, ...[...finish].reverse()].map(({ at }) => at);
  const edge = (places: Places, role: string, dashes: string) =>
    `<g data-role="${role}" fill="none" stroke="${colours.edge}" stroke-opacity=".6" stroke-width=".3"${dashes}>${runsOf(places).map(lineText).join('')}</g>\n`;
  return (
    `<path data-role="doubled" fill="${colours.edge}" fill-opacity=".14" d="${picturePath(area, true)}"/>\n` +
    (top === 'finish'
      ? edge(finish, 'overlap', '')
      : edge(finish, 'overlap', ' stroke-dasharray=".5 .9" stroke-linecap="round"') +
        edge(start, 'top-edge', ''))
  );
}
