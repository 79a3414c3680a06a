// What lays a job flat, loaded when there is a job to lay.
export { laidView } from '../../job/laid-view.ts';
export { draftPieces } from '../../job/make.ts';
export { drawRolled, rolledSubject } from '../../job/rolled.ts';
export { vesselViewOf } from '../../job/vessel-view.ts';
