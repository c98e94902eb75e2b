import * as z from "zod/mini";
import { atMost } from "../../instrument/at-most.ts";
import { fields } from "../../instrument/fields.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import type { LeftOut, Mended } from "./leave-out.ts";

/** A stick the shop owns, as it is stored and as a file holds it. */
export interface OwnedStick extends Stick {
  readonly id: string;
  readonly name: string;
}

/** Most sticks a shop has here. */
export const mostSticks = 200;

/** Thickness and width, mm, within what a shim and its contact may be. */
export const stickBounds = {
  thickness: { min: 0, max: targetFields.shim.max },
  width: { min: 0, max: fields["shim.contact"].max },
} as const;

const length = ({ min, max }: { readonly min: number; readonly max: number }) =>
  z.number().check(z.minimum(min), z.maximum(max));

export const stickSchema = z.object({
  id: z.string().check(atMost(textLimits.id)),
  name: z.string().check(atMost(textLimits.name)),
  thickness: length(stickBounds.thickness),
  width: z.nullable(length(stickBounds.width)),
}) satisfies z.ZodMiniType<OwnedStick>;

/** Sticks as they were stored, without those that cannot be read; none where nothing was. */
export function readSticks(json: unknown): Mended<readonly OwnedStick[]> {
  if (json === undefined) return { value: [], leftOut: [] };
  if (!Array.isArray(json)) return { value: [], leftOut: [leftOut("sticks", json, "list")] };
  const read = json.slice(0, mostSticks).map((one) => stickSchema.safeParse(one));
  return {
    value: read.flatMap((one) => (one.success ? [one.data] : [])),
    leftOut: [
      ...read.flatMap((one, i) => (one.success ? [] : [leftOut(`sticks[${i}]`, json[i], "stick")])),
      ...(json.length > mostSticks
        ? [
            {
              path: "sticks",
              reason: `Of more than ${mostSticks} sticks the rest were left out.`,
              value: null,
            },
          ]
        : []),
    ],
  };
}

const leftOut = (path: string, value: unknown, what: "list" | "stick"): LeftOut => ({
  path,
  reason:
    what === "list"
      ? "This is no list of sticks."
      : `A stick has an id, a name, a thickness up to ${stickBounds.thickness.max} mm, and a width or null.`,
  value,
});
