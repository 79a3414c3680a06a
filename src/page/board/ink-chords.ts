// Curves as chords, in numbers that are kept from key to key: a pen that is led along is given each number as an object, 20,000 of them at every key.
import { type Ink, inkCodes, pointsOf } from '../../job/view/ink.ts';
import { chordsAsked, putOnCubic } from './ink-path.ts';

/** Of one curve, however large it is drawn. */
const mostChords = 24;

export class InkChords {
  /** x and y, where the ink has them; a chord goes from each place to the next. */
  places = new Float64Array(4096);
  /** At each place that no chord leads to, 1. */
  begins = new Uint8Array(2048);
  count = 0;

  /** All shapes of an ink, or the first so many, none further from its curve than `within`. */
  follow({ codes, points, shapes }: Ink, within: number, most = shapes.length): void {
    this.count = 0;
    const end = shapes[most] ?? codes.length;
    let next = 0;
    let start = 0;
    for (let i = 0; i < end; i++) {
      const code = codes[i] ?? 0;
      this.#makeRoom();
      if (code === inkCodes.move) start = next;
      if (code === inkCodes.cubic) this.#addCubic(points, next, within);
      else this.#add(points, code === inkCodes.close ? start : next, code === inkCodes.move ? 1 : 0);
      next += 2 * (pointsOf[code] ?? 0);
    }
  }

  #add(points: Ink['points'], from: number, begins: number): void {
    const { places, begins: allBegin, count } = this;
    places[2 * count] = points[from] ?? 0;
    places[2 * count + 1] = points[from + 1] ?? 0;
    allBegin[count] = begins;
    this.count = count + 1;
  }

  #addCubic(points: Ink['points'], next: number, within: number): void {
    const chords = Math.min(mostChords, chordsAsked(points, next, within));
    for (let i = 1; i < chords; i++) {
      putOnCubic(points, next, i, chords, this.places, 2 * this.count);
      this.begins[this.count] = 0;
      this.count++;
    }
    this.#add(points, next + 4, 0);
  }

  /** For one curve more. */
  #makeRoom(): void {
    if (this.count + mostChords <= this.begins.length) return;
    const [places, begins] = [new Float64Array(2 * this.places.length), new Uint8Array(this.places.length)];
    places.set(this.places);
    begins.set(this.begins);
    [this.places, this.begins] = [places, begins];
  }
}
