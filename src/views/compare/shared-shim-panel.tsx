import { useEffect, useMemo, useState } from "react";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { presets } from "../../instrument/presets.ts";
import { usualLeastContact } from "../../profile/sticks/shared-shim.ts";
import type { Comparison } from "../../store/document/comparison.ts";
import { plot } from "../../store/document/variant-edits.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import type { SharedShimJob } from "../../worker/messages.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { fieldFormat, optional, ValueEntry } from "../fields/number-entry.tsx";
import { useEdit, useRimwright, useShelfSlot } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { SharedShimResult } from "./shared-shim-result.tsx";
import { useComparison, useNumbers } from "./use-comparison.ts";

const contacts = [
  ["own", "each its own contact"],
  ["best", "one contact, the roomiest"],
] as const;

/** One shim for several instruments. */
export function SharedShimPanel({ instruments }: { readonly instruments: readonly Instrument[] }) {
  const open = useNumbers(useRimwright((state) => state.lastGood));
  const units = useRimwright((state) => state.choices.units);
  const { family } = useComparison();
  const edit = useEdit();
  const all = useMemo(
    () => [open, ...instruments.filter(({ id }) => id !== open.id)],
    [open, instruments],
  );
  const { chosen, contact, shim } = family;
  const [leastContact, setLeastContact] = useState(usualLeastContact);
  const members = useMemo(
    () => (chosen === null ? all : all.filter(({ id }) => chosen.includes(id))),
    [all, chosen],
  );
  const job = useMemo<SharedShimJob>(
    () => ({ kind: "shared-shim", instruments: members, contact, leastContact, shim }),
    [members, contact, leastContact, shim],
  );
  const { state, progress } = useJob<"shared-shim">(job);
  const change = (to: Partial<Comparison["family"]>): void =>
    edit((state) => plot(state, (plots) => ({ family: { ...plots.family, ...to } })));
  const toggle = (id: string, on: boolean): void => {
    const ids = members.map((member) => member.id).filter((one) => one !== id);
    change({ chosen: on ? [...ids, id] : ids });
  };
  return (
    <section
      className="shared-shim"
      aria-labelledby="shared-shim-heading"
      aria-busy={state !== "done"}
    >
      <div className="panel-head">
        <h2 id="shared-shim-heading">One shim for the shop</h2>
      </div>
      <p className="panel-note">
        Choose instruments. The best shim is the one that can be the most too thick or too thin
        before any of them leaves a window or overruns: room is counted in millimetres of shim.
      </p>
      <fieldset className="members">
        <legend className="unseen">Instruments</legend>
        {all.map(({ id, name }) => (
          <label key={id} className="member">
            <input
              type="checkbox"
              className="tick"
              checked={members.some((member) => member.id === id)}
              onChange={({ target }) => toggle(id, target.checked)}
            />
            {name === "" ? "Unnamed" : name}
            {id === open.id && " (open)"}
          </label>
        ))}
      </fieldset>
      <div className="panel-acts">
        <ChoiceButtons
          legend="Contact"
          options={contacts}
          value={contact}
          onChoose={(to) => change({ contact: to })}
        />
        {contact === "best" && (
          <ValueEntry
            label="Narrowest stick"
            value={leastContact}
            format={fieldFormat(fieldAt("shim.contact", "shim"), units)}
            onChange={(to) => setLeastContact(to ?? usualLeastContact)}
          />
        )}
        <ValueEntry
          label="The shim I own"
          value={shim}
          placeholder="none"
          format={optional(fieldFormat(fieldAt("target.value", "shim"), units))}
          onChange={(to) => change({ shim: to })}
        />
      </div>
      {state === "failed" && (
        <p className="panel-note">This could not be worked out in this browser.</p>
      )}
      {progress !== null && <SharedShimResult answer={progress.answer} shim={shim} />}
    </section>
  );
}

/** Most that one shim is looked for: with more, there is seldom one. */
const most = 20;

/** The instruments changed last on the shelf, besides the open one; the invented ones while there are none. */
export function useShopInstruments(): readonly Instrument[] {
  const slot = useShelfSlot();
  const shelf = slot.is === "open" ? slot.shelf : null;
  const open = useRimwright(({ instrument }) => instrument.id);
  const [kept, setKept] = useState<readonly Instrument[]>([]);
  useEffect(() => {
    if (shelf === null) return;
    let wanted = true;
    // A shelf that cannot be read says so in its own view.
    void latest(shelf, open).then(
      (found) => wanted && setKept(found),
      () => {},
    );
    return () => {
      wanted = false;
    };
  }, [shelf, open]);
  return kept.length > 0 ? kept : presets;
}

async function latest(shelf: Shelf, open: string): Promise<readonly Instrument[]> {
  const cards = (await shelf.cards()).filter(({ id }) => id !== open);
  const chosen = cards.toSorted((a, b) => b.savedAt - a.savedAt).slice(0, most);
  const works = await Promise.all(chosen.map(({ id }) => shelf.document(id)));
  return works.flatMap((document) => (document === undefined ? [] : [document.lastGood]));
}
