import { type DomeMethod, domeMethods } from "../../instrument/dome-fields.ts";
import { switchMethod } from "../../store/document/edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";

/** How a domed top comes to its flat, in a builder's words: on the button, in full, and when to choose it. */
export const methodNames: Readonly<
  Record<DomeMethod, { readonly short: string; readonly name: string; readonly when: string }>
> = {
  break: {
    short: "On the rim, on a shim",
    name: "Flat sanded on the rim",
    when: "The rim is domed up to a break and sanded flat from there, before the top goes on.",
  },
  seat: {
    short: "On the top, on a spacer",
    name: "Seat sanded on the top",
    when: "Rim and top are domed all over; the fingerboard's seat is sanded flat on the glued top.",
  },
};

/** Where the flat for the fingerboard is sanded. Both ways are asked for the same saddle. */
export function MethodFields() {
  const method = useRimwright((state) => state.instrument.dome.method);
  const edit = useEdit();
  return (
    <>
      <fieldset className="target-kinds">
        <legend className="target-ask">Where the flat is sanded</legend>
        {domeMethods.map((one) => (
          <label key={one} className="target-kind">
            <input
              type="radio"
              className="target-tick"
              name="dome-method"
              aria-label={methodNames[one].name}
              checked={method === one}
              onChange={() => edit((state) => switchMethod(state, one))}
            />
            {methodNames[one].short}
          </label>
        ))}
      </fieldset>
      <p className="field-note">{methodNames[method].when}</p>
    </>
  );
}
