import { useMemo } from "react";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import type { StickChangesJob } from "../../worker/messages.ts";
import { useJob } from "../use-job.ts";
import { useSame } from "../use-same.ts";
import type { StickRow } from "./stick-columns.ts";

/** The cheapest changes for rows in sight: for the nearest stick owned, or for the one tried where none is. */
export function useChanges(rows: readonly StickRow[], owned: readonly Stick[], stick: Stick) {
  const asked = useSame(
    rows.map(({ instrument, wants }) => ({
      instrument,
      stick: owned[wants?.nearest?.index ?? -1] ?? stick,
    })),
    (a, b) => a.instrument === b?.instrument && a.stick === b.stick,
  );
  const job = useMemo(
    (): StickChangesJob | null => (asked.length === 0 ? null : { kind: "stick-changes", asked }),
    [asked],
  );
  const { progress, shown } = useJob<"stick-changes">(job);
  return ({ instrument }: StickRow) => {
    const at =
      shown?.asked === asked ? asked.findIndex((one) => one.instrument === instrument) : -1;
    return progress?.answer[at];
  };
}
