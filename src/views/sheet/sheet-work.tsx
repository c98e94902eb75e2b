import { endsSomewhere } from "../../drawing/plan-sheet.ts";
import type { Units } from "../../instrument/length.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { dimension, height } from "../measures.ts";

/** The order of work in short, with the figures to meet, and the cautions. */
export function SheetWork({
  plan: { instrument, profile },
  units,
}: {
  plan: ShownPlan;
  units: Units;
}) {
  const say = (mm: number): string => height(mm, units);
  const { overrunLength, overrunDepth, flatGap } = profile;
  return (
    <section className="sheet-work">
      <ol>
        <li>Level the rim. Mark the break from both ends.</li>
        <li>
          {!endsSomewhere(profile)
            ? "There is no dome: the rim stays level from the tail to the break."
            : `Dish the rim from the tail to the break; it ends last ${dimension(profile.leastRemovalX, units)} from the tail.`}
        </li>
        <li>
          Shim under the tail, its edge {dimension(instrument.shim.contact, units)} from the tail
          end. Sand the flat on a board, up to the break and no farther.
        </li>
        <li>
          {overrunLength > 0
            ? `The flat runs ${dimension(overrunLength, units)} past the break, ${say(overrunDepth)} deep: feather it in the dish.`
            : "No overrun to be seen past the break."}
        </li>
        <li>
          After the glue-up a straightedge on the flat stands{" "}
          {flatGap >= 0 ? `${say(flatGap)} over` : `${say(-flatGap)} into`} the top at the saddle
          line.
        </li>
      </ol>
      <p>
        Wood dust causes cancer: extraction and a fitted mask. Keep hands and sleeves from edges
        under power. Stand aside of clamps and strings under load. Your own country’s rules come
        first.
      </p>
    </section>
  );
}
