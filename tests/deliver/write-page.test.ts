import { expect, test } from 'vitest';
import { dataUrl } from '../../src/deliver/data-url.ts';
import { writePage } from '../../src/deliver/write-page.ts';

test('what was typed stays words: markup in it is not read as markup', () => {
  const page = writePage({
    title: '<script>alert(1)</script>',
    lead: 'a & b',
    sections: [
      {
        heading: '"quoted"',
        blocks: [
          { kind: 'table', head: ['<b>'], rows: [['</td><img src=x onerror=y>']] },
          { kind: 'picture', file: 'a" onload="x.svg', says: '<i>' },
          { kind: 'caution', items: ['<b>'] },
        ],
      },
    ],
  });
  expect(page).not.toMatch(/<script|<img src=x|<b>|<i>| onload="/);
  expect(page).toContain("default-src 'none'");
});

test('a picture that the page holds itself is the very bytes', () => {
  // Longer and shorter than a multiple of three, against Node's own base64.
  for (const length of [1, 2, 3, 250]) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 37) % 256);
    const picture = { kind: 'picture' as const, file: 'a.svg', says: 'a' };
    const page = { title: 't', lead: 'l', sections: [{ heading: 'h', blocks: [picture] }] };
    const base64 = Buffer.from(bytes).toString('base64');
    expect(writePage(page, () => dataUrl(bytes, 'image/png'))).toContain(
      `<img src="data:image/png;base64,${base64}"`,
    );
  }
});

test('waiting is drawn to scale, and told apart by more than its colour', () => {
  const page = writePage({
    title: 't',
    lead: 'l',
    sections: [
      {
        heading: 'h',
        blocks: [
          {
            kind: 'timeline',
            spans: [
              { says: 'lay', from: 0, to: 1, isWait: false },
              { says: 'wait', from: 1, to: 11, isWait: true },
            ],
          },
        ],
      },
    ],
  });
  const bars = [...page.matchAll(/<rect x="([\d.]+)" y="\d+" width="([\d.]+)" height="12" fill="([^"]+)"/g)];
  const [work, wait] = bars.map(([, x, width, fill]) => ({ x: Number(x), width: Number(width), fill }));
  expect((wait?.width ?? 0) / (work?.width ?? 1)).toBeCloseTo(10, 1);
  expect(wait?.x).toBeCloseTo((work?.x ?? 0) + (work?.width ?? 0), 0);
  expect(wait?.fill).toBe('url(#wait)');
  expect(page).toContain('aria-label="lay; wait"');
});
