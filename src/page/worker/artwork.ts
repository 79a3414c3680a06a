// What looks at artwork by itself, loaded when there is some.
export { artViewOf } from '../../job/art-view.ts';
export { fontsOf } from '../../job/drawing-fonts.ts';
export { inspect } from '../../job/inspect.ts';
export { describeRepeat } from '../../job/repeat.ts';
export { wayPicture } from '../../job/ways-picture.ts';
