// A picture that the engine drew, as large as there is room for it.
import { usePicture } from '../parts/use-picture.ts';

interface PictureBoardProps {
  readonly svg: string | undefined;
  readonly name: string;
  readonly empty: string;
  /** Whether it shows what was before the last change, for that could not be drawn. */
  readonly isStale: boolean;
}

export function PictureBoard({ svg, name, empty, isStale }: PictureBoardProps) {
  const address = usePicture(svg);
  if (!address) return <p class="board-empty">{empty}</p>;
  return (
    <div class="picture-board">
      <img class={isStale ? 'picture picture-stale' : 'picture'} src={address} alt={name} />
      {isStale ? (
        <p class="board-figures">
          This is how it was before the last change; see the checks for what is wanting.
        </p>
      ) : null}
    </div>
  );
}
