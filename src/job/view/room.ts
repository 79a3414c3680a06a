// Room for the numbers of a drawing that is made anew at every key. Made each time, they would be collected as garbage, and with them a browser
// throws away code that it had made quick: the keys after that took three times as long.

type Numbers = Float64Array<ArrayBuffer>;

/** Room for two drawings: one that is shown, and one that is made. */
export class Room {
  #made: Numbers[] = [];
  #shown: Numbers[] = [];
  #taken = 0;

  /** A drawing begins to be made: what another took that came to nothing is free again. */
  begin(): void {
    this.#taken = 0;
  }

  /** So many numbers, whatever they were. */
  of(length: number): Numbers {
    const kept = this.#made[this.#taken];
    const given = kept?.length === length ? kept : new Float64Array(length);
    this.#made[this.#taken] = given;
    this.#taken++;
    return given;
  }

  /** The drawing is made, and will be shown: its numbers stay while the next one is made. */
  keep(): void {
    [this.#made, this.#shown] = [this.#shown, this.#made];
  }
}
