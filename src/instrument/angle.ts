import { decimalText, plainText, readNumber, type WrittenNumber } from "./written-number.ts";

/** Degrees as people write them: `1.2`, `1,2`, `1.2°`, `1.2 deg`. */
export function parseAngle(text: string): WrittenNumber {
  return readNumber(plainText(text).replace(/ ?(°|º|deg\.?|degrees?)$/, ""));
}

/** Degrees with their sign, such as `1.38°`; no idle zeros unless `fixed`. */
export function formatAngle(degrees: number, decimals: number, fixed = false): string {
  return `${decimalText(degrees, decimals, fixed)}°`;
}
