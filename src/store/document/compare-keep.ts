import { besideEditor } from "./beside.ts";
import type { Comparison } from "./comparison.ts";
import { variantsGesture } from "./gesture.ts";
import { type Part, partOf, remembered } from "./part.ts";
import type { Store } from "./store.ts";

/** The open instrument's comparison by its id. */
type Comparisons = Readonly<Record<string, Comparison>>;

/** The open instrument's comparison, as the Compare view reads and edits it. What is done to the variants can be taken back. */
export function makeCompareStore(page: Store): Part<Comparisons> {
  const edit = besideEditor(page);
  const by = remembered(
    (id: string, comparison: Comparison): Comparisons => ({ [id]: comparison }),
  );
  const read = (): Comparisons => {
    const { instrument, comparison } = page.getState();
    return by(instrument.id, comparison);
  };
  return partOf([page], read, (_, after) => {
    const { instrument, comparison } = page.getState();
    const next = after[instrument.id];
    if (next === undefined || next === comparison) return;
    if (next.variants === comparison.variants) page.setState({ comparison: next });
    else {
      const gesture = variantsGesture(comparison.variants, next.variants);
      edit((state) => ({ ...state, comparison: next, gesture }));
    }
  });
}
