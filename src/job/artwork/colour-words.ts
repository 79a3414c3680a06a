// What a colour is called: layers of artwork without a name are named by their numbers, which nobody sees a colour in.

/** Hues by where each ends, degrees. */
const hues = [
  [15, 'red'],
  [45, 'orange'],
  [70, 'yellow'],
  [165, 'green'],
  [185, 'turquoise'],
  [255, 'blue'],
  [290, 'violet'],
  [335, 'magenta'],
  [360, 'red'],
] as const;

/** Some are called otherwise where they are dark or light. */
const dark: Readonly<Record<string, string>> = { orange: 'brown', yellow: 'olive' };
const light: Readonly<Record<string, string>> = { red: 'pink', magenta: 'pink' };

/** Lightness as the mean of the strongest and the weakest channel; what differs less than this between them is grey. */
const [darkest, lightest, least] = [0.31, 0.7, 0.1];

/** Words for `#rrggbb`. */
export function colourWords(colour: string): string {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map(
    (at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255,
  );
  const [most, fewest] = [Math.max(red, green, blue), Math.min(red, green, blue)];
  const [lightness, reach] = [(most + fewest) / 2, most - fewest];
  if (reach < least) {
    if (lightness > 0.92) return 'white';
    if (lightness < 0.1) return 'black';
    return lightness > lightest ? 'light grey' : lightness < darkest ? 'dark grey' : 'grey';
  }
  const around =
    most === red
      ? (green - blue) / reach
      : most === green
        ? 2 + (blue - red) / reach
        : 4 + (red - green) / reach;
  const hue = (60 * around + 360) % 360;
  const name = hues.find(([end]) => hue < end)?.[1] ?? 'red';
  if (lightness < darkest) return dark[name] ?? `dark ${name}`;
  return lightness > lightest ? (light[name] ?? `light ${name}`) : name;
}

const isNumber = (layer: string): boolean => /^#[0-9a-f]{6}$/.test(layer);

/** A layer of artwork by its name, or by what its colour is called and its number. */
export const layerWords = (layer: string): string =>
  isNumber(layer) ? `${colourWords(layer)} (${layer})` : layer;

/** The film that a layer is cut from. */
export const filmWords = (layer: string): string =>
  isNumber(layer) ? `the ${colourWords(layer)} film (${layer})` : `film ${layer}`;
