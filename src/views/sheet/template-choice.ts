import type { BraceShape } from "../../drawing/side/brace.ts";
import { bracesTemplate } from "../../drawing/templates/brace-template.ts";
import {
  halfOutlineTemplate,
  wholeOutlineTemplate,
} from "../../drawing/templates/outline-template.ts";
import { saddleTemplate } from "../../drawing/templates/saddle-template.ts";
import { sectionTemplate } from "../../drawing/templates/section-template.ts";
import { gaugeTemplate } from "../../drawing/templates/shim-gauge.ts";
import { sidePatternTemplate } from "../../drawing/templates/side-pattern-template.ts";
import type { Template } from "../../drawing/templates/template.ts";
import { formatRadius, type Units } from "../../instrument/length.ts";
import type { Givens } from "../../profile/givens.ts";
import { halfOn } from "../../profile/halves.ts";
import type { Profile } from "../../profile/outcome.ts";
import { sideOf } from "../../profile/side.ts";
import type { Plate } from "../fields/braces.tsx";
import { anglePartOf } from "../figures/angle-part.ts";
import { dimension } from "../figures/measures.ts";
import { type TemplateName, templateLabel } from "./template-names.ts";

/** The plate whose braces a template is of, where it is one of braces. */
export function plateOf(name: TemplateName): Plate | null {
  if (name === "Top braces") return "Top";
  return name === "Back braces" ? "Back" : null;
}

/** Null where there is nothing to draw: a shim too thin to gauge, no brace, or a string no higher than the bridge. */
export function templateOf(
  name: TemplateName,
  givens: Givens,
  profile: Profile,
  units: Units,
  braces: readonly BraceShape[],
): Template | null {
  const words = { length: (mm: number) => dimension(mm, units) };
  const { instrument } = givens;
  switch (name) {
    case "Half outline":
      return halfOutlineTemplate(givens, profile, words);
    case "Whole outline":
      return wholeOutlineTemplate(givens, profile, words);
    case "Side pattern":
    case "Treble side pattern": {
      const half = halfOn(givens.halves, name === "Side pattern" ? "bass" : "treble");
      const called = templateLabel(name, instrument.dome.method, givens.halves.length > 1);
      return sidePatternTemplate(sideOf(givens, profile, half), words, called);
    }
    case "Section profile":
      return sectionTemplate(givens, profile, words);
    case "Shim gauge":
      return gaugeTemplate(anglePartOf(profile), words);
    case "Saddle":
      return saddleTemplate(givens, profile);
    case "Top braces":
    case "Back braces":
      if (braces.length === 0) return null;
      return bracesTemplate(braces, name.slice(0, -1), {
        ...words,
        radius: (mm: number) => formatRadius(mm, units),
      });
  }
}
