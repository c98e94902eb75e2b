import type { SideMark } from "../../profile/side.ts";
import { leastShown } from "../../profile/standing.ts";
import { type Dimension, heightCandidates, lengthCandidates } from "../dimensions/dimension.ts";
import { type Point, pointAt, pxAt, pyAt } from "../frame.ts";
import {
  byCost,
  type LabelCandidate,
  LabelPlacement,
  outlineCost,
  plainCandidate,
  thinLineCost,
} from "../label-placement.ts";
import { capHeight, textBox } from "../lettering.ts";
import { scaleRow } from "../scale-bar.ts";
import type { GroupShape, Shape, TextShape } from "../scene.ts";
import { firstRow, nextRow } from "../section/section-layout.ts";
import { group, lineShape, textShape } from "../shapes.ts";
import {
  backPoints,
  levelPoints,
  narrow,
  type SideLayout,
  topPoints,
} from "./side-pattern-layout.ts";

/** Everything written on the pattern, kept apart by one label placement. */
export function sideLettering(layout: SideLayout): readonly Shape[] {
  const { width, height, frame, words, size, stretch, side } = layout;
  const labels = new LabelPlacement({ left: 2, top: 2, right: width - 2, bottom: height - 2 });
  const scales = scaleRow(
    { along: frame.along, up: frame.up, stretch: rounded(stretch), unit: words.unit },
    8,
    height - 8,
    width - 16,
    size,
  );
  for (const shape of scales.shapes) if (shape.kind === "text") labels.reserve(textBox(shape));
  labels.avoid(levelPoints(layout, 0), thinLineCost);
  labels.avoid(topPoints(layout, 0, side.length), outlineCost);
  labels.avoid(backPoints(layout), outlineCost);
  labels.avoid(levelPoints(layout, side.deepest.under), outlineCost);
  if (layout.stock !== null) labels.avoid(levelPoints(layout, layout.stock), outlineCost);
  for (const { along } of side.marks)
    labels.avoid(
      [pointAt(frame, along, 0), pointAt(frame, along, -side.backAt(along))],
      thinLineCost,
    );
  return [
    scales,
    ...byNeed(side.marks).flatMap(({ name, along }) => markName(layout, labels, name, along)),
    ...measured(layout, labels),
    ...lineNames(layout, labels),
  ];
}

/** Names in the order in which they find room; the side's end needs none. */
const needs = [
  ...["break", "horn", "cutaway", "waist", "neck end"],
  ...["lower bout", "tail seam", "upper bout"],
];

const byNeed = (marks: readonly SideMark[]): readonly SideMark[] =>
  needs.flatMap((name) => marks.filter((mark) => mark.name === name));

const rounded = (times: number): number => Math.round(times * 10) / 10;

function measured(layout: SideLayout, labels: LabelPlacement): readonly GroupShape[] {
  const { side, words, size, frame, foot } = layout;
  const { length, deepest, corner } = side;
  const depth = (name: string, s: number, at: number): [Dimension, typeof heightCandidates] => {
    const value = words.length(side.backAt(s) - side.topAt(s));
    return [
      {
        role: `depth at the ${name}`,
        texts: [`${name} ${value}`, value],
        from: pointAt(frame, s, -side.topAt(s)),
        to: pointAt(frame, s, -side.backAt(s)),
        offsets: [at],
      },
      heightCandidates,
    ];
  };
  const row = (i: number): number => foot + firstRow(size) + i * nextRow(size);
  const across = (role: string, value: number, s: number): [Dimension, typeof heightCandidates] => [
    {
      role,
      texts: [`${role} ${words.length(value)}`, words.length(value)],
      from: pointAt(frame, s, 0),
      to: pointAt(frame, s, -value),
      offsets: [0.42, 0.34, 0.5, 0.58, 0.26].map((share) => pxAt(frame, share * length)),
    },
    heightCandidates,
  ];
  const offers: readonly [Dimension, typeof heightCandidates | typeof lengthCandidates][] = [
    across("strip", deepest.under, length * 0.42),
    depth("tail", 0, pxAt(frame, 0) + 20),
    depth("neck end", corner, pxAt(frame, corner) - 16),
    [
      {
        role: "length of the side",
        texts: [`length of the side ${words.length(length)}`, words.length(length)],
        from: pointAt(frame, 0, -side.backAt(0)),
        to: pointAt(frame, length, -side.backAt(length)),
        offsets: [row(0), row(1)],
      },
      lengthCandidates,
    ],
  ];
  return offers.flatMap(([dimension, candidates]) => {
    const candidate = labels.choose(candidates(dimension, size));
    if (candidate === null) return [];
    return [group(`dimension ${dimension.role}`, [...candidate.shapes(), candidate.text])];
  });
}

/** Over the level edge, in two rows: what the mark is, and how far it is from the tail seam. */
function markName(
  layout: SideLayout,
  labels: LabelPlacement,
  name: string,
  along: number,
): readonly Shape[] {
  const { frame, size, words } = layout;
  const x = pxAt(frame, along);
  const far = along === 0 ? "" : ` ${words.length(along)}`;
  const candidates = [`${name}${far}`, name].flatMap((text, shorter) =>
    [0, 1, 2, 3].flatMap((tier) =>
      (["middle", "start", "end"] as const).map((anchor, i): LabelCandidate => {
        const y = frame.level - 6 - tier * (size + 6);
        const leader: Point[] = [
          [x, frame.level],
          [x, y + (anchor === "middle" ? 4 : -capHeight(size))],
        ];
        const slip = { middle: 0, start: 4, end: -4 }[anchor];
        return {
          text: textShape(`${name} name`, text, [x + slip, y], size, { anchor }),
          strokes: [leader],
          leader: [],
          lane: null,
          cost: shorter * 3 + tier + i * 0.4,
          shapes: () => [lineShape("leader", "thin", leader)],
        };
      }),
    ),
  );
  const candidate = labels.choose(byCost(candidates));
  return candidate === null ? [] : [...candidate.shapes(), candidate.text];
}

/** Names of the edges within the side; of its level lines beyond the end, where there is room; and the strip stated. */
function lineNames(layout: SideLayout, labels: LabelPlacement): readonly TextShape[] {
  const { frame, side, size, stock, words, width } = layout;
  const shares = [0.16, 0.3, 0.62, 0.74, 0.86];
  const within = (
    text: string,
    under: (s: number) => number,
    lift: number,
  ): readonly LabelCandidate[] =>
    shares.map((share, i) =>
      nameAt(
        text,
        [pxAt(frame, share * side.length), pyAt(frame, -under(share * side.length)) + lift],
        size,
        i,
      ),
    );
  const beyond = (text: string, under: number, lift: number): readonly LabelCandidate[] => [
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
    ...(width < narrow || side.datum <= leastShown
      ? []
      : [beyond("datum", side.datum, capHeight(size))]),
  ].flatMap((candidates) => {
    const chosen = labels.choose(byCost(candidates));
    return chosen === null ? [] : [chosen.text];
  });
}

function nameAt(
  text: string,
  [x, y]: Point,
  size: number,
  rank: number,
  anchor: TextShape["anchor"] = "middle",
): LabelCandidate {
  return plainCandidate(textShape(`${text} name`, text, [x, y], size - 1, { anchor }), rank * 0.3);
}
