import type { Place } from "../../geometry/polyline.ts";
import { nearest64 } from "../../instrument/length.ts";
import { cutShape, label, type Template } from "./template.ts";

/** The plate round the notch, and the notch's depth, mm. */
const plate = 20;
const depth = 25;

/** A shim thinner than this has no notch that a cutter could make, mm. */
const thinnestGauged = 1;

const linesFor = (part: string): readonly string[] => [
  "Glue this to card or thin sheet and cut it out along the line.",
  `Slide it over the ${part} near the edge that bears.`,
  `The ${part} is right where the notch slides on and does not shake.`,
];

/**
 * A plate with a notch exactly as wide as the shim (or spacer) is thick: it is right when it slides in and
 * does not shake. Null when it is too thin for one.
 */
export function gaugeTemplate(
  { name, value: shim }: { readonly name: string; readonly value: number },
  words: { readonly length: (mm: number) => string },
): Template | null {
  if (shim < thinnestGauged) return null;
  const part = name.toLowerCase();
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
    name: `${name} gauge`,
    lines: [cutShape(`${part} gauge`, outline)],
    labels: [
      label([width / 2, 11], `${part} ${words.length(shim)}`),
      label([width / 2, 5], `${nearest64(shim)} to the nearest 64th`, { size: 3 }),
      ...linesFor(part).map((line, i) => label([0, -10 - 6 * i], line, { anchor: "start" })),
    ],
  };
}
