import { useState } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { copyText } from "../copy-text.ts";
import { csvOf, tabSeparated } from "../csv.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { comparisonRows } from "./comparison-csv.ts";
import type { Compared } from "./use-comparison.ts";

interface Props {
  readonly compared: readonly Compared[];
  readonly paths: readonly FieldPath[];
}

/** The table to paste, to save, and to print. */
export function TableExport({ compared, paths }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const name = useRimwright((state) => state.instrument.name);
  const [copied, setCopied] = useState<"no" | "yes" | "refused">("no");
  const copy = async (): Promise<void> => {
    const table = tabSeparated(comparisonRows(compared, paths, units));
    setCopied((await copyText(Promise.resolve(table))) ? "yes" : "refused");
  };
  const save = (): void =>
    saveFile(
      fileName(name, "comparison", "csv"),
      "text/csv",
      csvOf(comparisonRows(compared, paths, units)),
    );
  return (
    <div className="export">
      <button type="button" onClick={copy}>
        Copy the table
      </button>
      <button type="button" onClick={save}>
        Save as CSV
      </button>
      <button type="button" onClick={() => window.print()}>
        Print
      </button>
      <span role="status">
        {copied === "yes" && "Copied, tab-separated."}
        {copied === "refused" && "The browser does not let this page copy: save it as CSV."}
      </span>
    </div>
  );
}
