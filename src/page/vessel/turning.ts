// A short turning sequence of the vessel as an animated GIF. Its library is loaded when one is asked for.
import { encode } from 'modern-gif';
import type { Side } from './looks.ts';
import type { VesselScene } from './scene.ts';

/** Once around in so many steps, each shown so long, ms: three seconds a turn. */
const steps = { count: 24, delay: 125 } as const;
const size = { width: 320, height: 400 } as const;

/** Tells how far it is, 0 to 1; the page is drawn between two steps. */
export async function turningPicture(
  scene: Pick<VesselScene, 'dots'>,
  from: Side,
  tell: (share: number) => void,
): Promise<Uint8Array> {
  const frames: { readonly data: Uint8ClampedArray<ArrayBuffer>; readonly delay: number }[] = [];
  for (let i = 0; i < steps.count; i++) {
    const facing = (from.facing + i / steps.count) % 1;
    frames.push({ data: scene.dots({ ...from, facing }, size), delay: steps.delay });
    tell((i + 1) / steps.count);
    await new Promise((resolve) => requestAnimationFrame(resolve));
  }
  return new Uint8Array(await encode({ ...size, frames }));
}
