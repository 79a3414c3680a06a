// The picture of the finished vessel, drawn from the cut file: front, left, right and the seam.

import { escapeXml } from '../../deliver/write-svg.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { writePathData } from '../../drawing/path-data.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { shifted } from '../../geometry/affine.ts';
import { tightBox } from '../../geometry/measure.ts';
import { lineText, millimetres, runsOf } from '../rolled-path.ts';
import { bodyAbove, bodyBelow, bodyPaints, bodyReach, edgesSeen, levelSeen, ringsOf } from './rolled-body.ts';
import { type Camera, elevationFor, seen } from './rolled-camera.ts';
import { type Film, filmOf, filmPaths, framesOf, levelStep, uncoloured } from './rolled-film.ts';
import { handleDepth, handleSeen } from './rolled-handle.ts';
import { bentLight, type Light, straightLight } from './rolled-light.ts';

import { profileOf, type RoundedProfile } from './rolled-profile.ts';
import { seamText, showsLap, showsSeam } from './rolled-seam.ts';
import { type RolledSheet, sheetOf } from './rolled-sheet.ts';
import { type Sight, sightsOf } from './rolled-sight.ts';
import { bodyAsStood, camerasOf, stretchAsStood } from './rolled-stood.ts';
import { stripSeen } from './rolled-strip.ts';
import { bandLean, isStraight, type RolledVessel, ringAt, rolled } from './rolled-vessel.ts';

/** The four views and the turn that faces the viewer in each. Turn grows to the right, so a quarter turn is on the left. */
const views = [
  { name: 'front', facing: 0.5 },
  { name: 'left', facing: 0.25 },
  { name: 'right', facing: 0.75 },
  { name: 'seam', facing: 0 },
] as const;

const colours = { ground: '#eeedea', caption: '#5b6267', edge: '#10181e' } as const;

/** How far the outlines in a picture may stray: a screen's pixel is larger, mm. */
const coarsest = 0.04;

interface Layout {
  /** mm from the edge of a view to its axis. */
  readonly side: number;
  readonly width: number;
  readonly height: number;
  /** mm from the picture's top to the foot's centre. */
  readonly foot: number;
  /** Height of a caption, and how far its baseline lies below the foot's centre. */
  readonly letters: number;
  readonly baseline: number;
}

function layOut(
  vessel: RolledVessel,
  { profile }: Body,
  camera: Camera,
  { captioned, count }: { readonly captioned: boolean; readonly count: number },
): Layout {
  const { side, up, down } = bodyReach(profile, camera);
  const gap = 0.26 * (side + up / 2);
  const letters = 0.075 * (side + up / 2);
  const half = side + handleDepth(vessel) + gap / 2;
  const baseline = down + gap * 0.6 + letters;
  return {
    side: half,
    width: 2 * half * count + gap,
    height: gap + up + (captioned ? baseline : down) + gap * 0.7,
    foot: gap + up,
    letters,
    baseline,
  };
}

/** What is the same from every side: the body's parts as text, and what is in sight of the band. */
interface Body {
  /** The vessel's body as it stands. */
  readonly stood: RolledVessel;
  readonly profile: RoundedProfile;
  readonly sight: readonly Sight[];
  readonly below: string;
  readonly light: Light;
  readonly edges: string;
  readonly above: string;
}

function bodyOf(vessel: RolledVessel, ends: readonly number[], camera: Camera): Body {
  const stood = bodyAsStood(vessel);
  const profile = profileOf(stood);
  const rings = ringsOf(profile);
  const { from, to } = vessel.band;
  const band = [from, ...ends, to]
    .slice(1)
    .flatMap((end, i) => stretchAsStood(vessel, ends[i - 1] ?? from, end));
  return {
    stood,
    profile,
    sight: sightsOf(band, levelStep(vessel), rings, camera.elevation),
    below: `${bodyBelow(profile, camera)}\n`,
    light: isStraight(vessel) ? straightLight(stood, profile, camera) : bentLight(profile, rings, camera),
    edges: edgesSeen(stood, profile, camera),
    above: `${bodyAbove(stood, profile, camera)}\n`,
  };
}

/**
 * The text of `rolled.svg`: what the finished vessel will look like, at true scale in mm, drawn from a delivered cut
 * file that was read back. Hidden lines are removed; what is trimmed away and what lies past the seam is not shown.
 *
 * Each view is a group with `data-view`, its origin at the foot's centre; in it each layer of film is a group with
 * `data-layer`, one path a piece of film, in the file's order. Curves are drawn within 0.04 mm. Same input, same bytes.
 */
export const rolledPicture = (drawing: Drawing, vessel: RolledVessel, caption?: DrawWords): string =>
  rolledSheets([sheetOf(drawing, vessel)], vessel, caption);

/** The same of several pieces that cover the vessel's band together; where they meet is a fine line. */
export function rolledSheets(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  caption?: DrawWords,
): string {
  const { inside, width, height } = rolledInside(sheets, vessel, views, caption);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n` +
    `<title>The finished vessel: front, left, right, seam</title>\n${inside}</svg>\n`
  );
}

/** The vessel's front and seam without a file around them, to stand among others of the same vessel; size in mm. */
export const rolledPair = (sheets: readonly RolledSheet[], vessel: RolledVessel): RolledInside =>
  rolledInside(
    sheets,
    vessel,
    views.filter(({ name }) => name === 'front' || name === 'seam'),
  );

export interface RolledInside {
  readonly inside: string;
  readonly width: string;
  readonly height: string;
}

function rolledInside(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  shown: readonly { readonly name: string; readonly facing: number }[],
  caption?: DrawWords,
): RolledInside {
  const lean = bandLean(vessel);
  const elevation = elevationFor(vessel.standsOnLip ? -lean : lean);
  const body = bodyOf(vessel, levelJoints(sheets), { facing: 0, elevation });
  const layout = layOut(
    vessel,
    body,
    { facing: 0, elevation },
    { captioned: caption !== undefined, count: shown.length },
  );
  const tolerance = Math.min(coarsest, layout.height / 4000);
  const films = filmOf(sheets, vessel, tolerance);
  const [width, height] = [millimetres(layout.width), millimetres(layout.height)];
  const drawn = shown.map(({ name, facing: upright }, i) => {
    const x = layout.width / 2 + (i - (shown.length - 1) / 2) * 2 * layout.side;
    // Turned over, turns grow to the left.
    const facing = vessel.standsOnLip ? (1 - upright) % 1 : upright;
    const view = viewText({ sheets, films }, vessel, body, { facing, elevation }, tolerance);
    const words = caption === undefined ? '' : captionText(name, vessel, caption, layout);
    return `<g data-view="${name}" transform="translate(${millimetres(x)} ${millimetres(layout.foot)})">\n${view}${words}</g>\n`;
  });
  const inside =
    `<defs>${bodyPaints}${body.light.paints}</defs>\n` +
    `<rect width="${width}" height="${height}" fill="${colours.ground}"/>\n${drawn.join('')}`;
  return { inside, width, height };
}

/** Heights at which one piece ends and the next goes on, from the foot up. */
const levelJoints = (sheets: readonly RolledSheet[]): readonly number[] =>
  [...new Set(sheets.map(({ band }) => band.from))].sort((a, b) => a - b).slice(1);

/** What lies on the vessel. */
interface Laid {
  readonly sheets: readonly RolledSheet[];
  readonly films: readonly Film[];
}

function viewText(
  { sheets, films }: Laid,
  vessel: RolledVessel,
  body: Body,
  towards: Camera,
  tolerance: number,
): string {
  const { body: ofBody, wall: camera } = camerasOf(vessel, towards);
  const handle = handleSeen(body.stood, body.profile, ofBody);
  const frames = framesOf(sheets, vessel, body.sight, camera.facing);
  const layers = films.map((film) => {
    const paths = filmPaths(film, frames, vessel, camera, tolerance).map((data) => `<path d="${data}"/>`);
    return `<g data-layer="${escapeXml(film.layer)}" fill="${escapeXml(film.colour)}" fill-rule="evenodd">\n${paths.join('\n')}\n</g>\n`;
  });
  return [
    handle.behind,
    body.below,
    ...layers,
    stripSeen(vessel, body.sight, camera, films[0]?.colour ?? uncoloured),
    body.light.laid,
    body.edges,
    finishedEdges(vessel, body, camera),
    sheets.length > 1 ? jointsText(sheets, vessel, body, camera) : '',
    camera.facing === 0 && showsSeam(vessel) ? seamText(vessel, body.sight, camera) : '',
    body.above,
    handle.before,
  ].join('');
}

/** The ends of the finished band, where the knife takes the trims away: a fine dark line. */
function finishedEdges(vessel: RolledVessel, { sight }: Body, camera: Camera): string {
  const lines = [sight[0], sight.at(-1)].map((end) =>
    end === undefined ? '' : lineText(levelSeen(camera, ringAt(vessel, end.along), end.half)),
  );
  return `<g data-role="trim" fill="none" stroke="${colours.edge}" stroke-opacity=".3" stroke-width=".2">${lines.join('')}</g>\n`;
}

/** Where pieces meet, beside the seam: level lines between stacked ones, lines up the wall between gores. */
function jointsText(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  { sight }: Body,
  camera: Camera,
): string {
  const heights = new Set(levelJoints(sheets));
  const level = sight
    .filter(({ along }, i) => heights.has(along) && sight[i - 1]?.along !== along)
    .map(({ along, half }) => lineText(levelSeen(camera, ringAt(vessel, along), half)));
  const starts = sheets.map(({ band, sidesAt }) => sidesAt(band.from)[0]);
  const first = Math.min(...starts);
  const upright = sheets.flatMap(({ sidesAt }, i) => {
    // Where the first begins is no joint: it is the seam, or bare wall beside a handle.
    if (starts[i] === first || heights.size > 0) return [];
    const places = sight.map(({ along, half }) => {
      const [turn] = sidesAt(along);
      const away = turn - camera.facing;
      const isSeen = Math.abs(away - Math.round(away)) <= half;
      return { at: seen(camera, rolled(vessel, { turn, along })), isSeen };
    });
    return runsOf(places).map(lineText);
  });
  const lines = [...level, ...upright].join('');
  return `<g data-role="joint" fill="none" stroke="${colours.edge}" stroke-opacity=".45" stroke-width=".25">${lines}</g>\n`;
}

/** What stands under the middle of a view: its name, and smaller what has to be known of it. */
function captionText(
  name: string,
  vessel: RolledVessel,
  caption: DrawWords,
  { letters, baseline }: Layout,
): string {
  const more = captionMore(name, vessel);
  const lines = [
    { words: caption(name, letters), y: baseline },
    ...(more === undefined ? [] : [{ words: caption(more, 0.75 * letters), y: baseline + 1.2 * letters }]),
  ];
  return lines
    .filter(({ words }) => words.length > 0)
    .map(({ words, y }) => {
      const box = tightBox(words);
      const data = writePathData(shifted(words, { x: -(box.minX + box.maxX) / 2, y }));
      return `<path data-role="caption" fill="${colours.caption}" d="${data}"/>\n`;
    })
    .join('');
}

/** Which end lies on top at the seam, and that the vessel is turned over. */
function captionMore(name: string, vessel: RolledVessel): string | undefined {
  if (name === 'seam' && showsLap(vessel)) return `${vessel.top ?? 'finish'} on top`;
  return name === 'front' && vessel.standsOnLip ? 'on its lip' : undefined;
}
