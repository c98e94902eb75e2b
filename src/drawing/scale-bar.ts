import type { Point } from "./frame.ts";
import { capHeight, textWidth } from "./lettering.ts";
import type { GroupShape, Shape, TextShape } from "./scene.ts";
import { group, lineShape, textShape } from "./shapes.ts";

/** A round length a bar may stand for: mm, and how it is written. */
export interface RoundLength {
  readonly mm: number;
  readonly text: string;
}

const inch = 25.4;

/** Longest first. */
const rounds: Readonly<Record<"mm" | "inch", readonly RoundLength[]>> = {
  mm: [200, 100, 50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1].map((mm) => ({ mm, text: `${mm} mm` })),
  inch: [
    ...[8, 4, 2, 1].map((inches) => ({ mm: inches * inch, text: `${inches} in` })),
    ...[2, 4, 8, 16, 32, 64].map((part) => ({ mm: inch / part, text: `1/${part} in` })),
  ],
};

/** The longest round length that takes no more than `room` px at `scale` px a mm, or the shortest there is. */
export function roundLength(scale: number, room: number, unit: "mm" | "inch"): RoundLength {
  const lengths = rounds[unit];
  const shortest = lengths.at(-1) ?? { mm: inch, text: "1 in" };
  return lengths.find(({ mm }) => mm * scale <= room) ?? shortest;
}

/** What the lettering under a stretched drawing says: how much it is stretched, and a bar for each direction. */
export interface Scales {
  /** px a mm. */
  readonly along: number;
  readonly up: number;
  readonly stretch: number;
  readonly unit: "mm" | "inch";
}

const space = 14;
const tick = 3;
const longestBar = 110;
const tallestBar = 20;

/** The stretch and both scale bars in one row from `left`, standing on `base`; worded more briefly where `room` px are too few. */
export function scaleRow(
  scales: Scales,
  left: number,
  base: number,
  room: number,
  size: number,
): GroupShape {
  const { along, up, stretch, unit } = scales;
  const level = roundLength(along, Math.min(longestBar, room / 6), unit);
  const upright = roundLength(up, tallestBar, unit);
  const statement = stretch === 1 ? "True scale" : `Heights ×${stretch}`;
  const full = [statement, `${level.text} along`, `${upright.text} up`] as const;
  const brief = [`×${stretch}`, level.text, upright.text] as const;
  const bars = level.mm * along + 2 * tick;
  const used = ([a, b, c]: readonly [string, string, string]): number =>
    textWidth(a, size, true) + textWidth(b, size) + textWidth(c, size) + bars + 2 * space + 16;
  const [said, levelText, uprightText] = used(full) <= room ? full : brief;
  const write = (x: number, text: string, strong = false): TextShape =>
    textShape("scale", text, [x, base], size, { anchor: "start", strong });
  const barLeft = left + textWidth(said, size, true) + space;
  const barRight = barLeft + level.mm * along;
  const middle = base - capHeight(size) / 2;
  const uprightX = barRight + 6 + textWidth(levelText, size) + space;
  return group("scales", [
    write(left, said, true),
    ...levelBar(barLeft, barRight, middle),
    write(barRight + 6, levelText),
    ...uprightBar(uprightX, base - upright.mm * up, base),
    write(uprightX + tick + 6, uprightText),
  ]);
}

const levelBar = (left: number, right: number, y: number): readonly Shape[] => [
  bar([left, y], [right, y]),
  bar([left, y - tick], [left, y + tick]),
  bar([right, y - tick], [right, y + tick]),
];

const uprightBar = (x: number, top: number, foot: number): readonly Shape[] => [
  bar([x, top], [x, foot]),
  bar([x - tick, top], [x + tick, top]),
  bar([x - tick, foot], [x + tick, foot]),
];

const bar = (a: Point, b: Point): Shape => lineShape("scale bar", "thin", [a, b]);
