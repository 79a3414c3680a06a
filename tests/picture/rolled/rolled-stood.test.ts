// A vessel that stands on its lip: where its film is seen, by the elementary orthographic projection of a body turned over.
import { expect, it } from 'vitest';
import { tightBox } from '../../../src/geometry/measure.ts';
import { profilePicture } from '../../../src/picture/profile/profile-picture.ts';
import { rolledPicture } from '../../../src/picture/rolled/rolled.ts';
import { aVessel, film, shown, square, type View } from '../a-vessel.ts';

const elevation = (10 * Math.PI) / 180;
const R = 40;
const length = 120;
const can = aVessel({ footRadius: R, halfAngle: 0, length, band: { from: 10, to: 110 } });
const onLip = { ...can, standsOnLip: true };

const boxOf = (vessel: typeof onLip, turn: number, view: View) =>
  tightBox(shown(rolledPicture(film([[square(can, turn, 30, 4)]]), vessel), view).flat());

// Half a turn about a level axis: heights count from the lip, and what was right of the facing turn is left of it.
it.each([
  {
    says: 'a twelfth of a turn right of the front is seen left of it',
    turn: 0.5 + 1 / 12,
    view: 'front',
    angle: -Math.PI / 6,
  },
  { says: 'a quarter of a turn from the seam is right of the front', turn: 0.25, view: 'right', angle: 0 },
  { says: 'a twentieth past the seam is left of it', turn: 0.05, view: 'seam', angle: -Math.PI / 10 },
] as const)('$says, and as far from the lip as it is high', ({ turn, view, angle }) => {
  const { minX, maxX, minY, maxY } = boxOf(onLip, turn, view);
  const half = 2 / R;
  expect(minX).toBeCloseTo(R * Math.sin(angle - half), 1.6);
  expect(maxX).toBeCloseTo(R * Math.sin(angle + half), 1.6);
  // The square is 28 to 32 mm high: 88 to 92 mm above the lip that it stands on.
  const lower =
    R * Math.cos(Math.max(0, Math.abs(angle) - half)) * Math.sin(elevation) - 88 * Math.cos(elevation);
  const upper = R * Math.cos(Math.abs(angle) + half) * Math.sin(elevation) - 92 * Math.cos(elevation);
  expect(maxY).toBeCloseTo(lower, 1.5);
  expect(minY).toBeCloseTo(upper, 1.5);
});

it('shows its foot and not its inside, and says so', () => {
  const asked: string[] = [];
  const picture = rolledPicture(film([]), onLip, (text) => {
    asked.push(text);
    return [];
  });
  expect(picture).not.toContain('url(#inside)"');
  expect(rolledPicture(film([]), can)).toContain('url(#inside)"');
  expect(asked).toContain('on its lip');
});

it('names the end that lies on top, whose edge is drawn in full', () => {
  const asked: string[] = [];
  const names = (text: string) => {
    asked.push(text);
    return [];
  };
  const dotted = /data-role="overlap"[^>]*stroke-dasharray/;
  expect(rolledPicture(film([]), can, names)).not.toMatch(dotted);
  expect(asked).toContain('finish on top');
  expect(rolledPicture(film([]), { ...can, top: 'start' }, names)).toMatch(dotted);
  expect(asked).toContain('start on top');
});

it('is drawn on its lip in section too: what is turned over are the lines, not the words', () => {
  const rings = [
    { along: 0, radius: 30, height: 0, lean: 0 },
    { along: 80, radius: 30, height: 80, lean: 0 },
  ];
  const subject = {
    name: 'can',
    rings,
    footRound: 0,
    lipRound: 0,
    stations: [],
    flatBands: [],
    hasHandle: false,
    keepOuts: [],
    notes: [],
  };
  const put = (text: string, at: { x: number; y: number }) => ({
    text: `<words>${text}</words>\n`,
    box: { minX: at.x, maxX: at.x + 5, minY: at.y - 2, maxY: at.y + 1 },
  });
  const picture = profilePicture({ ...subject, standsOnLip: true }, 'mm', put);
  // The foot at y = 0 comes to stand where the lip was, 80 mm up.
  expect(picture).toContain('translate(0 -80) scale(1 -1)');
  const turned = picture.match(/<g transform="matrix\(1 0 0 -1 0 [^)]*\)"><words>/g) ?? [];
  // All words but the title, which stands outside.
  expect(turned).toHaveLength((picture.match(/<words>/g) ?? []).length - 1);
  expect(turned.length).toBeGreaterThan(3);
  expect(profilePicture(subject, 'mm', put)).not.toContain('scale(1 -1)');
});
