// A button that takes one file from the maker.
import { useRef } from 'preact/hooks';
import { taken } from '../save.ts';

/** What a picker offers where a drawing is wanted, and where a font is. */
export const drawings = '.svg,.png,.jpg,.jpeg,image/svg+xml,image/png,image/jpeg';
export const fonts = '.ttf,.otf,.woff';

interface FileButtonProps {
  /** The key of the job that names the file. */
  readonly path: string;
  readonly label: string;
  readonly accept: string;
  readonly take: (name: string, bytes: Uint8Array) => void;
}

export function FileButton({ path, label, accept, take }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        class="unseen"
        type="file"
        accept={accept}
        aria-label={label}
        data-file={path}
        tabIndex={-1}
        // The button after it opens it.
        aria-hidden="true"
        onChange={async (event) => {
          const picker = event.currentTarget;
          const [file] = await taken(picker.files ?? []);
          picker.value = '';
          if (file) take(file.name, file.bytes);
        }}
      />
      <button type="button" class="plain" onClick={() => input.current?.click()}>
        {label}
      </button>
    </>
  );
}
