// What lays a job flat, loaded when there is a job to lay.
export { draftGores, looseGores } from '../../job/gores.ts';
export { laidView } from '../../job/laid-view.ts';
export { draftPieces } from '../../job/make.ts';
export { drawRolled, rolledPieces, rolledSubject } from '../../job/rolled.ts';
export { goresOnVessel } from '../../job/rolled-gores.ts';
export { seenInPieces, vesselViewOf } from '../../job/vessel-view.ts';
