import type { DomeMethod } from "../../instrument/dome-fields.ts";

/** The full-size templates there are, by the names they go under. */
const templateNames = [
  "Half outline",
  "Whole outline",
  "Side pattern",
  "Treble side pattern",
  "Section profile",
  "Top braces",
  "Back braces",
  "Shim gauge",
  "Saddle",
] as const;

export type TemplateName = (typeof templateNames)[number];

/** The templates of one instrument: of halves that differ the whole outline and both sides. */
export const templatesOf = (uneven: boolean): readonly TemplateName[] =>
  templateNames.filter((name) => name !== (uneven ? "Half outline" : "Treble side pattern"));

/** What a template is called where it is chosen: with a seat the gauge is one for the spacer. */
export function templateLabel(name: TemplateName, method: DomeMethod, uneven: boolean): string {
  if (name === "Shim gauge" && method === "seat") return "Spacer gauge";
  return name === "Side pattern" && uneven ? "Bass side pattern" : name;
}
