import { lengthFigure } from "../../instrument/length.ts";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import { addStick } from "../../store/shelf/sticks.ts";
import { ValueEntry } from "../fields/value-entry.tsx";
import { useRimwright } from "../store-context.ts";
import { useShop } from "../use-shop.ts";
import { sayLength } from "./stick-columns.ts";
import { thicknessFormat, widthFormat } from "./stick-entries.ts";
import { useSticksEdit, useTrialEdit } from "./use-sticks.ts";

/** Thickest that the slider reaches, mm: few sticks are thicker. What is typed may be. */
const slidesTo = 16;

/** The stick that is tried: typed, stepped or dragged, and how many it serves. */
export function TrialPanel({ served, of }: { readonly served: number; readonly of: number }) {
  const units = useRimwright((state) => state.choices.units);
  const { stick } = useShop(({ trial }) => trial);
  const edit = useSticksEdit();
  const editTrial = useTrialEdit();
  const { thickness, width } = stick;
  const both = [
    ["mm", lengthFigure(thickness, { unit: "mm", decimals: 2 })],
    ["in", lengthFigure(thickness, { unit: "in", fraction: 64 })],
  ] as const;
  // The builder's own unit is the large one.
  const [own, other] = units === "mm" ? both : [both[1], both[0]];
  const put = (part: Partial<Stick>): void => editTrial({ stick: { ...stick, ...part } });
  return (
    <section className="stick-trial" aria-labelledby="stick-trial">
      <h2 id="stick-trial">The stick tried</h2>
      <p className="stick-figure" role="status">
        <strong>{own[1]}</strong> {own[0]}{" "}
        <span>
          {other[1]} {other[0]}
        </span>{" "}
        <span>
          serves {served} of {of}
        </span>
      </p>
      <input
        type="range"
        className="stick-slider"
        aria-label="Thickness, to drag"
        aria-valuetext={sayLength(thickness, units)}
        min={0}
        max={Math.max(slidesTo, thickness)}
        step={0.1}
        value={thickness}
        onChange={({ target }) => put({ thickness: Number(target.value) })}
      />
      <div className="stick-line">
        <ValueEntry
          label="Thickness"
          value={thickness}
          format={thicknessFormat(units)}
          onChange={(to) => to !== null && put({ thickness: to })}
        />
        <ValueEntry
          label="Width under the rim"
          value={width}
          placeholder="own"
          format={widthFormat(units)}
          onChange={(to) => put({ width: to })}
        />
        <button
          type="button"
          onClick={() => edit((sticks) => addStick(sticks, { ...stick, name: "" }))}
        >
          Add it to my sticks
        </button>
      </div>
      <p className="stick-note">
        Without a width the stick lies under each rim as far in as that instrument states.
      </p>
    </section>
  );
}
