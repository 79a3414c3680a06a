// Layers and collars of one job in register: a layer's quarter-turn ticks lie at the turns of the collar's plumb lines.
// Truth: on a cone laid flat every line up the wall runs through the cone's point, and turns are angles there in
// proportion (development of a cone, any handbook of sheet metal work, e.g. Longfield 1921; see tests/outside/longfield-1921).
// The point is where the drawn seam lines cross: nothing of the unrolling is used.
import { expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import { cross, distance, type Point, subtract } from '../../src/geometry/point.ts';
import { expectAtMost } from '../closeness.ts';
import { folderOf } from './a-folder.ts';

const [sea, sand] = ['#17566b', '#d8b26a'];
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><path d="M4 8H36V22H4Z" fill="${sea}"/><circle cx="20" cy="15" r="5" fill="${sand}"/></svg>`;
const turns = [0, 0.25, 0.5, 0.75, 1];

interface Line {
  readonly from: Point;
  readonly to: Point;
}

const lineOf = (contour: Contour | undefined): Line => {
  const [from, to] = [contour?.segments[0]?.from, contour?.segments.at(-1)?.to];
  if (!from || !to) throw new Error('no line');
  return { from, to };
};

/** Where two endless lines cross. */
function meeting(a: Line, b: Line): Point {
  const [d, e] = [subtract(a.to, a.from), subtract(b.to, b.from)];
  const t = cross(subtract(b.from, a.from), e) / cross(d, e);
  return { x: a.from.x + t * d.x, y: a.from.y + t * d.y };
}

const paths = (text: string, role: string) =>
  readSvg(text, 'x', ['seam', 'register', 'trim'])
    .groups.filter((group) => group.role === role)
    .flatMap((group) => group.paths);

/** Turns of the register lines that run towards the cone's point, and how far each is from it, mm. */
function ticksOf(text: string, seams: string, suffix = '') {
  const seam = (id: string) =>
    lineOf(paths(seams, 'seam').find((path) => path.id === `${id}${suffix}`)?.contours[0]);
  const [start, finish] = [seam('seam-start'), seam('seam-finish')];
  const point = meeting(start, finish);
  const angleOf = ({ x, y }: Point) => Math.atan2(y - point.y, x - point.x);
  const from = angleOf(start.from);
  const between = (angle: number) => Math.atan2(Math.sin(angle - from), Math.cos(angle - from));
  const whole = between(angleOf(finish.from));
  return paths(text, 'register')
    .flatMap(({ contours }) => contours.map(lineOf))
    .map(({ from: a, to: b }) => ({
      turns: [a, b].map((p) => between(angleOf(p)) / whole),
      far: distance(a, point),
    }))
    .filter((line) => Math.abs((line.turns[0] ?? 0) - (line.turns[1] ?? 1)) < 1e-4);
}

test('the ticks of every layer stand at the turns of the collar, within a hundredth of a mm of wall', async () => {
  const { report, texts, failed } = await folderOf({
    blank: {
      use: 'other',
      stations: [
        { height: 0, across: 62 },
        { height: 90, across: 74 },
      ],
    },
    job: {
      band: { from: 15, to: 55 },
      coats: [{ name: 'base', thickness: 0.3 }],
      film: { thickness: 0.1 },
      layers: { spread: 0.3, files: 'each' },
      collars: {},
    },
    tile,
    artwork: { around: 6 },
  });
  expect(failed()).toEqual([]);
  const guide = texts['wrap.guide.svg'] ?? '';
  const layers = (report.files ?? []).filter(({ layer }) => layer).flatMap(({ file }) => texts[file] ?? []);
  const collars = Object.keys(texts).filter((file) => /^collar.*guide\.svg$/.test(file));
  expect([layers.length, collars.length]).toEqual([2, 2]);
  const onCollar = collars.map((file) => ticksOf(texts[file] ?? '', texts[file] ?? ''));

  const girth = Math.PI * 74;
  const off = (turn: number, wanted: number) => Math.abs(turn - wanted) * girth;
  for (const layer of layers) {
    const ticks = ticksOf(layer, guide);
    for (const turn of turns) {
      const own = ticks.filter((line) => line.turns.every((one) => off(one, turn) < 1));
      // One past the lip edge and one past the foot edge, where the piece goes to that turn.
      expect(own.length).toBeGreaterThanOrEqual(1);
      for (const line of own) for (const one of line.turns) expectAtMost(off(one, turn), 0.01);
    }
  }
  // A collar has the plumb lines of the quarters; the seam is its ends.
  for (const ticks of onCollar)
    for (const turn of [0.25, 0.5, 0.75]) {
      const own = ticks.filter((line) => line.turns.every((one) => off(one, turn) < 1));
      expect(own).toHaveLength(1);
      for (const one of own[0]?.turns ?? []) expectAtMost(off(one, turn), 0.01);
    }
});
