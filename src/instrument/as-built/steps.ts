/** The order of work, from the level rim to a year under tension. */
export const stepIds = [
  "level",
  "mark",
  "dish",
  "check",
  "shim",
  "flat",
  "overrun",
  "offer",
  "gap",
  "fingerboard",
  "bridge",
  "saddle",
  "strings",
  "week",
  "year",
] as const;

export type StepId = (typeof stepIds)[number];

export const stepNames: Readonly<Record<StepId, string>> = {
  level: "Level the rim",
  mark: "Mark the break and the linings",
  dish: "Dish the tail part",
  check: "Check the dish",
  shim: "Set the shim",
  flat: "Sand the flat to the mark",
  overrun: "Check the overrun and feather it",
  offer: "Offer up the top",
  gap: "After the glue: the straightedge gap",
  fingerboard: "Neck and fingerboard",
  bridge: "Bridge",
  saddle: "Saddle",
  strings: "Strings on",
  week: "After a week under tension",
  year: "After a year under tension",
};

export const isStepId = (text: string): text is StepId =>
  (stepIds as readonly string[]).includes(text);
