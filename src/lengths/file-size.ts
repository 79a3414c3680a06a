// How large a file that a maker gives may be.

/** Largest file that is read, packed or not, bytes. */
export const mostFileBytes = 50_000_000;

/** What is wrong with a file that is, or `would be`, of so many bytes; undefined where nothing is. Its size never rounds down to the limit. */
export const tooLarge = (bytes: number, size: 'is' | 'would be unpacked' = 'is'): string | undefined => {
  if (bytes <= mostFileBytes) return undefined;
  const mb = `${Math.ceil(bytes / 1e5) / 10} MB`;
  const how = size === 'is' ? `is ${mb}` : `would be ${mb} unpacked`;
  return `${how}; up to ${mostFileBytes / 1e6} MB is read`;
};

/** Most that the files of one job, or drawings looked at together, hold together, bytes: they are all read at once. */
export const mostTogetherBytes = 100_000_000;
