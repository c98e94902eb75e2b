import { useMemo } from "react";
import type { Units } from "../../instrument/length.ts";
import { type Learnt, learntNames } from "../../profile/bench/learning.ts";
import { settlingLearnt, settlingOf } from "../../profile/bench/settling.ts";
import { setField } from "../../store/document/edits.ts";
import { height } from "../figures/measures.ts";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useShop } from "../use-shop.ts";
import styles from "./settling-offer.css?inline";

addStyles(styles);

/** Beside the field: what the builder's own instruments settled by. The invented ones are not asked. */
export function SettlingLearnt() {
  const finished = useShop((shop) => shop.finished);
  const learnt = useMemo(() => settlingLearnt(finished), [finished]);
  return learnt === null ? null : <SettlingOffer learnt={learnt} />;
}

/** How far a builder's instruments came down at the saddle, offered to the plan to count on. */
export function SettlingOffer({ learnt }: { readonly learnt: Learnt }) {
  const units = useRimwright((state) => state.choices.units);
  const counted = useRimwright((state) => state.instrument.strings.settling);
  const edit = useEdit();
  const value = settlingOf(learnt);
  if (value === null) return null;
  const invented = learnt.samples.some((sample) => sample.invented);
  return (
    <div className="settling-offer">
      <p>
        {learntNames[learnt.kind]}, the mean of {learnt.samples.length}
        {invented && " with the invented ones"}: {moved(value, units)} at the saddle. This plan
        counts on {height(counted, units)}.
      </p>
      <button
        type="button"
        disabled={counted === value}
        onClick={() => edit((state) => setField(state, "strings.settling", value))}
      >
        Count on {height(value, units)} of settling
      </button>
    </div>
  );
}

const moved = (settling: number, units: Units): string =>
  `${height(Math.abs(settling), units)} ${settling < 0 ? "up" : "down"}`;
