// What lays a job flat and on its vessel, loaded when there is a job to lay.
export { laidView } from '../../job/view/laid-view.ts';
export { rolledJob, solidSeen } from './rolled-job.ts';
