import type { Profile } from "../../profile/outcome.ts";
import type { Setting } from "../../profile/setting.ts";
import { heavy, light, Placer } from "../label-placement.ts";
import { textBox } from "../lettering.ts";
import type { Scene, Shape } from "../scene.ts";
import { edgeShapes, type Hand, outlinePoints, type Zone, zonesOf } from "./edge.ts";
import { extremeShapes, figureShapes } from "./figures.ts";
import { legendShape, lengthShapes, nameShapes } from "./names.ts";
import { centrePoints, crossLines, crossPoints, partShapes, soundholePoints } from "./parts.ts";
import { type PlanOptions, type PlanSheet, planSheetOf } from "./plan-sheet.ts";

/**
 * The rim from above, tail left and neck right, to fill the room given: where dome and flat are, what
 * comes off the level rim all round, drawn out from the edge and in figures, and the lines to be
 * marked across it. Lengths run to scale.
 */
export function planOf(setting: Setting, profile: Profile, options: PlanOptions): Scene {
  const sheet = planSheetOf(setting, profile, options);
  const zones = zonesOf(sheet);
  const { width, height } = sheet;
  const shapes = [edgeShapes(sheet, zones), ...partShapes(sheet), ...lettering(sheet, zones)];
  return { width, height, title: titleOf(sheet), shapes };
}

function lettering(sheet: PlanSheet, zones: readonly Zone[]): readonly Shape[] {
  const { width, height } = sheet;
  const placer = new Placer({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const legend = legendShape(sheet);
  for (const shape of legend.shapes) if (shape.kind === "text") placer.keepClear(textBox(shape));
  const hands: readonly Hand[] = [1, -1];
  for (const hand of hands) {
    placer.avoid(outlinePoints(sheet, zones, hand, 0), heavy);
    placer.avoid(outlinePoints(sheet, zones, hand, 1), light);
  }
  placer.avoid(centrePoints(sheet), light);
  placer.avoid(soundholePoints(sheet), light);
  for (const cross of crossLines(sheet)) placer.avoid(crossPoints(sheet, cross), heavy);
  return [
    legend,
    ...extremeShapes(sheet, placer),
    ...lengthShapes(sheet, placer),
    ...nameShapes(sheet, placer),
    ...figureShapes(sheet, placer),
  ];
}

function titleOf({ profile, words }: PlanSheet): string {
  const start =
    profile.rimOffset > 0 ? ` ${words.length(profile.rimOffset)} of it comes off all round.` : "";
  return `Plan of the rim: up to ${words.length(profile.maxRemoval)} comes off the level rim ${words.length(profile.maxRemovalX)} from the tail, and least ${words.length(profile.leastRemovalX)} from the tail.${start}`;
}
