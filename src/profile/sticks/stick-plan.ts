import type { Range } from "../../instrument/instrument.ts";
import type { NoRange, ShimRange } from "./shim-range.ts";
import { fewestSticks, mostServed, type SetStick } from "./stick-set.ts";
import type { StickWants } from "./wanted-stick.ts";

/** Which sticks a shop would do well to have. Its members are places among the instruments asked about. */
export interface StickPlan {
  /** The fewest sticks that serve all that any stick serves. */
  readonly fewest: readonly SetStick[];
  /** What one, two and three sticks serve at most. */
  readonly best: readonly (readonly SetStick[])[];
  /** The one stick more that would serve the most of those the owned ones do not; null where they serve all. */
  readonly oneMore: SetStick | null;
  /** How many no stick serves at all, by why. */
  readonly without: Readonly<Record<NoRange, number>>;
}

/** From what each instrument wants, each with its own contact. */
export function stickPlanOf(wants: readonly StickWants[]): StickPlan {
  const served = wants.flatMap(({ range }, index) =>
    typeof range === "string" ? [] : [{ index, range: rangeOf(range) }],
  );
  const unserved = served.filter(({ index }) => wants[index]?.nearest?.serves !== true);
  const among =
    (some: typeof served) =>
    (stick: SetStick): SetStick => {
      const place = (i: number): number => some[i]?.index ?? -1;
      const [low, high] = stick.limits;
      return {
        ...stick,
        members: stick.members.map(place),
        limits: [place(low), place(high)],
      };
    };
  const ranges = served.map(({ range }) => range);
  const more = mostServed(
    unserved.map(({ range }) => range),
    1,
  ).map(among(unserved));
  const count = (why: NoRange): number => wants.filter(({ range }) => range === why).length;
  return {
    fewest: fewestSticks(ranges).map(among(served)),
    best: [1, 2, 3].map((sticks) => mostServed(ranges, sticks).map(among(served))),
    oneMore: more[0] ?? null,
    without: {
      "no-stick": count("no-stick"),
      "no-plan": count("no-plan"),
      "none-serves": count("none-serves"),
    },
  };
}

const rangeOf = ({ low, high }: ShimRange): Range => [low.shim, high.shim];
