import { planOf } from "../../drawing/plan.ts";
import { endsSomewhere, nothing, planHeight } from "../../drawing/plan-sheet.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { wordsIn } from "../figures/plan-words.ts";
import { useRimwright } from "../store-context.ts";
import { RimFigure } from "./rim-figure.tsx";
import { StationTable } from "./station-table.tsx";
import type { Rim } from "./use-rim.ts";

interface Props {
  readonly rim: Rim;
  readonly spacing: number;
  readonly onSpacing: (mm: number) => void;
}

/** Where and how much comes off, drawn and in figures. */
export function PlanPanel({ rim, spacing, onSpacing }: Props) {
  const { setting, profile } = rim;
  const units = useRimwright((state) => state.choices.units);
  const words = wordsIn(units);
  return (
    <section aria-labelledby="rim-plan">
      <h2 id="rim-plan">Plan</h2>
      <div className="rim-pair">
        <div className="rim-held">
          <RimFigure
            first={{ width: 760, height: 700 }}
            draw={(width) =>
              planOf(setting, profile, {
                width,
                height: planHeight(setting, profile, width),
                words,
              })
            }
          />
          <RimWords rim={rim} />
        </div>
        <div>
          <LengthEntry
            label="Stations every"
            value={spacing}
            least={5}
            most={500}
            onChange={(mm) => mm !== null && onSpacing(mm)}
          />
          <StationTable rim={rim} />
        </div>
      </div>
    </section>
  );
}

/** What the drawing's figures mean at the bench. */
function RimWords({ rim: { setting, profile } }: { readonly rim: Rim }) {
  const words = wordsIn(useRimwright((state) => state.choices.units));
  const { rimOffset, maxRemoval, maxRemovalX, leastRemovalX } = profile;
  const neckEnd = maxRemovalX > setting.outline.length - 1;
  const deepest = neckEnd ? "at the neck end" : `${words.length(maxRemovalX)} from the tail`;
  return (
    <>
      <p>
        Most comes off {deepest}: {words.length(maxRemoval)}.{" "}
        {endsSomewhere(profile)
          ? `Least comes off ${words.length(leastRemovalX)} from the tail: sanding ends there last, so stop when the mark there is just gone.`
          : "Nothing comes off between the tail and the break: the rim stays level there."}
      </p>
      {rimOffset > nothing && (
        <p>
          {words.length(rimOffset)} of every figure comes off all round. The rim turns about the
          break as it is sanded, and without that the dish would not reach the place of least
          removal. The strip for the sides, below, has it counted in.
        </p>
      )}
    </>
  );
}
