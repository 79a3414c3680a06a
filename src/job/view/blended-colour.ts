// Colours of a spray between those it goes from and to.
import { channelsOf, colourOf, fromLight, toLight } from '../../drawing/colour-channels.ts';

const lightOf = (colour: string): readonly number[] => channelsOf(colour).map(toLight);

/** The colour at a share of the way up, mixed as light is. */
export function blendedAt(colours: readonly string[], share: number): string {
  const at = Math.min(1, Math.max(0, share)) * (colours.length - 1);
  const [low = '#000000', high = low] = [colours[Math.floor(at)], colours[Math.ceil(at)]];
  const [from, to, part] = [lightOf(low), lightOf(high), at - Math.floor(at)];
  const mixed = from.map((light, i) => fromLight(light + ((to[i] ?? light) - light) * part));
  return colourOf(mixed);
}
