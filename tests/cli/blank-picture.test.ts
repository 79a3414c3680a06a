// `seamwright blank --out`: the picture of the profile, as a maker asks for it.
import { readdirSync, readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { afterAll, expect, test } from 'vitest';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

test('blank writes its picture only where it is told to', patience, async () => {
  const before = shop.state();
  expect((await run(['blank', 'cup.blank.json'], { cwd: shop.folder })).status).toBe(0);
  expect(shop.state()).toEqual(before);

  const { status, out } = await run(['blank', 'cup.blank.json', '--out', 'shown', '--json'], {
    cwd: shop.folder,
  });
  expect(status).toBe(0);
  expect(JSON.parse(out).files.map(({ file }: { file: string }) => file)).toEqual([
    'profile.svg',
    'profile.png',
  ]);
  expect(readdirSync(shop.at('shown')).sort()).toEqual(['profile.png', 'profile.svg']);
  expect(shop.read('shown/profile.svg')).toContain('data-role="flat-band"');
  expect(PNG.sync.read(readFileSync(shop.at('shown/profile.png'))).width).toBe(1600);
});
