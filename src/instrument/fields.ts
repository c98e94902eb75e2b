import { bodyFields } from "./body-fields.ts";
import { type DomeMethod, domeFields, shimFields } from "./dome-fields.ts";
import type { Field } from "./field.ts";
import { neckFields } from "./neck-fields.ts";
import { type TargetKind, targetFields, windowFields } from "./outcome-fields.ts";
import { seatFields } from "./seat-fields.ts";
import { bridgeFields, stringFields } from "./string-fields.ts";

const stated = {
  ...bodyFields,
  ...domeFields,
  ...shimFields,
  ...seatFields,
  ...neckFields,
  ...bridgeFields,
  ...stringFields,
  ...windowFields,
};

/** Where a number stands in an instrument, such as `"dome.flatLength"`; `.0` and `.1` are a window's ends. */
export type FieldPath = keyof typeof stated | "target.value";

/** Every number of an instrument but the target's own, whose field depends on its kind: see `fieldAt`. */
export const fields: Readonly<Record<Exclude<FieldPath, "target.value">, Field>> = stated;

/** The field at `path` of an instrument whose target is of `kind`. */
export function fieldAt(path: FieldPath, kind: TargetKind): Field {
  return path === "target.value" ? targetFields[kind] : fields[path];
}

export function isFieldPath(text: string): text is FieldPath {
  return text === "target.value" || Object.hasOwn(fields, text);
}

/** Every path, in a builder's order. */
export const fieldPaths: readonly FieldPath[] = [...Object.keys(fields), "target.value"].filter(
  isFieldPath,
);

export type FieldGroup =
  | "bench"
  | "body"
  | "dome"
  | "seat"
  | "neck"
  | "bridge"
  | "strings"
  | "windows"
  | "tolerances";

/** The groups in a builder's order, with their headings. */
export const fieldGroups: readonly (readonly [FieldGroup, string])[] = [
  ["bench", "At the bench"],
  ["body", "Outline and sides"],
  ["dome", "Dome and braces"],
  ["seat", "Seat on the top"],
  ["neck", "Neck"],
  ["bridge", "Bridge and saddle"],
  ["strings", "Strings"],
  ["windows", "Windows"],
  ["tolerances", "Tolerances"],
];

/** What a builder changes most, of whatever part of the instrument it is. */
const benchPaths: readonly FieldPath[] = [
  "target.value",
  "body.length",
  "dome.dishRadius",
  "dome.flatLength",
  "shim.contact",
  "bridge.thickness",
  "neck.fingerboardThickness",
];

export function pathsIn(group: FieldGroup): readonly FieldPath[] {
  return group === "bench" ? benchPaths : fieldPaths.filter((path) => groupOf(path) === group);
}

/** The group a field stands in: at the bench, or with the part it is of; the tail block with the dome that rests on its shim. */
export function groupOf(path: FieldPath): FieldGroup {
  if (benchPaths.includes(path)) return "bench";
  const part = path.split(".")[0];
  return fieldGroups.find(([group]) => group === part)?.[0] ?? "dome";
}

/** Whether a field shapes anything with a method: the break and its shim belong to one, the seat to the other. */
export const appliesTo = (path: FieldPath, method: DomeMethod): boolean =>
  method === "break" ? !path.startsWith("seat.") : !breakPaths.includes(path);

const breakPaths: readonly FieldPath[] = [
  "dome.flatLength",
  "dome.blendLength",
  "shim.contact",
  "shim.tailBlockDepth",
];

/** How closely each can be held at the bench, plus or minus. Defaults from practice, no source. */
export const defaultTolerances = {
  "dome.dishRadius": 100,
  "dome.flatLength": 1,
  "dome.tailExtra": 0.1,
  "shim.contact": 1,
  "neck.fingerboardThickness": 0.1,
  "neck.fretHeight": 0.05,
  "neck.neckTilt": 0.05,
  "neck.relief": 0.05,
  "bridge.thickness": 0.1,
  "bridge.compensation": 0.5,
  "strings.nutClearance": 0.05,
  "strings.actionBass": 0.1,
  "strings.actionTreble": 0.1,
} satisfies Partial<Record<FieldPath, number>>;
