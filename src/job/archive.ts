// A job's folder as one file to carry: packed and unpacked.
export { unzipped, zipped } from '../deliver/compress.ts';
