import type { DomeMethod } from "../dome-fields.ts";

/** The steps of the work by either method, from the level rim to a year under tension: see `stepsOf`. */
export const stepIds = [
  "level",
  "mark",
  "dish",
  "check",
  "shim",
  "flat",
  "overrun",
  "offer",
  "top",
  "spacer",
  "seat",
  "gap",
  "fingerboard",
  "bridge",
  "saddle",
  "strings",
  "week",
  "year",
] as const;

/** Where the ways part: the break and its flat are the one's, the seat on the glued top the other's. */
const onlyOf: Readonly<Record<DomeMethod, readonly StepId[]>> = {
  break: ["mark", "shim", "flat", "overrun", "offer"],
  seat: ["top", "spacer", "seat"],
};

/** The order of work with a method. */
export const stepsOf = (method: DomeMethod): readonly StepId[] =>
  stepIds.filter((id) => !onlyOf[method === "break" ? "seat" : "break"].includes(id));

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
  top: "Glue on the domed top",
  spacer: "Set bar and spacer",
  seat: "Sand the seat flat",
  gap: "After the glue: the straightedge gap",
  fingerboard: "Neck and fingerboard",
  bridge: "Bridge",
  saddle: "Saddle",
  strings: "Strings on",
  week: "After a week under tension",
  year: "After a year under tension",
};

const namesOnSeat: Readonly<Partial<Record<StepId, string>>> = {
  dish: "Dish the whole rim",
  gap: "Check the seat: the straightedge gap",
};

/** What a step is called with a method. */
export const stepNameOf = (id: StepId, method: DomeMethod): string =>
  (method === "seat" ? namesOnSeat[id] : undefined) ?? stepNames[id];

export const isStepId = (text: string): text is StepId =>
  (stepIds as readonly string[]).includes(text);
