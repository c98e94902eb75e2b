import { useState } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldPaths } from "../../instrument/fields.ts";
import { mostVariants, type Variant } from "../../profile/comparison/variant.ts";
import { newId } from "../../store/document/new-id.ts";
import { addVariant, removeVariant, restoreVariant } from "../../store/document/variant-edits.ts";
import { FieldChoice } from "../fields/field-choice.tsx";
import { useEdit, useRimwright } from "../store-context.ts";
import { TableExport } from "./table-export.tsx";
import { useCompared, useComparison } from "./use-comparison.ts";
import { VariantsTable } from "./variants-table.tsx";

interface Removed {
  readonly variant: Variant;
  readonly at: number;
}

/** The variants side by side, each edited where it stands. */
export function VariantsPanel() {
  const base = useRimwright((state) => state.instrument);
  const { variants } = useComparison();
  const edit = useEdit();
  const compared = useCompared();
  const [asked, setAsked] = useState<readonly FieldPath[]>([]);
  const [removed, setRemoved] = useState<Removed | null>(null);
  const changed = variants.flatMap(({ changes }) => Object.keys(changes));
  const paths = fieldPaths.filter((path) => changed.includes(path) || asked.includes(path));
  const remove = (variant: Variant): void => {
    setRemoved({ variant, at: variants.indexOf(variant) });
    edit((state) => removeVariant(state, variant.id));
  };
  const putBack = (): void => {
    if (removed === null) return;
    edit((state) => restoreVariant(state, removed.variant, removed.at));
    setRemoved(null);
  };
  return (
    <section className="variants" aria-labelledby="variants-heading">
      <div className="panel-head">
        <h2 id="variants-heading">Variants of {base.name === "" ? "the instrument" : base.name}</h2>
        <TableExport compared={compared} paths={paths} />
      </div>
      {variants.length === 0 && (
        <p className="panel-note">
          A variant is the same instrument with some numbers changed. Add one, choose what to
          change, and read what it does beside the base. Up to {mostVariants}.
        </p>
      )}
      <div className="panel-acts">
        <button
          type="button"
          disabled={variants.length >= mostVariants}
          onClick={() => edit((state) => addVariant(state, newId()))}
        >
          Add a variant
        </button>
        {variants.length > 0 && (
          <FieldChoice
            label="Change"
            instrument={base}
            value={null}
            ask="Choose a number…"
            without={["target.value", ...paths]}
            evenNull
            onChoose={(path) => setAsked((before) => [...before, path])}
          />
        )}
        {removed !== null && (
          <button type="button" onClick={putBack}>
            Put “{removed.variant.name}” back
          </button>
        )}
      </div>
      <VariantsTable compared={compared} paths={paths} onRemove={remove} />
    </section>
  );
}
