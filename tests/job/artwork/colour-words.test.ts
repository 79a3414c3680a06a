// Words for colours, held against what the web's standard calls them.
import { expect, test } from 'vitest';
import { colourWords, filmWords, layerWords } from '../../../src/job/artwork/colour-words.ts';

/** Source: W3C, CSS Color Module Level 4, section 6.1, named colours and their numbers; from memory. Its words for dark and light are joined there. */
const named = {
  black: '#000000',
  white: '#ffffff',
  grey: '#808080',
  'dark grey': '#2f2f2f',
  'light grey': '#d3d3d3',
  red: '#ff0000',
  'dark red': '#8b0000',
  orange: '#ffa500',
  yellow: '#ffff00',
  'light yellow': '#ffffe0',
  olive: '#808000',
  'dark green': '#006400',
  'light green': '#90ee90',
  turquoise: '#40e0d0',
  blue: '#0000ff',
  'dark blue': '#00008b',
  'light blue': '#add8e6',
  magenta: '#ff00ff',
  pink: '#ffc0cb',
} as const;

test.each(Object.entries(named))('%s is called so', (name, colour) => {
  expect(colourWords(colour)).toBe(name);
});

test('a layer without a name is told by its colour and its number, one with a name by that', () => {
  expect([layerWords('#00008b'), layerWords('sea')]).toEqual(['dark blue (#00008b)', 'sea']);
  expect([filmWords('#00008b'), filmWords('sea')]).toEqual(['the dark blue film (#00008b)', 'film sea']);
});
