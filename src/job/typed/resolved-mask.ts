// What a job asks of masks and of waste, everything explicit.
/** Cuts across large waste, so that it lifts in strips. Lengths in mm. */
export interface Relief {
  /** How wide the strips are about. */
  readonly every: number;
  /** How near a cut may come to what stays. */
  readonly clear: number;
}

/** A mask that holds together, to be used again. */
export interface Stencil {
  /** How wide its bridges are, mm; left out, the least that the film can stand. */
  readonly bridge?: number;
}

/** A mask whose edge follows what is laid on the wall, and that covers the rest to one edge of the band. Lengths in mm. */
export interface Mask {
  /** From the lower edge of what it follows to the foot edge, or from the upper to the lip edge. */
  readonly covers: 'foot' | 'lip';
  /** Names of motifs, such as `item-1`; left out, all of them. */
  readonly follows?: readonly string[];
  /** How far its edge stays away from what it follows, no nearer anywhere. */
  readonly standOff: number;
  /** Radius it is rounded to where it stands up into hollows; 0: it fills them. */
  readonly smooth: number;
  /** A film with openings to spray through behind what is laid: past its edge by so much, within it where negative. */
  readonly window?: { readonly grow: number };
  /** Colours of the pictures alone. */
  readonly sprayed: string;
  readonly film: string;
}
