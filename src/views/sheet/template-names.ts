import type { DomeMethod } from "../../instrument/dome-fields.ts";

/** The full-size templates there are, by the names they go under. */
export const templateNames = [
  "Half outline",
  "Side pattern",
  "Section profile",
  "Top braces",
  "Back braces",
  "Shim gauge",
] as const;

export type TemplateName = (typeof templateNames)[number];

/** What a template is called where it is chosen: with a seat the gauge is one for the spacer. */
export const templateLabel = (name: TemplateName, method: DomeMethod): string =>
  name === "Shim gauge" && method === "seat" ? "Spacer gauge" : name;
