// A job's folder as one file to carry: packed and unpacked.
export { unzipped, ZipWriter, zipped } from '../deliver/compress.ts';

/** The archive beside the files, where it is asked for. */
export const archiveFile = 'all.zip';
