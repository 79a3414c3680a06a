// How sure a repeat has to be to be laid unasked.

/** A repeat this sure is taken over what the file's size says. */
export const sureRepeat = 0.9;

/** What only two copies show is offered at the most, and never taken unasked: a tile may be drawn with a wider gap at its border. */
export const offered = sureRepeat - 0.05;
