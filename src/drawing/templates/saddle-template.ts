import type { Place } from "../../geometry/polyline.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { saddleCrown } from "../../profile/saddle-crown.ts";
import { cutShape, label, markLine, type Template } from "./template.ts";

/** How far the saddle runs level past the outer strings, mm. */
const past = 4;
/** mm: how far a string's tick hangs below the bridge's top, and between rows of lettering. */
const tick = 3;
const row = 5;

const inch = 25.4;

/**
 * The saddle full size, seen from the tail (of a left-handed instrument from the neck): its crown to file to over the line of the bridge's top, a tick at
 * each string, and every height in millimetres and inches. Null where a string stands no higher than the bridge.
 */
export function saddleTemplate(givens: Givens, profile: Profile): Template | null {
  const { strings, crown } = saddleCrown(givens, profile);
  const [first, last] = [crown[0], crown.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (Math.min(...crown.map(([, height]) => height)) <= 0) return null;
  const [left, right] = [-past, last[0] + past];
  const outline: Place[] = [[left, 0], [left, first[1]], ...crown, [right, last[1]], [right, 0]];
  const { settling } = givens.instrument.strings;
  const leftHanded = givens.instrument.body.leftHanded === true;
  const lines = [
    `Seen from the ${leftHanded ? "neck" : "tail"}, bass on the left. The lower line is the bridge's top.`,
    "Leave a little over, and take it down to the action.",
    ...(settling === 0
      ? []
      : [`The strings are taken to come down ${both(settling)} once settled.`]),
    ...strings.map(
      ([along, height], i) => `${named(i, strings.length)}: ${both(height)}, at ${both(along)}`,
    ),
  ];
  return {
    name: "Saddle",
    lines: [
      cutShape("saddle", outline),
      ...strings.map(([along, height]) =>
        markLine("string", [
          [along, -tick],
          [along, height],
        ]),
      ),
    ],
    labels: lines.map((text, i) =>
      label([left, -tick - 8 - row * i], text, { anchor: "start", size: 3 }),
    ),
  };
}

const both = (mm: number): string => `${mm.toFixed(2)} mm (${(mm / inch).toFixed(3)} in)`;

/** Strings are counted from the treble side. */
function named(i: number, count: number): string {
  const end = i === 0 ? ", bass" : i === count - 1 ? ", treble" : "";
  return `String ${count - i}${count === 1 ? "" : end}`;
}
