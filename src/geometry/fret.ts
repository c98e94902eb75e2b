const shares = Array.from({ length: 49 }, (_, fret) => 2 ** (-fret / 12));

/** Distance from a fret (0 is the nut) to the end of the scale, in the scale's unit: equal temperament, twelve to the octave. */
export const fretToBridge = (scale: number, fret: number): number =>
  scale * (shares[fret] ?? 2 ** (-fret / 12));
