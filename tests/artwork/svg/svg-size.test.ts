// Sizes of SVG files. Sources: CSS Values and Units Module Level 4, 6.2 (absolute lengths); SVG 2, 8.6 to 8.8.
import { describe, expect, test } from 'vitest';
import { frameFault, parseViewBox, svgFrame, svgLength } from '../../../src/artwork/svg/svg-size.ts';
import { movePoint } from '../../../src/geometry/affine.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';

describe('an SVG length', () => {
  // CSS Values and Units 4, 6.2: 1in = 2.54cm = 25.4mm = 101.6Q = 72pt = 6pc = 96px.
  test.each(['1in', '2.54cm', '25.4mm', '101.6Q', '72pt', '6pc', '96px', '96'])('%s is an inch', (text) => {
    expectWithin(svgLength(text) ?? Number.NaN, 25.4, 1e-12);
  });

  test.each(['+10mm', ' 10mm ', '1e1mm', '10MM', '.1e2mm', '1cm'])('%o is 10 mm', (text) => {
    expectWithin(svgLength(text) ?? Number.NaN, 10, 1e-12);
  });

  test.each(['', '-5mm', '50%', '3em', 'auto', 'ten', '5 mm wide', '5furlongs', '1..2', 'NaN', 'Infinity'])(
    '%o is none',
    (text) => expect(svgLength(text)).toBeUndefined(),
  );
});

describe('a view box', () => {
  test.each(['1 2 30 40', '1,2,30,40', ' 1 , 2 30\n40 '])('%o is read', (text) =>
    expect(parseViewBox(text)).toEqual({ x: 1, y: 2, width: 30, height: 40 }),
  );
  test.each([
    '0 0 10',
    '0 0 10 10 10',
    '0 0 0 10',
    '0 0 10 -1',
    '0 0 ten 10',
    '',
    '0 0 NaN 10',
    '0 0 Infinity 10',
  ])('%o is none', (text) => expect(parseViewBox(text)).toBeUndefined());
});

describe('the size of a file', () => {
  // CSS 2.1, 10.3.2 and 10.6.2: a side left out follows from the other and the ratio of the view box.
  test('follows the view box where only one side is given', () => {
    expect(svgFrame({ width: '60mm', viewBox: '0 0 30 20' })).toMatchObject({
      width: 60,
      height: 40,
      sized: true,
    });
    expect(svgFrame({ height: '40mm', viewBox: '0 0 30 20' })).toMatchObject({
      width: 60,
      height: 40,
      sized: true,
    });
  });

  test('is the view box in px where none is given, and says that it is no real size', () => {
    const frame = svgFrame({ viewBox: '0 0 96 48' });
    expect(frame).toMatchObject({ width: 25.4, sized: false });
    expectWithin(frame?.height ?? 0, 12.7, 1e-12);
  });

  test('is unknown with neither, or with one side and no view box', () => {
    expect(svgFrame({})).toBeUndefined();
    expect(svgFrame({ width: '60mm' })).toBeUndefined();
    expect(svgFrame({ width: '0mm', viewBox: '0 0 1 1' })).toBeUndefined();
  });

  test.each([
    // SVG 2, 8.8: room left over goes by Min, Mid or Max; worked by hand for a 20 x 20 box in 60 x 40 mm: scale 2
    // when it meets, 3 when it is sliced, 3 and 2 when stretched.
    { preserve: undefined, at: { x: 10, y: 0 }, scale: [2, 2] },
    { preserve: 'xMinYMin', at: { x: 0, y: 0 }, scale: [2, 2] },
    { preserve: 'xMaxYMid meet', at: { x: 20, y: 0 }, scale: [2, 2] },
    { preserve: 'xMidYMin slice', at: { x: 0, y: 0 }, scale: [3, 3] },
    { preserve: 'xMidYMid slice', at: { x: 0, y: -10 }, scale: [3, 3] },
    { preserve: 'xMinYMax slice', at: { x: 0, y: -20 }, scale: [3, 3] },
    { preserve: 'none', at: { x: 0, y: 0 }, scale: [3, 2] },
  ])('places its view box by $preserve', ({ preserve, at, scale }) => {
    const frame = svgFrame({
      width: '60mm',
      height: '40mm',
      viewBox: '5 5 20 20',
      ...(preserve === undefined ? {} : { preserveAspectRatio: preserve }),
    });
    if (!frame) throw new Error('no frame');
    expectPointWithin(movePoint(frame.toMm, { x: 5, y: 5 }), at, 1e-12);
    const [sx = 0, sy = 0] = scale;
    const far = { x: at.x + 20 * sx, y: at.y + 20 * sy };
    expectPointWithin(movePoint(frame.toMm, { x: 25, y: 25 }), far, 1e-12);
  });

  test.each([
    ['width', { width: '0mm', height: '5mm' }],
    ['width', { width: '-5mm', height: '5mm' }],
    ['height', { width: '5mm', height: 'NaN' }],
    ['width', { width: '1e308mm', height: '5mm' }],
    ['height', { width: '5mm', height: '1e400mm' }],
    ['width', { width: '10001mm', height: '5mm' }],
    ['width', { width: '', height: '5mm' }],
    ['viewBox', { width: '5mm', height: '5mm', viewBox: '0 0 0 5' }],
  ])('is refused by its %s: %o', (key, attributes) => expect(frameFault(attributes)?.key).toBe(key));

  test.each([
    { width: '100%', height: '100%', viewBox: '0 0 4 4' },
    { width: 'auto' },
    { width: '10em' },
    {},
  ])('is not at fault for being relative or left out: %o', (attributes) =>
    expect(frameFault(attributes)).toBeUndefined(),
  );
});
