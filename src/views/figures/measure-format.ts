import type { PlanMeasureFormat } from "../../drawing/plan/rim-plan-layout.ts";
import { lengthFigure, type Units } from "../../instrument/length.ts";
import { angle, dimension } from "./measures.ts";

/** A length without its unit, for tables and for the edge of the plan. */
export function figure(mm: number, units: Units): string {
  if (units === "mm")
    return lengthFigure(mm, { unit: "mm", decimals: Math.abs(mm) < 10 ? 2 : 1, fixed: true });
  return units === "in-fraction" && Math.abs(mm) >= 10
    ? lengthFigure(mm, { unit: "in", fraction: 64 })
    : lengthFigure(mm, { unit: "in", decimals: 3, fixed: true });
}

export const measureFormat = (units: Units): PlanMeasureFormat => ({
  length: (mm) => dimension(mm, units),
  figure: (mm) => figure(mm, units),
  angle,
  unit: units === "mm" ? "mm" : "inch",
});

export const unitName = (units: Units): string => (units === "mm" ? "mm" : "inches");
