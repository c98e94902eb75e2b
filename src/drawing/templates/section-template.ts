import { type Place, polylineAlong } from "../../geometry/polyline.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { rimZ } from "../../profile/rim.ts";
import { blendedTopZ, topZ } from "../../profile/top.ts";
import { markedPlaces } from "./marked-places.ts";
import { cutShape, label, markLine, strayLimit, type Template } from "./template.ts";

/** Height of the gauge's straight edge over the flat's plane, mm. */
const board = 40;

/** Where along the gauge its lines are named, mm from the tail. */
const namesAt = 60;

/** The top's upper face on the centreline from the tail to the neck end: heights over the flat's plane. */
export function topPolyline(givens: Givens, { dome }: Profile, stray = strayLimit): Place[] {
  const { outline, breakX, instrument, seat } = givens;
  if (seat !== null) {
    const domed = polylineAlong(
      (x) => [x, topZ(givens, dome, x)],
      0,
      seat.fromX,
      stray,
      outline.knots.filter((knot) => knot < seat.fromX),
    );
    // The seat's cut leaves a step at the fingerboard's end.
    return [...domed, [seat.fromX, 0], [outline.length, 0]];
  }
  const corners = [...outline.knots, breakX - instrument.dome.blendLength, breakX];
  return polylineAlong((x) => [x, blendedTopZ(givens, dome, x)], 0, outline.length, stray, corners);
}

/**
 * The section along the centreline as a gauge to stand on the top: its lower edge is the top as
 * planned, its upper edge straight and parallel to the flat. x from the tail, y over the flat's plane.
 */
export function sectionTemplate(
  givens: Givens,
  profile: Profile,
  words: { readonly length: (mm: number) => string },
): Template {
  const { outline, breakX, saddleX, seat } = givens;
  const { length } = outline;
  const plane = seat === null ? "flat" : "seat";
  const edgeZ = (x: number): number => rimZ(givens, profile.dome, x, outline.halfWidth(x));
  const rim = polylineAlong((x) => [x, edgeZ(x)], 0, length, strayLimit, [
    ...outline.knots,
    breakX,
  ]);
  const marks = markedPlaces(givens).concat({ name: "saddle line", x: saddleX });
  return {
    name: "Section profile",
    lines: [
      cutShape("top on the centreline", [
        ...topPolyline(givens, profile),
        [length, board],
        [0, board],
      ]),
      markLine("rim", rim),
      markLine(`${plane}'s plane`, [
        [0, 0],
        [length, 0],
      ]),
      ...marks.map(({ name, x }) =>
        markLine(name, [
          [x, blendedTopZ(givens, profile.dome, x)],
          [x, board],
        ]),
      ),
    ],
    labels: [
      ...marks.map(({ name, x }) =>
        label([x + 2, board - 8], `${name} ${words.length(x)}`, { anchor: "start" }),
      ),
      label([namesAt, board - 18], "lower edge: the top on the centreline", { anchor: "start" }),
      label([namesAt, board - 24], `upper edge: parallel to the ${plane}`, { anchor: "start" }),
      label([namesAt, 2], `the ${plane} extended`, { anchor: "start" }),
      label([namesAt, edgeZ(namesAt) - 8], "the rim", {
        anchor: "start",
      }),
      label([4, 12], "tail", { anchor: "start" }),
      label([length - 4, 12], "neck end", { anchor: "end" }),
    ],
  };
}
