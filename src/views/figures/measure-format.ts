import type { PlanMeasureFormat } from "../../drawing/plan/rim-plan-layout.ts";
import type { SectionFormat } from "../../drawing/section/section-layout.ts";
import { lengthFigure, nearest64, type Units } from "../../instrument/length.ts";
import { angle, dimension, height } from "./measures.ts";

/** A length without its unit, for tables and for the edge of the plan. */
export function figure(mm: number, units: Units): string {
  if (units === "mm")
    return lengthFigure(mm, { unit: "mm", decimals: Math.abs(mm) < 10 ? 2 : 1, fixed: true });
  return units === "in-fraction" && Math.abs(mm) >= 10
    ? lengthFigure(mm, { unit: "in", fraction: 64 })
    : lengthFigure(mm, { unit: "in", decimals: 3, fixed: true });
}

export const measureFormat = (units: Units): PlanMeasureFormat & SectionFormat => ({
  length: (mm) => dimension(mm, units),
  shim: (mm) => (units === "in-fraction" ? nearest64(mm) : dimension(mm, units)),
  height: (mm) => height(mm, units),
  figure: (mm) => figure(mm, units),
  angle,
  unit: units === "mm" ? "mm" : "inch",
});

export const unitName = (units: Units): string => (units === "mm" ? "mm" : "inches");
