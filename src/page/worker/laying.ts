// What lays a job flat, loaded when there is a job to lay.
export { draftGores, looseGores } from '../../job/gores.ts';
export { laidView } from '../../job/laid-view.ts';
export { draftPieces } from '../../job/make.ts';
export { drawRolled, rolledOf, rolledSubject } from '../../job/rolled.ts';
export { rolledGoresOf } from '../../job/rolled-gores.ts';
export { vesselViewOf } from '../../job/vessel-view.ts';
