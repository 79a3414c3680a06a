// What looks at artwork by itself, loaded when there is some.

export { fontsOf } from '../../job/artwork/drawing-fonts.ts';
export { artViewOf } from '../../job/inspect/art-view.ts';
export { inspect } from '../../job/inspect/inspect.ts';
export { describeRepeat } from '../../job/repeat/repeat.ts';
export { wayPicture } from '../../job/repeat/ways-picture.ts';
