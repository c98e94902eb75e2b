import { useMemo, useState } from "react";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { usualLeastContact } from "../../profile/sticks/shared-shim.ts";
import type { SharedShimJob } from "../../worker/messages.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { fieldFormat, ValueEntry } from "../fields/value-entry.tsx";
import { useRimwright } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { SharedShimResult } from "./shared-shim-result.tsx";

const contacts = [
  ["own", "each its own contact"],
  ["best", "one contact, the roomiest"],
] as const;

/** Most that one shim is looked for: with more, there is seldom one. */
const most = 40;

interface Props {
  /** Those ticked. */
  readonly instruments: readonly Instrument[];
  /** The thickness tried, mm. */
  readonly shim: number;
}

/** One shim for several instruments: the one with the most room, and what to change where there is none. */
export function SharedShimPanel({ instruments, shim }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const [contact, setContact] = useState<SharedShimJob["contact"]>("own");
  const [leastContact, setLeastContact] = useState(usualLeastContact);
  const members = instruments.length <= most ? instruments : null;
  const job = useMemo(
    (): SharedShimJob | null =>
      members && { kind: "shared-shim", instruments: members, contact, leastContact, shim },
    [members, contact, leastContact, shim],
  );
  const { state, progress } = useJob<"shared-shim">(job);
  return (
    <section
      className="shared-shim"
      aria-labelledby="shared-shim-heading"
      aria-busy={members !== null && state !== "done"}
    >
      <h2 id="shared-shim-heading">One shim for the shop</h2>
      <p className="stick-note">
        For the instruments ticked. The best shim is the one that can be the most too thick or too
        thin before any of them leaves a window or overruns: room is counted in millimetres of shim.
      </p>
      <div className="stick-line">
        <ChoiceButtons legend="Contact" options={contacts} value={contact} onChoose={setContact} />
        {contact === "best" && (
          <ValueEntry
            label="Narrowest stick"
            value={leastContact}
            format={fieldFormat(fieldAt("shim.contact", "shim"), units)}
            onChange={(to) => setLeastContact(to ?? usualLeastContact)}
          />
        )}
      </div>
      {members === null && (
        <p className="stick-note">
          {instruments.length} are ticked. Tick {most} or fewer to see one shim for them; the fewest
          sticks for all stand above.
        </p>
      )}
      {state === "failed" && (
        <p className="stick-note">This could not be worked out in this browser.</p>
      )}
      {members !== null && progress !== null && (
        <SharedShimResult answer={progress.answer} shim={shim} />
      )}
    </section>
  );
}
