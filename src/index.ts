// For programs that make jobs themselves: the same engine that the command and the page use.
export { type Finding, Refused } from './finding.ts';
export {
  type Deliverables,
  filesOfPiece,
  fullReport,
  type NamedFile,
  type Rest,
  type WrittenPiece,
} from './job/deliverables.ts';
export { makeFiles } from './job/make-files.ts';
export type { MakeFilesInput, MakeOptions } from './job/make-options.ts';
export { type JobTools, startTools } from './job/tools.ts';
export { type FileNamed, filesNamed } from './job/typed/named-files.ts';
export { readBlank } from './job/typed/read-blank.ts';
export { readJob } from './job/typed/read-job.ts';
