// Four sides in a window as high as it is wide, such as a phone's: two by two, where a row of four is a thumb high.
import { expect, test } from 'vitest';
import { sidesInWindow } from '../../../src/job/view/sides-in-window.ts';

/** Four views 40 mm apart in a picture of 170 by 50 mm. */
const drawn = `<svg xmlns="http://www.w3.org/2000/svg" width="170mm" height="50mm" viewBox="0 0 170 50">
<title>The finished vessel</title>
<defs></defs>
<rect width="170" height="50" fill="#eeedea"/>
${['front', 'left', 'right', 'seam'].map((name, i) => `<g data-view="${name}" transform="translate(${25 + 40 * i} 40)">\n<rect width="9" height="9"/></g>\n`).join('')}</svg>
`;

const placesIn = (svg: string) =>
  [...svg.matchAll(/data-view="(\w+)" transform="translate\(([^)]*)\)"/g)].map(([, name, at]) => [name, at]);

test('a window as high as it is wide has them two by two, all within the picture, its ground behind all', () => {
  const { svg: shown, isMoved } = sidesInWindow(drawn, { width: 370, height: 320 });
  expect(isMoved).toBe(false);
  expect(placesIn(shown)).toEqual([
    ['front', '25 40'],
    ['left', '65 40'],
    ['right', '25 90'],
    ['seam', '65 90'],
  ]);
  // Of 170 mm two views of 40 are gone.
  expect(shown).toContain('width="90mm" height="100mm" viewBox="0 0 90 100"');
  expect(shown).toContain('<rect width="90" height="100" fill="#eeedea"/>');
  expect(shown.match(/<rect width="9" height="9"\/>/g)).toHaveLength(4);
});

test('a wide window keeps the row, and another drawing is left as it is', () => {
  expect(sidesInWindow(drawn, { width: 1000, height: 320 }, true)).toEqual({ svg: drawn, isMoved: false });
  const other = '<svg width="10mm" height="10mm" viewBox="0 0 10 10"></svg>';
  expect(sidesInWindow(other, { width: 370, height: 320 }, true)).toEqual({ svg: other, isMoved: false });
});

test('in a phone’s a row of slim vessels fills the height and is moved along, two of them in sight; wider ones stand two by two', () => {
  // 170 by 80 mm would be 680 px wide: less than twice the window, and each view twice as high as two by two.
  const slim = drawn.replace('height="50mm" viewBox="0 0 170 50"', 'height="80mm" viewBox="0 0 170 80"');
  expect(sidesInWindow(slim, { width: 370, height: 320 }, true)).toEqual({ svg: slim, isMoved: true });
  expect(sidesInWindow(slim, { width: 370, height: 320 }).isMoved).toBe(false);
  expect(sidesInWindow(drawn, { width: 370, height: 320 }, true).isMoved).toBe(false);
});
