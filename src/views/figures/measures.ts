import { formatLength, type Units } from "../../instrument/length.ts";
import { formatAngle } from "../../instrument/written-number.ts";

/** A height in the verdict, such as `3.41 mm` or `0.134 in`: always so many digits, so that figures do not jump about. */
export function height(mm: number, units: Units): string {
  if (units === "mm") {
    const decimals = Math.abs(mm) < 10 ? 2 : 1;
    return formatLength(mm, { unit: "mm", decimals, fixed: true });
  }
  return formatLength(mm, { unit: "in", decimals: 3, fixed: true });
}

/** A length or distance as a drawing dimensions it. */
export function dimension(mm: number, units: Units): string {
  if (units === "mm") return formatLength(mm, { unit: "mm", decimals: Math.abs(mm) < 10 ? 2 : 1 });
  return units === "in-fraction" && Math.abs(mm) >= 10
    ? formatLength(mm, { unit: "in", fraction: 64 })
    : formatLength(mm, { unit: "in", decimals: 3 });
}

export function angle(degrees: number): string {
  return formatAngle(degrees, Math.abs(degrees) < 10 ? 2 : 1, true);
}
