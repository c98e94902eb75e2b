import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import { readAsBuilt } from "../../instrument/as-built/read-as-built.ts";
import { type Mended, readMended } from "./leave-out.ts";

/** An as-built record without the parts of it that cannot be read; an empty one where it is none at all. */
export function readRecord(json: unknown): Mended<AsBuilt> {
  if (json === undefined) return { value: emptyAsBuilt, leftOut: [] };
  const read = readMended(
    json,
    (one) => {
      const result = readAsBuilt(one);
      return result.ok ? { ok: true, value: result.asBuilt } : result;
    },
    { isWhole: (path) => path === "format" || path === "version" },
  );
  const reason = "This is no as-built record that this Rimwright reads.";
  return read ?? { value: emptyAsBuilt, leftOut: [{ path: "asBuilt", reason, value: json }] };
}
