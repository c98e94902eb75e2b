import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { LabelPlacement, outlineCost, thinLineCost } from "../label-placement.ts";
import { textBox } from "../lettering.ts";
import type { Scene, Shape } from "../scene.ts";
import { type EdgeSide, edgeShapes, outlinePoints, type Zone, zonesOf } from "./edge.ts";
import { extremeShapes, figureShapes } from "./figures.ts";
import { legendShape, lengthShapes, nameShapes } from "./names.ts";
import { centrePoints, crossLines, crossPoints, partShapes, soundholePoints } from "./parts.ts";
import { type PlanLayout, type PlanOptions, planLayoutOf } from "./rim-plan-layout.ts";

/**
 * The rim from above, tail left and neck right, to fill the room given: where dome and flat are, what
 * comes off the level rim all round, drawn out from the edge and in figures, and the lines to be
 * marked across it. Lengths run to scale.
 */
export function rimPlan(givens: Givens, profile: Profile, options: PlanOptions): Scene {
  const layout = planLayoutOf(givens, profile, options);
  const zones = zonesOf(layout);
  const { width, height } = layout;
  const shapes = [edgeShapes(layout, zones), ...partShapes(layout), ...lettering(layout, zones)];
  return { width, height, title: titleOf(layout), shapes };
}

function lettering(layout: PlanLayout, zones: readonly Zone[]): readonly Shape[] {
  const { width, height } = layout;
  const labels = new LabelPlacement({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const legend = legendShape(layout);
  for (const shape of legend.shapes) if (shape.kind === "text") labels.reserve(textBox(shape));
  const edgeSides: readonly EdgeSide[] = [1, -1];
  for (const side of edgeSides) {
    labels.avoid(outlinePoints(layout, zones, side, 0), outlineCost);
    labels.avoid(outlinePoints(layout, zones, side, 1), thinLineCost);
  }
  labels.avoid(centrePoints(layout), thinLineCost);
  labels.avoid(soundholePoints(layout), thinLineCost);
  for (const cross of crossLines(layout)) labels.avoid(crossPoints(layout, cross), outlineCost);
  return [
    legend,
    ...extremeShapes(layout, labels),
    ...lengthShapes(layout, labels),
    ...nameShapes(layout, labels),
    ...figureShapes(layout, labels),
  ];
}

function titleOf({ profile, words }: PlanLayout): string {
  const start =
    profile.rimOffset > leastShown
      ? ` ${words.length(profile.rimOffset)} of it comes off all round.`
      : "";
  return `Plan of the rim: up to ${words.length(profile.maxRemoval)} comes off the level rim ${words.length(profile.maxRemovalX)} from the tail, and least ${words.length(profile.leastRemovalX)} from the tail.${start}`;
}
