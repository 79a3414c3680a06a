import { describe, expect, test } from 'vitest';
import { climbUncertainty, paperMiss } from '../../src/blank/paper-miss.ts';
import { expectWithin } from '../closeness.ts';
import { wrapPaper } from './rolled-paper.ts';

const band = { from: 6, to: 140 };

describe('a template wrapped on a cone', () => {
  // Truth: geodesics of the cone marched in space, rolled-paper.ts; no development of the true cone.
  test.each([
    ['a little too small all over', { radius: 31, lean: 0.08 }, { radius: 31.4, lean: 0.08 }],
    ['too upright', { radius: 31, lean: 0.07 }, { radius: 31, lean: 0.08 }],
    ['made as a cylinder', { radius: 35, lean: 0 }, { radius: 34, lean: 0.02 }],
    ['wrapped on a cylinder', { radius: 35, lean: 0.03 }, { radius: 36, lean: 0 }],
    ['wider at the foot', { radius: 60, lean: -0.11 }, { radius: 59.5, lean: -0.1 }],
    ['the wrong way round', { radius: 40, lean: 0.02 }, { radius: 42, lean: -0.02 }],
    ['steep', { radius: 60, lean: 0.4 }, { radius: 60.5, lean: 0.39 }],
  ])('misses by what paper laid along geodesics misses by: %s', (_, made, truth) => {
    const fit = { template: { radius: made.radius, halfAngle: made.lean }, band, paper: 0.1 };
    const got = paperMiss(fit, { radius: truth.radius, halfAngle: truth.lean });
    const wanted = wrapPaper(made, band, 0.1, truth);
    expectWithin(got.foot, wanted.foot, 1e-6, 'foot');
    expectWithin(got.lip, wanted.lip, 1e-6, 'lip');
    expectWithin(got.climb, wanted.climb, 1e-6, 'climb');
  });

  test.each([0, 1e-12, 0.08, -0.3, 0.9])(
    'made for this very cone closes to the last digits: lean %d',
    (halfAngle) => {
      const cone = { radius: 80, halfAngle };
      const { foot, lip, climb } = paperMiss({ template: cone, band: { from: 6, to: 80 }, paper: 0.1 }, cone);
      expect(Math.max(Math.abs(foot), Math.abs(lip), Math.abs(climb))).toBeLessThan(1e-10);
    },
  );

  // The ring of the template and that of the true cone by plain trigonometry from their two apexes, on one start line.
  test('a sweep of over half a turn is followed all the way round', () => {
    const template = { radius: 80, halfAngle: 0.7 };
    const cone = { radius: 81, halfAngle: 0.71 };
    const got = paperMiss({ template, band, paper: 0 }, cone);
    const slant = ({ radius, halfAngle }: typeof cone, along: number) => radius / Math.sin(halfAngle) + along;
    const sweep = 2 * Math.PI * Math.sin(template.halfAngle);
    const apart = slant(cone, 0) - slant(template, 0);
    const missed = [band.from, band.to].map((along) => {
      const x = slant(template, along) * Math.sin(sweep);
      const y = slant(template, along) * Math.cos(sweep) + apart;
      const turned = Math.atan2(x, y) + 2 * Math.PI;
      return (2 * Math.PI * Math.sin(cone.halfAngle) - turned) * Math.hypot(x, y);
    });
    expectWithin(got.foot, missed[0] ?? 0, 1e-9);
    expectWithin(got.lip, missed[1] ?? 0, 1e-9);
  });

  test('no lean is lost between a cylinder and a cone of a billionth', () => {
    const at = (lean: number) =>
      paperMiss(
        { template: { radius: 40, halfAngle: 0 }, band, paper: 0.1 },
        { radius: 40.2, halfAngle: lean },
      );
    for (const lean of [1e-9, -1e-9, 1e-12]) {
      expectWithin(at(lean).lip, at(0).lip, 1e-5);
      expectWithin(at(lean).climb, at(0).climb, 1e-5);
    }
    expectWithin(at(0).foot, 2 * Math.PI * 0.2, 1e-12);
  });

  test('a climb is read less surely on a narrow band, where the start line is hard to lay true', () => {
    const of = (to: number) =>
      climbUncertainty(
        {
          foot: 0,
          lip: 0,
          band: { from: 0, to },
          paper: 0.1,
          reading: 0.5,
          template: { radius: 40, halfAngle: 0 },
          replaces: true,
        },
        0,
      );
    // 0.5 √(1 + (3 · 251.33 / 150)²): the tilt of a start line over its length, carried around the girth.
    expectWithin(of(150), 0.5 * Math.hypot(1, (3 * 2 * Math.PI * 40) / 150), 1e-12);
    expect(of(50)).toBeGreaterThan(of(150));
  });
});
