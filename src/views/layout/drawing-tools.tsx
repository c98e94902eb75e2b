import { chooseStretch, turnOver } from "../../store/choosing.ts";
import { stretches } from "../../store/state.ts";
import { useAct, useRimwright } from "../store-context.ts";

/** How the section is drawn. */
export function DrawingTools() {
  const stretch = useRimwright((state) => state.choices.stretch);
  const turned = useRimwright((state) => state.choices.turned);
  const act = useAct();
  return (
    <div className="drawing-tools">
      <fieldset className="switch">
        <legend className="unseen">Heights</legend>
        {stretches.map((times) => (
          <button
            key={times}
            type="button"
            aria-pressed={stretch === times}
            aria-label={times === 1 ? "Heights true to scale" : `Heights ${times} times`}
            onClick={() => act((state) => chooseStretch(state, times))}
          >
            {times}×
          </button>
        ))}
      </fieldset>
      <button type="button" aria-pressed={turned} onClick={() => act(turnOver)}>
        Turn over
      </button>
    </div>
  );
}
