// A picture that the engine drew, as an address that the page can show.
import { useEffect, useMemo } from 'preact/hooks';

/** The address of a text as a picture, there in the same frame; let go when another takes its place. */
export function usePicture(svg: string | undefined): string | undefined {
  const address = useMemo(
    () => (svg ? URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })) : undefined),
    [svg],
  );
  useEffect(() => () => (address ? URL.revokeObjectURL(address) : undefined), [address]);
  return address;
}
