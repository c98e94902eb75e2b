import type { LineStyle } from "./scene.ts";

/** The base is drawn thick; each variant after it has a line type of its own. */
const variantLines: readonly LineStyle[] = [
  "dashed",
  "chain",
  "dotted",
  "long-dashed",
  "double-chain",
  "fine-dashed",
  "dash-dotted",
  "thin",
];

/** The line of the base (0) or of the i-th variant. */
export const compareLine = (i: number): LineStyle =>
  i === 0 ? "thick" : (variantLines[(i - 1) % variantLines.length] ?? "thin");
