// Colours of lines that can be told from the paper, and from one another.
import { channelsOf, colourOf, toLight } from './colour-channels.ts';

/** Lighter than this share of white a line can't be told from paper; its colour is drawn so much darker then. Both ours. */
const lightest = 0.75;
const darker = 0.62;

/** How light a colour is, 0 to 1: relative luminance, WCAG 2.2, from memory. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = channelsOf(colour).map(toLight);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** What a line of a colour is drawn in. Light ones stay different from one another: a cutter's program may tell layers by the colours of their lines. */
export const seenOnPaper = (colour: string): string =>
  luminance(colour) > lightest ? colourOf(channelsOf(colour).map((value) => darker * value)) : colour;
