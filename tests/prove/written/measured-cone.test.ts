// What stands beside a handle on a taper, as the proof finds it again from two drawn lines: against the blank's own cone.
import { test } from 'vitest';
import { subtract } from '../../../src/geometry/point.ts';
import { sheetCone } from '../../../src/prove/written/measured-cone.ts';
import { flatWall, sweep } from '../../../src/unroll/flat-wall.ts';
import { edgePoint, templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

const band = { from: 0, to: 70 };
const clear = 23;

test.each([0, 0.1, 0.35, -0.31])('the sides stand off the handle as they were drawn, sine %d', (sine) => {
  const middle = 27;
  const wall = flatWall(middle, sine, 35);
  const { seam } = templateOf(wall, { band, trim: { foot: 0, lip: 0 }, overlap: 0, clear });
  // In the frame of the first line: y up it.
  const turn = sweep(wall) * -0.5;
  const [foot, lip] = [band.from, band.to].map((along) => edgePoint(wall, seam.start, along));
  const framed = (along: number) => {
    const { x, y } = subtract(edgePoint(wall, seam.finish, along), foot ?? { x: 0, y: 0 });
    return {
      x: x * Math.cos(turn) + y * Math.sin(turn),
      y: x * Math.sin(turn) - y * Math.cos(turn),
    };
  };
  const { beside } = sheetCone(
    {
      wall: { kind: 'straight', radius: middle - 35 * sine, sine },
      band,
      trim: { foot: 0, lip: 0 },
      overlap: 0,
      clear,
      film: { stretch: 0, gather: 0 },
      flatBands: [band],
    },
    band.from,
    {
      length: Math.hypot((lip?.x ?? 0) - (foot?.x ?? 0), (lip?.y ?? 0) - (foot?.y ?? 0)),
      finish: [framed(band.from), framed(band.to)],
      span: 1,
      atHandle: { start: true, finish: true },
    },
  );
  expectWithin(beside, seam.start.offset, 1e-9);
});
