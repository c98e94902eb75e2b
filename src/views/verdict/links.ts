import type { FieldPath } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import type { Profile } from "../../profile/outcome.ts";
import { type Standing, standing } from "../../profile/standing.ts";
import { angle, height } from "../figures/measures.ts";

/** One link of the chain from the shim to the strings. */
export interface Link {
  readonly name: string;
  readonly meaning: string;
  readonly value: number;
  readonly said: string;
  /** Null where a builder sets no window for it. */
  readonly window: {
    readonly range: Range;
    readonly said: string;
    readonly standing: Standing;
    readonly field: FieldPath;
  } | null;
}

/** What the shim brings about, each link caused by the one before it. */
export function linksOf(instrument: Instrument, profile: Profile, units: Units): readonly Link[] {
  const length = (mm: number): string => height(mm, units);
  const plane = profile.seat === null ? "flat" : "seat";
  return [
    windowed("Pitch", `between the ${plane} and the level rim`, "pitch", angle),
    {
      name: "Straightedge gap",
      meaning: `under the ${plane} extended, at the saddle line`,
      value: profile.flatGap,
      said: length(profile.flatGap),
      window: null,
    },
    windowed("Fret plane over the bridge", "at the saddle line", "bridgeClearance", length),
    windowed("String height", "over the top, at the saddle", "stringHeight", length),
    windowed("Saddle exposed", "over the bridge, in the middle", "saddleExposure", length),
    windowed("Break angle", "of the strings over the saddle", "breakAngle", angle),
  ];

  function windowed(
    name: string,
    meaning: string,
    kind: keyof Instrument["windows"],
    say: (value: number) => string,
  ): Link {
    const range = instrument.windows[kind];
    const value = profile[kind];
    const window = {
      range,
      said: rangeSaid(range, say),
      standing: standing(value, range),
      field: `windows.${kind}.0`,
    } as const;
    return { name, meaning, value, said: say(value), window };
  }
}

/** "0.40 to 1.60", in the unit of the value it stands under. */
function rangeSaid([low, high]: Range, say: (value: number) => string): string {
  const bare = (value: number): string => say(value).replace(/[^\d]*$/, "");
  return `${bare(low)} to ${bare(high)}`;
}
