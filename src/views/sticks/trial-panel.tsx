import { fieldAt } from "../../instrument/fields.ts";
import { lengthFigure, type Units } from "../../instrument/length.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import { stickBounds } from "../../store/files/sticks-form.ts";
import type { Shop } from "../../store/shelf/shop.ts";
import { addStick, changeStick, removeStick } from "../../store/shelf/sticks.ts";
import { fieldFormat, optional, ValueEntry } from "../fields/number-entry.tsx";
import { useRimwright } from "../store-context.ts";
import { useShop, useShopEdit } from "../use-shop.ts";
import { sayLength } from "./stick-columns.ts";

/** Thickest that the slider reaches, mm: few sticks are thicker. What is typed may be. */
const slidesTo = 16;

const shimField = {
  ...fieldAt("target.value", "shim"),
  ...stickBounds.thickness,
  label: "Thickness",
};

/** The stick that is tried: typed, stepped or dragged, and how many it serves. */
export function TrialPanel({ served, of }: { readonly served: number; readonly of: number }) {
  const units = useRimwright((state) => state.choices.units);
  const { stick } = useShop(({ trial }) => trial);
  const edit = useShopEdit();
  const { thickness, width } = stick;
  const both = [
    ["mm", lengthFigure(thickness, { unit: "mm", decimals: 2 })],
    ["in", lengthFigure(thickness, { unit: "in", fraction: 64 })],
  ] as const;
  // The builder's own unit is the large one.
  const [own, other] = units === "mm" ? both : [both[1], both[0]];
  const put = (part: Partial<Stick>): void => edit((shop) => withTrial(shop, part));
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
          format={fieldFormat(shimField, units)}
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
          onClick={() =>
            edit((shop) => ({ ...shop, sticks: addStick(shop.sticks, { ...stick, name: "" }) }))
          }
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

const widthFormat = (units: Units) => optional(fieldFormat(fieldAt("shim.contact", "shim"), units));

const withTrial = (shop: Shop, part: Partial<Stick>): Shop => ({
  ...shop,
  trial: { ...shop.trial, stick: { ...shop.trial.stick, ...part } },
});

/** The sticks the shop owns. */
export function OwnedPanel() {
  const units = useRimwright((state) => state.choices.units);
  const { owned } = useShop(({ sticks }) => sticks);
  const tried = useShop(({ trial }) => trial.stick);
  const edit = useShopEdit();
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
        {owned.map(({ id, name, thickness, width }, i) => (
          <li key={id} className="stick-line">
            <button
              type="button"
              aria-pressed={tried.thickness === thickness && tried.width === width}
              onClick={() => edit((shop) => withTrial(shop, { thickness, width }))}
            >
              Try {sayLength(thickness, units)}
            </button>
            <input
              className="stick-name"
              aria-label={`Name of stick ${i + 1}`}
              placeholder="unnamed"
              value={name}
              maxLength={textLimits.name}
              onChange={({ target }) =>
                edit((shop) => ({
                  ...shop,
                  sticks: changeStick(shop.sticks, id, { name: target.value }),
                }))
              }
            />
            <ValueEntry
              label={`Thickness of stick ${i + 1}`}
              shown=""
              value={thickness}
              format={withoutSteps(fieldFormat(shimField, units))}
              onChange={(to) =>
                to !== null &&
                edit((shop) => ({
                  ...shop,
                  sticks: changeStick(shop.sticks, id, { thickness: to }),
                }))
              }
            />
            <ValueEntry
              label={`Width of stick ${i + 1}`}
              shown=""
              value={width}
              placeholder="own"
              format={withoutSteps(widthFormat(units))}
              onChange={(to) =>
                edit((shop) => ({ ...shop, sticks: changeStick(shop.sticks, id, { width: to }) }))
              }
            />
            <button
              type="button"
              aria-label={`Remove stick ${i + 1}`}
              onClick={() => edit((shop) => ({ ...shop, sticks: removeStick(shop.sticks, id) }))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

const withoutSteps = ({ step: _, ...format }: ReturnType<typeof fieldFormat>) => format;
