import type { FieldPath } from "../../instrument/fields.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { latePart } from "../late-part.tsx";
import { fieldId } from "./go-to-field.ts";

const TroubleTold = latePart({
  what: "What is wrong with this field",
  load: () => import("./trouble-told.tsx").then((part) => part.TroubleTold),
});

/** Where it is told what is wrong with a field; empty while nothing is. */
export function FieldTrouble({ path, trouble }: { path: FieldPath; trouble: Refusal | null }) {
  return (
    <div id={`${fieldId(path)}-trouble`} className="trouble">
      {trouble !== null && <TroubleTold path={path} trouble={trouble} />}
    </div>
  );
}
