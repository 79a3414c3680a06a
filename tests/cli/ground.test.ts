// A bought pattern on a ground of its own: told, left out where the job says so, refused where it has no such colour.
import { afterAll, expect, test } from 'vitest';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const cream = '#f4efe2';
shop.write(
  'bought.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30">
   <rect width="30" height="30" fill="${cream}"/><circle cx="15" cy="15" r="9" fill="#1f7a5a"/></svg>`,
);
const job = (ground?: unknown) =>
  shop.write('bought.job.json', {
    name: 'bought',
    units: 'mm',
    blank: 'cup.blank.json',
    artwork: { file: 'bought.svg', ...(ground === undefined ? {} : { ground }) },
  });
const make = () => run(['make', 'bought.job.json', '--no-pictures', '--json'], { cwd: shop.folder });
const layersCut = (): string[] =>
  [...shop.read('out/wrap.cut.svg').matchAll(/data-layer="([^"]*)"/g)].map(([, layer]) => layer ?? '');

test('a colour from border to border is cut, and told; named as the ground it is not', patience, async () => {
  job();
  const unsaid = JSON.parse((await make()).out);
  expect(unsaid.checks.find(({ rule }: { rule: string }) => rule === 'ground')?.says).toContain(
    `"ground": "${cream}" leaves it out`,
  );
  expect(layersCut()).toContain(cream);
  job(cream.toUpperCase());
  const { checks, pattern } = JSON.parse((await make()).out);
  expect(checks.some(({ rule }: { rule: string }) => ['ground', 'layers'].includes(rule))).toBe(false);
  expect(pattern.joins).toBe(true);
  expect(layersCut()).toEqual(['#1f7a5a']);
  expect(JSON.parse(shop.read('out/job.json')).artwork.ground).toEqual([cream]);
});

test('a ground that the artwork has not is refused by name, with those it has', patience, async () => {
  job(['#f4efe3']);
  const before = shop.state();
  const { status, lines } = await run(['make', 'bought.job.json'], { cwd: shop.folder });
  expect([status, lines[0]]).toEqual([
    2,
    'bought.job.json: artwork.ground: "#f4efe3" is no colour of the artwork, which has "#f4efe2", "#1f7a5a"',
  ]);
  expect(shop.state()).toEqual(before);
  const seen = await run(['repeat', 'bought.svg', 'cup.blank.json', '--ground', 'cream'], {
    cwd: shop.folder,
  });
  expect([seen.status, seen.lines[0]]).toEqual([
    2,
    '--ground: "cream" will not do here; give a colour such as "#17566b", in quotes',
  ]);
});
