import { textLimits } from "../../instrument/text-limits.ts";
import type { OwnedStick } from "../../store/files/sticks-form.ts";
import { changeStick, removeStick } from "../../store/shelf/sticks.ts";
import { type NumberFormat, ValueEntry } from "../fields/value-entry.tsx";
import { useRimwright } from "../store-context.ts";
import { useShop } from "../use-shop.ts";
import { sayLength } from "./stick-columns.ts";
import { thicknessFormat, widthFormat } from "./stick-entries.ts";
import { useSticksEdit, useTrialEdit } from "./use-sticks.ts";

/** The sticks the shop owns. */
export function OwnedPanel() {
  const { owned } = useShop(({ sticks }) => sticks);
  return (
    <section className="stick-owned" aria-labelledby="stick-owned">
      <h2 id="stick-owned">My sticks</h2>
      {owned.length === 0 && (
        <p className="stick-note">
          None yet. Set a thickness and add it: then it is known which of yours comes nearest to
          what each instrument wants. They are kept in this browser, and in the shelf’s file.
        </p>
      )}
      <ul>
        {owned.map((stick, i) => (
          <OwnedRow key={stick.id} stick={stick} place={i + 1} />
        ))}
      </ul>
    </section>
  );
}

/** One of them: to be tried, named, changed and removed. */
function OwnedRow({ stick, place }: { readonly stick: OwnedStick; readonly place: number }) {
  const { id, name, thickness, width } = stick;
  const units = useRimwright((state) => state.choices.units);
  const tried = useShop(({ trial }) => trial.stick);
  const edit = useSticksEdit();
  const editTrial = useTrialEdit();
  const put = (part: Partial<OwnedStick>): void => edit((sticks) => changeStick(sticks, id, part));
  return (
    <li className="stick-line">
      <button
        type="button"
        aria-pressed={tried.thickness === thickness && tried.width === width}
        onClick={() => editTrial({ stick: { thickness, width } })}
      >
        Try {sayLength(thickness, units)}
      </button>
      <input
        className="stick-name"
        aria-label={`Name of stick ${place}`}
        placeholder="unnamed"
        value={name}
        maxLength={textLimits.name}
        onChange={({ target }) => put({ name: target.value })}
      />
      <ValueEntry
        label={`Thickness of stick ${place}`}
        shown=""
        value={thickness}
        format={withoutSteps(thicknessFormat(units))}
        onChange={(to) => to !== null && put({ thickness: to })}
      />
      <ValueEntry
        label={`Width of stick ${place}`}
        shown=""
        value={width}
        placeholder="own"
        format={withoutSteps(widthFormat(units))}
        onChange={(to) => put({ width: to })}
      />
      <button
        type="button"
        aria-label={`Remove stick ${place}`}
        onClick={() => edit((sticks) => removeStick(sticks, id))}
      >
        Remove
      </button>
    </li>
  );
}

const withoutSteps = ({ step: _, ...format }: NumberFormat): NumberFormat => format;
