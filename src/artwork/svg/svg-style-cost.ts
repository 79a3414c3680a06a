// How long a reader would be at the style sheets of a drawing: found before it reads them.
import type { XmlElement } from '../../drawing/xml.ts';
import { shown } from '../../lengths/shown.ts';
import { selectorsOf } from './svg-style-check.ts';

/** Most selectors of style sheets times elements they are tried on. */
const mostTrials = 20_000_000;

/** Most elements around others that selectors of several steps are tried on: as many take some four seconds. */
const mostDescents = 100_000_000;

/** Most selectors and declarations times the letters of all: the reader goes through them anew for each, some 10⁹ a second. */
const mostReread = 3_000_000_000;

/** Letters of an element's classes that take as long to look through as a selector takes to try; an attribute counts as ten. */
const lettersATrial = 200;

/** Counts what the selectors of style sheets are tried on. */
export class StyleCost {
  #elements = 0;
  /** Elements by how deep they stand, those of many classes or attributes counted more than once. */
  readonly #atDepth: number[] = [];

  open({ attributes }: XmlElement, depth: number): void {
    const letters = (attributes.class?.length ?? 0) + 10 * Object.keys(attributes).length;
    this.#elements += 1;
    this.#atDepth[depth] = (this.#atDepth[depth] ?? 0) + 1 + Math.floor(letters / lettersATrial);
  }

  /** What takes too long of style sheets, in words; undefined where nothing does. */
  fault(css: string): string | undefined {
    const each = selectorsOf(css).flatMap((list) => list.split(','));
    const plain = 'save it as plain SVG with attributes';
    const tried = this.#atDepth.reduce((sum, count) => sum + count, 0);
    if (each.length * tried > mostTrials)
      return `has ${each.length} style rules for ${this.#elements} elements, which takes too long to follow; ${plain}`;
    const declared = css.split(/[;}]/).length - 1;
    if ((each.length + declared) * css.length > mostReread)
      return `has ${declared} declarations in style rules of ${css.length} letters, which take too long to read; ${plain}`;
    let descents = 0;
    for (const selector of each) {
      descents += this.#descents(selector);
      if (descents > mostDescents)
        return `has style rules of so many steps, such as ${shown(selector.trim())}, for elements so deep in one another that they take too long to follow; ${plain}`;
    }
    return undefined;
  }

  /**
   * Of "a b c" the reader tries every two of the elements around one for a and b before it gives up; of "a > b > c" the two
   * next ones alone.
   */
  #descents(selector: string): number {
    const steps = selector
      .trim()
      .replace(/\s+/g, ' ')
      .replace(/ ?([>+~]) ?/g, '$1');
    const around = steps.split(' ').length - 1;
    const next = steps.split('>').length - 1;
    if (around + next === 0) return 0;
    return this.#atDepth.reduce(
      (sum, count, depth) => sum + count * (choices(depth, around) + Math.min(next, depth)),
      0,
    );
  }
}

/** The most ways in which so many or fewer can be chosen of a number. Past `mostDescents` they are not counted on. */
function choices(of: number, count: number): number {
  let [ways, most] = [1, 1];
  for (let i = 0; i < count && i < of && most <= mostDescents; i++) {
    ways *= (of - i) / (i + 1);
    most = Math.max(most, ways);
  }
  return most;
}
