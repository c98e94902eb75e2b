import { type Place, polylineAlong } from "../../geometry/polyline.ts";
import type { Side } from "../../profile/side.ts";
import { cutShape, label, markLine, strayLimit, type Template } from "./template.ts";

/** The finished top edge, tail seam to centreline: along the side, and up from the level edge (so at most 0). */
export const sideTopPolyline = (side: Side, stray = strayLimit): Place[] =>
  polylineAlong((s) => [s, 0 - side.topAt(s)], 0, side.length, stray, side.corners);

export const sideBackPolyline = (side: Side, stray = strayLimit): Place[] =>
  polylineAlong((s) => [s, 0 - side.backAt(s)], 0, side.length, stray, side.corners);

/** Marks nearer to each other than this have their names on either side of them, mm. */
const crowded = 14;
/** Where along the side its edges are named. */
const edgeNamesAt = 20;

function edgeNames(side: Side, words: { readonly length: (mm: number) => string }) {
  const { datum } = side;
  const level = datum > 0 ? `level edge, datum ${words.length(datum)} under it` : "level edge";
  const lines: readonly (readonly [text: string, y: number])[] = [
    [level, 8],
    ["cut to the finished top edge", 2],
    ["back edge", 3 - side.backAt(edgeNamesAt)],
  ];
  return lines.map(([text, y]) => label([edgeNamesAt, y], text, { anchor: "start" }));
}

/**
 * The unrolled side, full size: x along the side from the tail seam, y up from the straight edge the
 * side starts with. The other side is the same turned over, unless it has a name of its own.
 */
export function sidePatternTemplate(
  side: Side,
  words: { readonly length: (mm: number) => string },
  name = "Side pattern",
): Template {
  const { length, datum } = side;
  const top = sideTopPolyline(side);
  const back = sideBackPolyline(side);
  const level = (role: string, y: number) =>
    markLine(role, [
      [0, y],
      [length, y],
    ]);
  return {
    name,
    lines: [
      cutShape("finished side", [...top, ...back.reverse()]),
      level("level edge", 0),
      ...(datum > 0 ? [level("datum", -datum)] : []),
      ...side.marks.map(({ name, along }) =>
        markLine(name, [
          [along, 0],
          [along, -side.backAt(along)],
        ]),
      ),
    ],
    labels: [
      ...side.marks.map(({ name, along }, i) => {
        const next = side.marks[i + 1]?.along ?? Number.POSITIVE_INFINITY;
        const at = next - along < crowded ? along - 2 : along + 6;
        return label([at, -side.backAt(along) + 6], `${name}, ${words.length(along)}`, {
          anchor: "start",
          upright: true,
        });
      }),
      ...edgeNames(side, words),
    ],
  };
}
