// What lays a job flat, loaded when there is a job to lay.
export { flatViewOf } from '../../job/flat-view.ts';
export { draftPieces, reportDrafts } from '../../job/make.ts';
export { partsOf } from '../../job/parts.ts';
export { drawRolled, rolledSubject } from '../../job/rolled.ts';
export { vesselViewOf } from '../../job/vessel-view.ts';
