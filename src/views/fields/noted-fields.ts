import type { FieldPath } from "../../instrument/fields.ts";

/** The fields under which something is said that follows from them or goes with them. */
const noted = [
  "target.value",
  "dome.dishRadius",
  "dome.braceRadius",
  "shim.contact",
  "strings.settling",
] as const satisfies readonly FieldPath[];

export type NotedPath = (typeof noted)[number];

export const isNoted = (path: FieldPath): path is NotedPath =>
  (noted as readonly FieldPath[]).includes(path);
