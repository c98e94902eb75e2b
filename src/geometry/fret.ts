/** Distance from a fret (0 is the nut) to the end of the scale, in the scale's unit: equal temperament, twelve to the octave. */
export const fretToBridge = (scale: number, fret: number): number => scale * 2 ** (-fret / 12);
