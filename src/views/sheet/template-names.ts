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
