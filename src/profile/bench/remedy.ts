import type { AsBuilt, Change } from "../../instrument/as-built/as-built.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import type { DomeMethod } from "../../instrument/dome-fields.ts";
import type { Phrase } from "../../instrument/phrase.ts";
import type { MadeInstrument } from "./made-instrument.ts";
import type { Goal } from "./outlook.ts";

const remedyIds = [
  "shim",
  "spacer",
  "seat-again",
  "flat-about-break",
  "flat-about-neck-end",
  "bridge",
  "fingerboard-thickness",
  "fingerboard-taper",
  "wedge",
  "heel-tip",
  "heel-shoulder",
  "saddle",
] as const;

export type RemedyId = (typeof remedyIds)[number];

const onlyOf: Readonly<Record<DomeMethod, readonly RemedyId[]>> = {
  break: ["shim", "flat-about-break", "flat-about-neck-end"],
  seat: ["spacer", "seat-again"],
};

/** The remedies there are with a method. */
export const remediesOf = (method: DomeMethod): readonly RemedyId[] =>
  remedyIds.filter((id) => !onlyOf[method === "break" ? "seat" : "break"].includes(id));

/** What a remedy starts from. */
export interface RemedyContext {
  readonly made: MadeInstrument;
  readonly goal: Goal;
  readonly stage: Stage;
}

/** One way to raise or lower the goal at the saddle line by an exact amount. */
export interface Remedy {
  readonly id: RemedyId;
  readonly name: string;
  /** By how much it moves the goal, mm; positive raises it. */
  readonly raise: number;
  /** Wood taken off or put on where the most of it is, mm. */
  readonly amount: number;
  /** What to do. */
  readonly instruction: Phrase;
  /** What else it changes. */
  readonly also: readonly Phrase[];
  readonly changes: readonly Change[];
}

export type RemedyResult =
  | { readonly ok: true; readonly remedy: Remedy }
  /** Why it is no longer, or not yet, or never possible. */
  | { readonly ok: false; readonly id: RemedyId; readonly name: string; readonly bar: Phrase };

/** How to move the goal by `raise`, or why not so. */
export type RemedyMaker = (context: RemedyContext, raise: number) => RemedyResult;

export const remedyNames: Readonly<Record<RemedyId, string>> = {
  shim: "Another shim",
  spacer: "Another spacer",
  "seat-again": "Re-sand the seat",
  "flat-about-break": "Re-sand the flat about the break",
  "flat-about-neck-end": "Re-sand the flat about the neck end",
  bridge: "Bridge thickness",
  "fingerboard-thickness": "Fingerboard thickness",
  "fingerboard-taper": "Fingerboard taper",
  wedge: "Wedge under the extension",
  "heel-tip": "Trim the heel at its tip",
  "heel-shoulder": "Trim the heel at its shoulder",
  saddle: "Saddle",
};

export const barred = (id: RemedyId, bar: Phrase): RemedyResult => ({
  ok: false,
  id,
  name: remedyNames[id],
  bar,
});

export const remedied = (remedy: Omit<Remedy, "name">): RemedyResult => ({
  ok: true,
  remedy: { ...remedy, name: remedyNames[remedy.id] },
});

/** How far the work is, as far as it rules a remedy out. */
export interface Stage {
  readonly sanded: boolean;
  readonly glued: boolean;
  readonly neckOn: boolean;
  readonly bridgeMade: boolean;
  readonly strung: boolean;
}

export function stageOf({ done, readings }: AsBuilt): Stage {
  const any = (steps: readonly StepId[]): boolean => steps.some((step) => done[step] !== undefined);
  const strung = any(["strings", "week", "year"]);
  const glued = strung || any(["gap"]) || readings.gapAfter !== undefined;
  const sandedSeen =
    readings.flatLength ?? readings.overrun ?? readings.gapBefore ?? readings.plateLeft;
  return {
    sanded: glued || any(["flat", "overrun", "offer", "seat"]) || sandedSeen !== undefined,
    glued,
    neckOn: strung || any(["fingerboard"]),
    bridgeMade: strung || any(["bridge"]),
    strung,
  };
}
