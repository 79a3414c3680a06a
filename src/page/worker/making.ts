// What makes and proves files, loaded when they are asked for.
export { filesOfPiece, fullReport, jsonContent, reportFile } from '../../job/deliverables.ts';
export { makeFiles } from '../../job/make-files.ts';
export { gapAtSeam } from '../../job/proof/gap-at-seam.ts';
