import { measurementField } from "../../instrument/as-built/measurement-fields.ts";
import type { Range } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { type Goal, goals, type OutlookResult, outlookSaid } from "../../profile/bench/outlook.ts";
import { standing } from "../../profile/standing.ts";
import { Select } from "../fields/select.tsx";
import { height } from "../figures/measures.ts";
import { useRimwright } from "../store-context.ts";
import { Mark } from "../verdict/standing-mark.tsx";
import { useShopEdit, useWorkpiece } from "./bench-context.ts";
import { useOutlook, type Workpiece } from "./use-outlook.ts";

const goalNames: Readonly<Record<Goal, string>> = {
  saddleExposure: "Saddle exposed",
  stringHeight: "String height",
  bridgeClearance: "Fret plane over the bridge",
};

/** What it will come to, in one sentence, always in sight. */
export function OutlookLine() {
  const piece = useWorkpiece();
  return piece === null ? null : <Line {...piece} />;
}

function Line(piece: Workpiece) {
  const { record, result, goal } = useOutlook(piece);
  const units = useRimwright((state) => state.choices.units);
  const edit = useShopEdit();
  return (
    <section className="outlook" aria-label="Outlook">
      <p className="outlook-said" aria-live="polite">
        {result.ok
          ? sayPhrase(outlookSaid(result.outlook, record, goal), units)
          : `${blame(result)} ${sayPhrase(result.why, units)}`}
      </p>
      {result.ok && (
        <dl className="outlook-heights">
          {goals.map((one) => (
            <Height
              key={one}
              goal={one}
              value={result.outlook.heights[one]}
              window={piece.instrument.windows[one]}
            />
          ))}
        </dl>
      )}
      <div className="outlook-goal">
        <Select
          label="Judge by"
          value={goal}
          options={goals.map((one) => [one, goalNames[one]])}
          onChoose={(one) => edit((shop) => ({ ...shop, goal: one }))}
        />
      </div>
    </section>
  );
}

const words = {
  within: "within its window",
  close: "close to its window’s edge",
  outside: "outside its window",
} as const;

interface HeightProps {
  readonly goal: Goal;
  readonly value: number;
  readonly window: Range;
}

/** One height at the saddle, and how it stands to its window. */
function Height({ goal, value, window }: HeightProps) {
  const units = useRimwright((state) => state.choices.units);
  const stands = standing(value, window);
  return (
    <div>
      <dt>{goalNames[goal]}</dt>
      <dd>
        {height(value, units)}{" "}
        <span className={`standing standing-${stands}`}>
          <Mark of={stands} />
          {words[stands]}
        </span>
      </dd>
    </div>
  );
}

/** Which measurement does not go with the rest. */
const blame = ({ measurement }: Extract<OutlookResult, { ok: false }>): string =>
  measurement === null
    ? "There is no outlook."
    : `“${measurementField(measurement).label}” does not go with the rest.`;
