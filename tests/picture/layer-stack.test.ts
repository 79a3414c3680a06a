// Films one above the other: what each is stands clear of the next.
import { expect, test } from 'vitest';
import { loadTools } from '../../src/cli/tools.ts';
import { layerStack } from '../../src/picture/layer-stack.ts';
import { box } from '../geometry/drawn.ts';

test.each([
  [300, 40],
  [200, 180],
])('the words below a film lie above the next film, of pieces %d by %d mm', async (width, height) => {
  const { words } = await loadTools();
  const layers = ['#ffffff', '#2a3b4c', '#c0392b'].map((colour) => ({ name: colour, colour, shapes: [] }));
  const svg = layerStack({ title: 'terns', outlines: [box(0, 0, width, height)], layers }, words);
  const films = [
    ...svg.matchAll(
      /<g data-layer="\d" transform="matrix\(1 0 \S+ \S+ \S+ (\S+)\)">[\s\S]*?<\/g>\n?([\s\S]*?)(?=<g |<\/svg>)/g,
    ),
  ].map(([, top, says = '']) => {
    const places = [...says.matchAll(/[ML]\S+ (-?[\d.]+)/g)].map(([, y]) => Number(y));
    return { top: Number(top), from: Math.min(...places), to: Math.max(...places) };
  });
  expect(films).toHaveLength(3);
  for (const { top, from } of films) expect(from).toBeGreaterThan(top + 0.45 * height);
  for (const [i, { to }] of films.slice(1).entries()) expect(to).toBeLessThan(films[i]?.top ?? 0);
});
