// A picture that the engine drew, as an address that the page can show.
import { useEffect, useState } from 'preact/hooks';

/** The address of a text as a picture; let go when another takes its place. */
export function usePicture(svg: string | undefined): string | undefined {
  const [address, setAddress] = useState<string | undefined>(undefined);
  useEffect(() => {
    if (!svg) {
      setAddress(undefined);
      return undefined;
    }
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address;
}
