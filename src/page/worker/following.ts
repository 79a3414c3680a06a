// What follows readings with a drawing that was laid before, loaded when there is one.
export { followedView, followerOf } from '../../job/view/followed-view.ts';
export { Room } from '../../job/view/room.ts';
export { givenJob } from './given.ts';
