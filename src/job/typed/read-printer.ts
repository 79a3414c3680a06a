// The printer of a job: what its test piece measured.
import { measuredKeys, readMeasured } from './measured.ts';
import { keysOf, type NamedFiles, ownFile } from './read-material.ts';
import type { Job } from './resolved-job.ts';
import { holding, type Reader, required } from './schema.ts';

/** What is known of the printer that guides go to. */
export type Printer = NonNullable<Job['printer']>;

export const printerKeys = {
  measured: holding(required('What its test piece measured', readMeasured), measuredKeys),
};

export const printerReader =
  (named: NamedFiles): Reader<Printer> =>
  (value, place) => {
    const measured = keysOf(value, place, printerKeys, named)?.values.measured;
    return measured && { measured };
  };

export const readPrinter = (content: unknown, file: string): Printer => ownFile(printerReader, content, file);
