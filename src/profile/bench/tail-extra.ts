import { type AsBuilt, measured } from "../../instrument/as-built/as-built.ts";
import { writeField } from "../../instrument/field-value.ts";
import { fields } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { deg, mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import type { Profile } from "../outcome.ts";
import { profileOf } from "../profile.ts";

/** The dish's curvature, 1/mm, and the break's place, half width and middle, mm; where all is domed, the neck end's middle. */
interface DishedRim {
  readonly curvature: number;
  readonly breakX: number;
  readonly breakHalfWidth: number;
  readonly breakMiddle: number;
}

/**
 * How much more a rim held level in a dish loses at the tail end than at the rim on the break line, mm,
 * when the dish's lowest place lies `lowestX` from the tail end, beside the centreline by as much as the
 * break's middle ym. Null where the dish ends short of either place.
 *
 * Level means that the rim's edge stands square to the dish's axis, so each place loses what the dish
 * has risen to there: R − √(R² − r²), r its distance from the lowest place. At the tail end r² = x0² + ym²,
 * at both ends of the break r² = (xb − x0)² + yb². With κ = 1/R the difference of the two rises is
 * κ(2·xb·x0 + ym² − xb² − yb²)/(√(1 − κ²(x0² + ym²)) + √(1 − κ²((xb − x0)² + yb²))). Places are taken in plan on the
 * flat, as all of the outline is; the datum's own plan differs by some 0.1 mm.
 */
export function tailExtraHeldLevel(
  { curvature, breakX, breakHalfWidth, breakMiddle }: DishedRim,
  lowestX: number,
): number | null {
  const upright = (r2: number): number => Math.sqrt(1 - curvature * curvature * r2);
  const tail2 = lowestX ** 2 + breakMiddle ** 2;
  const break2 = (breakX - lowestX) ** 2 + breakHalfWidth ** 2;
  const more = (curvature * (tail2 - break2)) / (upright(tail2) + upright(break2));
  return Number.isFinite(more) ? more : null;
}

/** Where the dish's lowest place must lie, from the tail end, for a level rim to lose as much there as at the break. */
export const evenLowestX = ({
  breakX,
  breakHalfWidth,
  breakMiddle,
}: Omit<DishedRim, "curvature">): number =>
  (breakX ** 2 + breakHalfWidth ** 2 - breakMiddle ** 2) / (2 * breakX);

/** What the plan counts on, and what a rim held level with its middle over the dish's middle would lose. */
export function tailExtraExplained({ dome, body }: Instrument, plan: Profile): readonly Phrase[] {
  if (dome.dishRadius === null) return [counted(dome.tailExtra, plan)];
  const { breakX, breakHalfWidth, breakMiddle } =
    plan.seat === null ? plan : { breakX: body.length, breakHalfWidth: 0, breakMiddle: 0 };
  const rim = { curvature: 1 / dome.dishRadius, breakX, breakHalfWidth, breakMiddle };
  const end = endOf(plan);
  const level = tailExtraHeldLevel(rim, body.length / 2);
  if (level === null) return [counted(dome.tailExtra, plan)];
  const by = mm(Math.abs(level));
  const even = mm(evenLowestX(rim));
  return [
    counted(dome.tailExtra, plan),
    [
      "A rim held level, its middle over the dish's middle, loses ",
      by,
      ` ${level < 0 ? "less" : "more"} at the tail end than at the ${end}.`,
    ],
    phrase`It loses as much at both with the dish's lowest place ${even} from the tail end.`,
  ];
}

/** The other end of what is dished. */
const endOf = ({ seat }: Profile): string => (seat === null ? "break" : "neck end");

function counted(tailExtra: number, plan: Profile): Phrase {
  const end = endOf(plan);
  if (tailExtra === 0)
    return [`The plan counts on as much off the tail end as off the rim at the ${end}.`];
  const by = mm(Math.abs(tailExtra));
  return tailExtra > 0
    ? [
        "Bear down at the tail: the plan counts on ",
        by,
        ` more off the tail end than off the rim at the ${end}.`,
      ]
    : [
        `Bear down at the ${end}: the plan counts on `,
        by,
        " less off the tail end than off the rim there.",
      ];
}

/** How much more the dish took at the tail end than at the break, from the four side depths, mm; null until all are there. */
export function tailExtraMeasured({ readings }: AsBuilt): number | null {
  const loss = (before: number | null, after: number | null): number =>
    before === null || after === null ? Number.NaN : before - after;
  const tail = loss(measured(readings, "tailBeforeDish"), measured(readings, "tailAfterDish"));
  const atBreak = loss(measured(readings, "breakBeforeDish"), measured(readings, "breakAfterDish"));
  return Number.isNaN(tail - atBreak) ? null : tail - atBreak;
}

/** As fine as a side depth is read, mm. */
const fine = 0.05;

interface TailExtraOffer {
  readonly tailExtra: number;
  readonly said: Phrase;
}

/**
 * The measured extra off the tail in place of the one the plan counts on, and what that does to it;
 * null while it is not measured (as it cannot be without a break), is the plan's own, is more than the field may hold, or leaves no plan.
 */
export function tailExtraOffer(instrument: Instrument, asBuilt: AsBuilt): TailExtraOffer | null {
  const tailExtra = tailExtraMeasured(asBuilt);
  const planned = instrument.dome.tailExtra;
  const { min, max } = fields["dome.tailExtra"];
  if (tailExtra === null || Math.abs(tailExtra - planned) < fine) return null;
  if (tailExtra < min || tailExtra > max) return null;
  const result = profileOf(writeField(instrument, "dome.tailExtra", tailExtra));
  if (!result.ok) return null;
  const { shim, pitch, seat } = result.profile;
  if (seat !== null) return null;
  return {
    tailExtra,
    said: [
      ...phrase`By the side depths the dish took ${mm(tailExtra)} more off the tail end than off the break; the plan counts on ${mm(planned)}. `,
      ...(instrument.target.kind === "pitch"
        ? phrase`Counted in, the shim is ${mm(shim)}.`
        : phrase`Counted in, the pitch is ${deg(pitch)}.`),
    ],
  };
}
