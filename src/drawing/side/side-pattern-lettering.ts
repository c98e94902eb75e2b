import type { SideMark } from "../../profile/side.ts";
import { type Dimension, heightWays, lengthWays } from "../dimensions/dimension.ts";
import { type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import { heavy, light, Placer, type Way } from "../label-placement.ts";
import { capHeight, textBox } from "../lettering.ts";
import { lineShape } from "../path.ts";
import { scaleRow } from "../scale-bar.ts";
import type { GroupShape, Shape, TextShape } from "../scene.ts";
import { firstRow, nextRow } from "../section/section-sheet.ts";
import {
  backPoints,
  levelPoints,
  narrow,
  type SideSheet,
  seen,
  topPoints,
} from "./side-pattern-sheet.ts";

/** Everything written on the pattern, kept apart by one placer. */
export function sideLettering(sheet: SideSheet): readonly Shape[] {
  const { width, height, frame, words, size, stretch, side } = sheet;
  const placer = new Placer({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const scales = scaleRow(
    { along: frame.along, up: frame.up, stretch: rounded(stretch), unit: words.unit },
    8,
    height - 8,
    width - 16,
    size,
  );
  for (const shape of scales.shapes) if (shape.kind === "text") placer.keepClear(textBox(shape));
  placer.avoid(levelPoints(sheet, 0), light);
  placer.avoid(topPoints(sheet, 0, side.length), heavy);
  placer.avoid(backPoints(sheet), heavy);
  placer.avoid(levelPoints(sheet, side.deepest.under), heavy);
  if (sheet.stock !== null) placer.avoid(levelPoints(sheet, sheet.stock), heavy);
  for (const { along } of side.marks)
    placer.avoid([pointAt(frame, along, 0), pointAt(frame, along, -side.backAt(along))], light);
  return [
    scales,
    ...byNeed(side.marks).flatMap(({ name, along }) => markName(sheet, placer, name, along)),
    ...measured(sheet, placer),
    ...lineNames(sheet, placer),
  ];
}

/** Names in the order in which they find room; the side's end needs none. */
const needs = ["break", "waist", "neck end", "lower bout", "tail seam", "upper bout"];

const byNeed = (marks: readonly SideMark[]): readonly SideMark[] =>
  needs.flatMap((name) => marks.filter((mark) => mark.name === name));

const rounded = (times: number): number => Math.round(times * 10) / 10;

function measured(sheet: SideSheet, placer: Placer): readonly GroupShape[] {
  const { side, words, size, frame, foot } = sheet;
  const { length, deepest, corner } = side;
  const depth = (name: string, s: number, at: number): [Dimension, typeof heightWays] => {
    const value = words.length(side.backAt(s) - side.topAt(s));
    return [
      {
        role: `depth at the ${name}`,
        texts: [`${name} ${value}`, value],
        from: pointAt(frame, s, -side.topAt(s)),
        to: pointAt(frame, s, -side.backAt(s)),
        stands: [at],
      },
      heightWays,
    ];
  };
  const row = (i: number): number => foot + firstRow(size) + i * nextRow(size);
  const across = (role: string, value: number, s: number): [Dimension, typeof heightWays] => [
    {
      role,
      texts: [`${role} ${words.length(value)}`, words.length(value)],
      from: pointAt(frame, s, 0),
      to: pointAt(frame, s, -value),
      stands: [0.42, 0.34, 0.5, 0.58, 0.26].map((share) => pxAt(frame, share * length)),
    },
    heightWays,
  ];
  const offers: readonly [Dimension, typeof heightWays | typeof lengthWays][] = [
    across("strip", deepest.under, length * 0.42),
    depth("tail", 0, pxAt(frame, 0) + 20),
    depth("neck end", corner, pxAt(frame, corner) - 16),
    [
      {
        role: "length of the side",
        texts: [`length of the side ${words.length(length)}`, words.length(length)],
        from: pointAt(frame, 0, -side.backAt(0)),
        to: pointAt(frame, length, -side.backAt(length)),
        stands: [row(0), row(1)],
      },
      lengthWays,
    ],
  ];
  return offers.flatMap(([dimension, ways]) => {
    const way = placer.choose(ways(dimension, size));
    if (way === null) return [];
    const shapes = [...way.shapes(), way.text];
    return [{ kind: "group" as const, role: `dimension ${dimension.role}`, shapes }];
  });
}

/** Over the level edge, in two rows: what the mark is, and how far it is from the tail seam. */
function markName(sheet: SideSheet, placer: Placer, name: string, along: number): readonly Shape[] {
  const { frame, size, words } = sheet;
  const x = pxAt(frame, along);
  const far = along === 0 ? "" : ` ${words.length(along)}`;
  const ways = [`${name}${far}`, name].flatMap((text, shorter) =>
    [0, 1, 2, 3].flatMap((tier) =>
      (["middle", "start", "end"] as const).map((anchor, i): Way => {
        const y = frame.level - 6 - tier * (size + 6);
        const leader: Point[] = [
          [x, frame.level],
          [x, y + (anchor === "middle" ? 4 : -capHeight(size))],
        ];
        const slip = { middle: 0, start: 4, end: -4 }[anchor];
        return {
          text: { kind: "text", role: `${name} name`, x: x + slip, y, anchor, size, text },
          strokes: [leader],
          shelf: [],
          lane: null,
          cost: shorter * 3 + tier + i * 0.4,
          shapes: () => [lineShape("leader", "thin", leader)],
        };
      }),
    ),
  );
  const way = placer.choose(byCost(ways));
  return way === null ? [] : [...way.shapes(), way.text];
}

const byCost = (ways: readonly Way[]): Way[] => [...ways].sort((a, b) => a.cost - b.cost);

/** Names of the edges within the side; of its level lines beyond the end, where there is room; and the strip stated. */
function lineNames(sheet: SideSheet, placer: Placer): readonly TextShape[] {
  const { frame, side, size, stock, words, width } = sheet;
  const shares = [0.16, 0.3, 0.62, 0.74, 0.86];
  const within = (text: string, under: (s: number) => number, lift: number): readonly Way[] =>
    shares.map((share, i) =>
      nameAt(
        text,
        [pxAt(frame, share * side.length), pyAt(frame, -under(share * side.length)) + lift],
        size,
        i,
      ),
    );
  const beyond = (text: string, under: number, lift: number): readonly Way[] => [
    nameAt(text, [pxAt(frame, side.length) + 5, pyAt(frame, -under) + lift], size, 0, "start"),
  ];
  const down = capHeight(size) + 11;
  return [
    within("finished top edge", side.topAt, down),
    within("back edge", side.backAt, -9),
    ...(stock === null
      ? []
      : [
          [-5, capHeight(size) + 4].flatMap((lift) =>
            within(`you have ${words.length(stock)}`, () => stock, lift).toReversed(),
          ),
        ]),
    ...(width < narrow ? [] : [beyond("level edge", 0, -2)]),
    ...(width < narrow || side.datum <= seen ? [] : [beyond("datum", side.datum, capHeight(size))]),
  ].flatMap((ways) => {
    const chosen = placer.choose(byCost(ways));
    return chosen === null ? [] : [chosen.text];
  });
}

function nameAt(
  text: string,
  [x, y]: Point,
  size: number,
  rank: number,
  anchor: TextShape["anchor"] = "middle",
): Way {
  return {
    text: { kind: "text", role: `${text} name`, x, y, anchor, size: size - 1, text },
    strokes: [],
    shelf: [],
    lane: null,
    cost: rank * 0.3,
    shapes: () => [],
  };
}
