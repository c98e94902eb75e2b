import type { Place } from "../../geometry/polyline.ts";
import { nearest64 } from "../../instrument/length.ts";
import { cutShape, label, type Template } from "./template.ts";

/** The plate round the notch, and the notch's depth, mm. */
const plate = 20;
const depth = 25;

/** A shim thinner than this has no notch that a cutter could make, mm. */
const thinnestGauged = 1;

const use = [
  "Glue this to card or thin sheet and cut it out along the line.",
  "Slide it over the shim near the edge that the rim will rest on.",
  "The shim is right where the notch slides on and does not shake.",
] as const;

/**
 * A plate with a notch exactly as wide as the shim is thick: the shim is right when it slides in and
 * does not shake. Null when the shim is too thin for one.
 */
export function shimGaugeTemplate(
  shim: number,
  words: { readonly length: (mm: number) => string },
): Template | null {
  if (shim < thinnestGauged) return null;
  const width = 2 * plate + shim;
  const height = depth + plate;
  const outline: Place[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [plate + shim, height],
    [plate + shim, plate],
    [plate, plate],
    [plate, height],
    [0, height],
  ];
  return {
    name: "Shim gauge",
    lines: [cutShape("shim gauge", outline)],
    labels: [
      label([width / 2, 11], `shim ${words.length(shim)}`),
      label([width / 2, 5], `${nearest64(shim)} to the nearest 64th`, { size: 3 }),
      ...use.map((line, i) => label([0, -10 - 6 * i], line, { anchor: "start" })),
    ],
  };
}
