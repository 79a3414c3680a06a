// Colours by their channels: as numbers, as light, and written again.

/** Red, green and blue of a colour `#rrggbb`, 0 to 1; none where it is written otherwise. */
export const channelsOf = (colour: string): readonly number[] =>
  (/^#(..)(..)(..)$/.exec(colour)?.slice(1) ?? []).map((part) => Number.parseInt(part, 16) / 255);

/** Channels of 0 to 1 as `#rrggbb`. */
export const colourOf = (channels: readonly number[]): string =>
  `#${channels
    .map((value) =>
      Math.round(255 * value)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

/** A channel of a colour to light and back, 0 to 1. Source: IEC 61966-2-1, sRGB; from memory, held against three's in a test. */
export const toLight = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
export const fromLight = (light: number): number =>
  light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
