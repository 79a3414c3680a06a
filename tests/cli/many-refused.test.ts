// What is refused at many places is told of the first of them, and how many more there are.
import { afterAll, expect, test } from 'vitest';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

test('of a rule twenty places are told, and all of them under --json', patience, async () => {
  const broken = '<path transform="rotate(x" d="M4 4H9V9Z"/>'.repeat(25);
  const size = 'width="40mm" height="30mm" viewBox="0 0 40 30"';
  shop.write('broken.svg', `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${broken}</svg>`);
  const { status, out, lines } = await run(['inspect', 'broken.svg', '--json', '--out', 'out'], {
    cwd: shop.folder,
  });
  expect(status).toBe(2);
  expect(lines).toHaveLength(21);
  expect(lines.at(-1)).toBe('broken-transform: 5 more are told under --json');
  expect((JSON.parse(out) as { checks: readonly unknown[] }).checks).toHaveLength(25);
});
