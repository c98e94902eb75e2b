import type { Units } from "../../instrument/length.ts";
import { onSide } from "../../profile/halves.ts";
import type { BreakProfile, Profile, SeatProfile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { angle, dimension, height } from "../figures/measures.ts";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";

/** Every outcome that the verdict does not give. */
export function Numbers() {
  const units = useRimwright((state) => state.choices.units);
  const plan = usePlan();
  if (plan === null) return null;
  return (
    <dl>
      {rowsOf(plan.profile, units).map(([name, said]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{said}</dd>
        </div>
      ))}
    </dl>
  );
}

function rowsOf(profile: Profile, units: Units): readonly (readonly [string, string])[] {
  const high = (mm: number): string => height(mm, units);
  const long = (mm: number): string => dimension(mm, units);
  return [
    ["Tail end below the flat", high(profile.tailDrop)],
    [
      profile.seat === null
        ? "Break to tail end, angle to the flat"
        : "Neck end to tail end, angle to the seat",
      angle(profile.chordPitch),
    ],
    ["Heel face to fingerboard", angle(profile.heelAngle)],
    ["Fret plane over the top, at the saddle", high(profile.projection)],
    ["Saddle over the bridge, bass string to treble", profile.stringExposure.map(high).join(", ")],
    ["Saddle line from the tail", long(profile.saddleX)],
    ["Fingerboard’s end from the tail", long(profile.fingerboardEndX)],
    ...(profile.seat === null
      ? breakRows(profile, high, long)
      : seatRows(profile.seat, high, long)),
    ["Level rim lowered everywhere by", high(profile.rimOffset)],
    [
      "Most that comes off the level rim",
      `${high(profile.maxRemoval)}, ${long(profile.maxRemovalX)} from the tail${onSide(profile.maxRemovalSide)}`,
    ],
    [
      "Sanded last, from the tail",
      `${long(profile.leastRemovalX)}${onSide(profile.leastRemovalSide)}`,
    ],
    ["Side strip, at least", long(profile.stockWidth)],
    ["Dish, at least across", long(profile.dishNeeded)],
  ];
}

type Say = (mm: number) => string;

function breakRows(
  { breakX, breakHalfWidth, overrunLength, overrunDepth, cleanShim, dishUndercut }: BreakProfile,
  high: Say,
  long: Say,
): readonly (readonly [string, string])[] {
  return [
    ["Break from the tail", long(breakX)],
    ["Body width at the break", long(2 * breakHalfWidth)],
    [
      "Board cuts past the break",
      overrunDepth < leastShown ? "no" : `${long(overrunLength)} far, ${high(overrunDepth)} deep`,
    ],
    ["Thinnest shim that does not", cleanShim === null ? "none" : high(cleanShim)],
    [
      "Whole rim dished first, cuts under the flat",
      dishUndercut === null
        ? "the dish ends short of it"
        : dishUndercut < leastShown
          ? "no"
          : high(dishUndercut),
    ],
  ];
}

function seatRows(
  { mostCut, mostCutX, endCut, neckEndCut, thicknessLeft }: SeatProfile["seat"],
  high: Say,
  long: Say,
): readonly (readonly [string, string])[] {
  return [
    ["Off the plate at the fingerboard’s end", high(endCut)],
    ["Off the plate at the neck end", high(neckEndCut)],
    ["Most off the plate", `${high(mostCut)}, ${long(mostCutX)} from the tail`],
    ["Plate left there", thicknessLeft > 0 ? high(thicknessLeft) : "none"],
  ];
}
