// The pictures of a page. Outside: pngjs, which reads PNG by itself, tells how large the pixels are.
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { flatPicture, halfOf } from '../../../src/deliver/flat-picture.ts';
import { pagePictures } from '../../../src/job/job-sheet/job-sheet-pictures.ts';
import { pictureFiles } from '../../../src/job/pictures/picture-files.ts';

const drawnSvg = '<svg xmlns="http://www.w3.org/2000/svg"/>';

/** Draws nothing but white, and counts how often it is asked to. */
function counting() {
  let count = 0;
  const onWhite = (_: string, width: number) => {
    count++;
    const height = Math.round(width * 0.3);
    return { width, height, rgb: new Uint8Array(width * height * 3).fill(255) };
  };
  return { onWhite, drawn: () => count };
}

test('the pixels beside a drawing are shown as they were delivered, in rows by half; nothing is drawn again', () => {
  const { onWhite, drawn } = counting();
  const files = [
    ...pictureFiles('rolled', drawnSvg, { onWhite }),
    ...pictureFiles('weeding', drawnSvg, { onWhite }),
  ];
  const before = drawn();
  const says = 'what it shows';
  const page = {
    title: 'a page',
    lead: 'a lead',
    sections: [
      { heading: 'whole', blocks: [{ kind: 'picture', file: 'rolled.svg', says } as const] },
      {
        heading: 'in a row',
        blocks: [{ kind: 'pictures', items: [{ file: 'weeding.svg', says }] } as const],
      },
    ],
  };
  const [whole, inRow] = pagePictures(page, files, { onWhite });
  expect(drawn() - before).toBe(0);
  expect(whole?.png).toBe(files.find(({ file }) => file === 'rolled.png')?.content);
  const sizes = [whole, inRow].map((picture) => {
    const { width, height } = PNG.sync.read(Buffer.from(picture?.png ?? []));
    return [width, height / width];
  });
  expect(sizes).toEqual([
    [1600, whole?.aspect],
    [800, inRow?.aspect],
  ]);
});

test('half a picture is the mean of every four pixels', () => {
  const shades = [0, 100, 200, 255, 40, 60, 1, 2];
  const whole = flatPicture({
    width: 4,
    height: 2,
    rgb: Uint8Array.from(shades.flatMap((shade) => [shade, 255, 0])),
  });
  const { width, height, data } = PNG.sync.read(Buffer.from(halfOf(whole.png).png));
  // (0 + 100 + 40 + 60) / 4 and (200 + 255 + 1 + 2) / 4 = 114.5, rounded up.
  expect([width, height, ...data]).toEqual([2, 1, 50, 255, 0, 255, 115, 255, 0, 255]);
});
