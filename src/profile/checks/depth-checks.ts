import type { Instrument } from "../../instrument/instrument.ts";
import { mm, phrase, roundedDown, roundedUp } from "../../instrument/phrase.ts";
import type { Check } from "../outcome.ts";
import { rounding, standing } from "../standing.ts";

// Finished side depths beyond these are unlikely in a guitar or its kin; common practice, no source.
const usualDepths = { tail: [70, 145], neck: [55, 125] } as const;

export const tailDepthUnlikely = ({ body }: Instrument) => depthCheck("tail", body.depthTail);
export const neckDepthUnlikely = ({ body }: Instrument) => depthCheck("neck", body.depthNeck);

function depthCheck(end: "tail" | "neck", depth: number): Check | null {
  const [low, high] = usualDepths[end];
  if (standing(depth, usualDepths[end]) !== "outside") return null;
  const [where, field] =
    end === "tail"
      ? (["tail", "body.depthTail"] as const)
      : (["neck end", "body.depthNeck"] as const);
  return {
    id: `depth-${end}`,
    grade: "note",
    field,
    means: [`Sides `, mm(depth), ` deep at the ${where} are out of the ordinary.`],
    fix: [`Measure again; `, roundedUp(mm(low)), ` to `, roundedDown(mm(high)), ` is usual.`],
  };
}

export function deeperAtNeck({ body }: Instrument): Check | null {
  const more = body.depthNeck - body.depthTail;
  if (more <= rounding) return null;
  return {
    id: "deeper-at-neck",
    grade: "note",
    field: "body.depthNeck",
    means: phrase`The sides are ${mm(more)} deeper at the neck end than at the tail; most bodies taper the other way.`,
    fix: phrase`Check that the two depths are not exchanged.`,
  };
}
