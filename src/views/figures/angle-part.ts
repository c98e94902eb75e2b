import { targetFields } from "../../instrument/outcome-fields.ts";
import type { Profile } from "../../profile/outcome.ts";

interface AnglePart {
  readonly name: string;
  /** What it is and where it lies. */
  readonly heading: string;
  /** Its thickness, mm. */
  readonly value: number;
}

/** The part that sets the angle at the bench, as a builder is told of it. */
export const anglePartOf = (profile: Profile): AnglePart =>
  profile.seat === null
    ? { name: targetFields.shim.label, heading: "Shim under the tail", value: profile.shim }
    : {
        name: targetFields.spacer.label,
        heading: "Spacer at the saddle line",
        value: profile.seat.spacer,
      };
