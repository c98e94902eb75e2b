/** A traced half outline without a waist: a pear's, of no guitar. */
export const pear = [
  [0, 0],
  [5, 60],
  [40, 140],
  [120, 185],
  [220, 165],
  [350, 110],
  [450, 60],
  [500, 34],
] as const;
