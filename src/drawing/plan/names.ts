import { contactOf } from "../../profile/givens.ts";
import { leastShown } from "../../profile/standing.ts";
import { flatFromX } from "../../profile/top.ts";
import { type Dimension, lengthCandidates } from "../dimensions/dimension.ts";
import { type Point, pointAt, pxAt } from "../frame.ts";
import {
  byCost,
  type LabelCandidate,
  type LabelPlacement,
  plainCandidate,
} from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import { roundLength } from "../scale-bar.ts";
import type { GroupShape, Shape, TextShape } from "../scene.ts";
import { group, lineShape, textShape } from "../shapes.ts";
import { crossLines } from "./parts.ts";
import { besideWidth, endsSomewhere, lengthLineY, type PlanLayout } from "./rim-plan-layout.ts";

/** The lengths a builder marks out along the centreline, under the plan. */
export function lengthShapes(layout: PlanLayout, labels: LabelPlacement): readonly GroupShape[] {
  const { givens, words, foot, size, frame } = layout;
  const { breakX, saddleX, outline, instrument, seat } = givens;
  const span = (role: string, from: number, to: number, row: number): Dimension => {
    const value = words.length(to - from);
    return {
      role,
      texts: [`${role} ${value}`, value],
      from: [pxAt(frame, from), foot],
      to: [pxAt(frame, to), foot],
      offsets: [lengthLineY(layout, row) ?? []].flat(),
    };
  };
  const contact = seat === null ? contactOf(instrument) : 0;
  const spans =
    seat === null
      ? [span("break to tail", 0, breakX, 1), span("flat", breakX, outline.length, 1)]
      : [span("seat", seat.fromX, outline.length, 1)];
  return [
    ...spans,
    span("saddle line to tail", 0, saddleX, 0),
    ...(contact > 0 ? [span("stick's edge", 0, contact, 2)] : []),
  ].flatMap((dimension) => {
    const candidate = labels.choose(lengthCandidates(dimension, size));
    if (candidate === null) return [];
    return [group(`dimension ${dimension.role}`, [...candidate.shapes(), candidate.text])];
  });
}

/** Names of the lines across, and of the two zones, within the outline. */
export function nameShapes(layout: PlanLayout, labels: LabelPlacement): readonly TextShape[] {
  const { givens, frame, size } = layout;
  const { outline, saddleX, saddleSpan, breakHalfWidth, instrument, seat } = givens;
  const flatX = flatFromX(givens);
  const hole = instrument.body.soundholeDiameter / 4;
  const zone = (
    text: string,
    xs: readonly number[],
    half: number,
    up: 1 | -1,
  ): readonly LabelCandidate[] =>
    xs.flatMap((x, i) =>
      [0.3, -0.3, 0.5, -0.5, 0.7, -0.7].map((share, j) =>
        plain(
          text,
          text,
          pointAt(frame, x, up * share * half),
          "middle",
          size + 2,
          i + j * 0.1,
          true,
        ),
      ),
    );
  const candidates = [
    zone(
      instrument.dome.dishRadius === null ? "no dome" : "dome",
      [saddleX * 0.6, saddleX * 0.4, saddleX * 0.8],
      saddleSpan.half,
      1,
    ),
    zone(
      seat === null ? "flat" : "seat",
      [0.6, 0.5, 0.7].map((share) => flatX + share * (outline.length - flatX)),
      seat?.end[0] ?? breakHalfWidth,
      // Under the centreline: over it most is told, which is often at the neck end.
      -1,
    ),
    ...crossLines(layout).map((cross) =>
      besideCandidates(layout, cross.role, cross.text, cross.x, [cross.over, cross.under]),
    ),
    besideCandidates(
      layout,
      "soundhole",
      "soundhole",
      givens.instrument.body.soundholeAt,
      [hole, hole],
      true,
    ),
  ];
  return candidates.flatMap((offer) => {
    const candidate = labels.choose(byCost(offer));
    return candidate === null ? [] : [candidate.text];
  });
}

/** Beside a line across the plan, at several heights, either side of it. */
function besideCandidates(
  { frame, size }: PlanLayout,
  role: string,
  text: string,
  x: number,
  [over, under]: readonly [number, number],
  middle = false,
): readonly LabelCandidate[] {
  const shares = [0.55, -0.55, 0.75, -0.75, 0.35, -0.35, 0.9, -0.9, 0.2, -0.2, 0];
  return shares.flatMap((share, i) => {
    const [px, py] = pointAt(frame, x, share * (share > 0 ? over : under));
    if (middle) return [plain(role, text, [px, py], "middle", size - 1, i * 0.2)];
    return [
      plain(role, text, [px - 6, py], "end", size - 1, i * 0.2),
      plain(role, text, [px + 6, py], "start", size - 1, i * 0.2 + 0.1),
    ];
  });
}

function plain(
  role: string,
  text: string,
  [x, y]: Point,
  anchor: TextShape["anchor"],
  size: number,
  cost: number,
  strong = false,
): LabelCandidate {
  const base = y + capHeight(size) / 2;
  return plainCandidate(textShape(`${role} name`, text, [x, base], size, { anchor, strong }), cost);
}

/** What the figures are, the scale bar, and a level rim that must start higher. */
export function legendShape(layout: PlanLayout): GroupShape {
  const { frame, words, width, height, size, times } = layout;
  const bar = roundLength(frame.along, Math.min(110, width / 4), words.unit);
  const unit = words.unit === "mm" ? "mm" : "in";
  const drawn = times === 1 ? "" : `, drawn ×${times}`;
  const marks = endsSomewhere(layout.profile) ? "arrow most, ring least" : "arrow most";
  const right = bar.mm * frame.along + textWidth(bar.text, size) + 34;
  const long = `Round the edge: what comes off the level rim, ${unit}${drawn}`;
  const brief = `Off the level rim, ${unit}${drawn}`;
  const together = width >= besideWidth;
  const first = (texts: readonly string[], room: number): string =>
    texts.find((text) => textWidth(text, size) + room < width) ?? brief;
  const said = first(
    [`${long}; ${marks}`, ...(together ? [long] : []), `${brief}; ${marks}`],
    together ? right : 16,
  );
  const lines = [...allRound(layout), said, ...(together ? [] : [""])];
  const base = (i: number): number => height - 8 - (lines.length - 1 - i) * (size + 6);
  const x0 = together ? width - right + 6 : 8;
  const y = base(lines.length - 1) - capHeight(size) / 2;
  const x1 = x0 + bar.mm * frame.along;
  const strokes: readonly (readonly Point[])[] = [
    [
      [x0, y],
      [x1, y],
    ],
    ...[x0, x1].map((x): readonly Point[] => [
      [x, y - 3],
      [x, y + 3],
    ]),
  ];
  const write = (x: number, at: number, text: string): Shape =>
    textShape("legend", text, [x, at], size, { anchor: "start" });
  return group("legend", [
    ...lines.flatMap((text, i) => (text === "" ? [] : [write(8, base(i), text)])),
    ...strokes.map((points) => lineShape("scale bar", "thin", points)),
    write(x1 + 8, base(lines.length - 1), bar.text),
  ]);
}

/** The part of every figure that is the same all round, where there is one. */
function allRound({ profile, words, width, size }: PlanLayout): readonly string[] {
  if (profile.rimOffset <= leastShown) return [];
  const brief = `${words.length(profile.rimOffset)} of it comes off all round`;
  const full = `${brief}: without that, sanding would not reach where least comes off`;
  return [textWidth(full, size) + 16 < width ? full : brief];
}
