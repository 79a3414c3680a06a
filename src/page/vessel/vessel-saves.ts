// The finished vessel as a picture to keep: as it is seen, or turning once around.
import { download } from '../save.ts';
import { said } from '../store.ts';
import { side } from './looks.ts';
import type { OpenScene } from './use-scene.ts';

async function savePicture({ scene }: OpenScene): Promise<void> {
  scene.value?.mark(undefined);
  const bytes = await scene.value?.picture(side.value);
  if (bytes) download('vessel.png', bytes);
  said.value = bytes ? 'vessel.png saved.' : '';
}

async function saveTurningPicture({ scene, turning }: OpenScene): Promise<void> {
  const { value } = scene;
  if (!value) return;
  turning.value = 0;
  const { turningPicture } = await import('./turning.ts');
  value.mark(undefined);
  const bytes = await turningPicture(value, side.value, (share) => {
    turning.value = share;
  });
  download('vessel.gif', bytes);
  said.value = 'vessel.gif saved.';
}

/** Says what went wrong, if anything did, and goes on drawing. */
function orSay(work: Promise<void>, { turning, drawAgain }: OpenScene): void {
  work
    .catch((fault: unknown) => {
      said.value = fault instanceof Error ? fault.message : String(fault);
    })
    .finally(() => {
      turning.value = undefined;
      drawAgain();
    });
}

export const save = (open: OpenScene): void => orSay(savePicture(open), open);

export const saveTurning = (open: OpenScene): void => orSay(saveTurningPicture(open), open);
