import type { Givens } from "../../profile/givens.ts";
import { type BodySide, onSide } from "../../profile/halves.ts";
import type { Profile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { LabelPlacement, outlineCost, thinLineCost } from "../label-placement.ts";
import { textBox } from "../lettering.ts";
import type { Scene, Shape } from "../scene.ts";
import { type DrawnEdge, edgeShapes, edgesOf, outlinePoints } from "./edge.ts";
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
  const edges = edgesOf(layout);
  const { width, height } = layout;
  const shapes = [edgeShapes(layout, edges), ...partShapes(layout), ...lettering(layout, edges)];
  return { width, height, title: titleOf(layout), shapes };
}

function lettering(layout: PlanLayout, edges: readonly DrawnEdge[]): readonly Shape[] {
  const { width, height } = layout;
  const labels = new LabelPlacement({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const legend = legendShape(layout);
  for (const shape of legend.shapes) if (shape.kind === "text") labels.reserve(textBox(shape));
  for (const edge of edges) {
    labels.avoid(outlinePoints(layout, edge, 0), outlineCost);
    labels.avoid(outlinePoints(layout, edge, 1), thinLineCost);
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
  const at = (x: number, side: BodySide | null): string =>
    `${words.length(x)} from the tail${onSide(side)}`;
  const most = at(profile.maxRemovalX, profile.maxRemovalSide);
  const least = at(profile.leastRemovalX, profile.leastRemovalSide);
  return `Plan of the rim: up to ${words.length(profile.maxRemoval)} comes off the level rim ${most}, and least ${least}.${start}`;
}
