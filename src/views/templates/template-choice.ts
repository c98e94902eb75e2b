import { braceTemplate } from "../../drawing/brace-template.ts";
import { halfOutlineTemplate } from "../../drawing/half-outline.ts";
import { sectionTemplate } from "../../drawing/section-template.ts";
import { shimGaugeTemplate } from "../../drawing/shim-gauge.ts";
import { sidePatternTemplate } from "../../drawing/side-pattern-template.ts";
import type { Template } from "../../drawing/template.ts";
import type { Units } from "../../instrument/length.ts";
import type { Profile } from "../../profile/outcome.ts";
import { type Setting, settingOf } from "../../profile/setting.ts";
import { sideOf } from "../../profile/side.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { dimension } from "../measures.ts";
import type { TemplateName } from "./template-names.ts";

/** A brace's own measures; what is left out follows the body's. */
export interface BraceWish {
  readonly length?: number;
  readonly radius?: number | null;
}

/** The brace a template is drawn of, where it is one. */
export function braceShape(
  name: TemplateName,
  { instrument: { body, dome } }: ShownPlan,
  wish: BraceWish,
) {
  const planned = name === "Top brace" ? dome.braceRadius : body.backRadius;
  return {
    length: wish.length ?? Math.round(body.lowerBoutWidth),
    radius: wish.radius === undefined ? planned : wish.radius,
  };
}

/** Null where there is nothing to draw: no setting, or a shim too thin to gauge. */
export function templateOf(
  name: TemplateName,
  plan: ShownPlan,
  units: Units,
  wish: BraceWish,
): Template | null {
  const set = settingOf(plan.instrument);
  if (!set.ok) return null;
  const words = { length: (mm: number) => dimension(mm, units) };
  switch (name) {
    case "Half outline":
    case "Side pattern":
    case "Section profile":
      return bodyTemplate(name, set.setting, plan.profile, words);
    case "Shim gauge":
      return shimGaugeTemplate(plan.profile.shim, words);
    case "Top brace":
    case "Back brace":
      return braceTemplate(braceShape(name, plan, wish), name, words);
  }
}

function bodyTemplate(
  name: "Half outline" | "Side pattern" | "Section profile",
  setting: Setting,
  profile: Profile,
  words: { readonly length: (mm: number) => string },
): Template {
  if (name === "Half outline") return halfOutlineTemplate(setting, profile, words);
  if (name === "Section profile") return sectionTemplate(setting, profile, words);
  return sidePatternTemplate(sideOf(setting, profile), words);
}
