// All that a maker has on the page: what a step back brings back, and what is kept in the browser.
import type { Bench } from './bench.ts';
import type { Colours } from './colours.ts';
import type { GivenList } from './given-list.ts';

export interface Held {
  readonly bench: Bench;
  /** The list that a vessel a row is made of. */
  readonly list: GivenList;
  /** The colours that the vessel is shown in. */
  readonly colours: Colours;
}
