// Handing files to the maker, and taking theirs.

/** Offer a file for download under a name. */
export function download(name: string, content: string | Uint8Array): void {
  const address = URL.createObjectURL(new Blob([typeof content === 'string' ? content : content.slice()]));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the blob after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

export interface TakenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The files of a picker or a drop, with their bytes. */
export const taken = (list: Iterable<File>): Promise<readonly TakenFile[]> =>
  Promise.all(
    [...list].map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
