import { type Place, polylineAlong } from "../../geometry/polyline.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { edgePolyline } from "../edge-polyline.ts";
import { markedPlaces } from "./marked-places.ts";
import { cutShape, label, markLine, strayLimit, type Template } from "./template.ts";

/** Room of a line of lettering and its distance from a line beside it, mm. */
const lettered = 6;

/** Half the outline for the mould or the pattern: x from the tail, y from the centreline, with the lines to be marked across it. */
export function halfOutlineTemplate(
  givens: Givens,
  profile: Profile,
  words: { readonly length: (mm: number) => string },
): Template {
  const { outline, saddleX, instrument } = givens;
  const { soundholeAt, soundholeDiameter } = instrument.body;
  const across = (role: string, x: number) =>
    markLine(role, [
      [x, 0],
      [x, outline.halfWidth(x)],
    ]);
  const places = markedPlaces(givens).concat({ name: "saddle line", x: saddleX });
  const hole = soundholeDiameter / 2;
  // Neckward of its line, or tailward where the soundhole lies there.
  const inHole = (x: number): boolean =>
    Math.abs(x + lettered / 2 - soundholeAt) < hole + lettered / 2;
  const arc = (t: number): Place => [soundholeAt + hole * Math.cos(t), hole * Math.sin(t)];
  return {
    name: "Half outline",
    lines: [
      cutShape("half outline", [...edgePolyline(outline, strayLimit), [outline.length, 0]]),
      ...places.map(({ name, x }) => across(name, x)),
      ...profile.stations
        .filter(({ name }) => name !== "")
        .map(({ name, x, halfWidth }) =>
          markLine(`${name} tick`, [
            [x, halfWidth],
            [x, Math.max(0, halfWidth - 6)],
          ]),
        ),
      ...(hole > 0 ? [markLine("soundhole", polylineAlong(arc, 0, Math.PI, strayLimit))] : []),
    ],
    labels: [
      ...places.map(({ name, x }) =>
        label([inHole(x) ? x - 2 : x + lettered, 8], `${name}, ${words.length(x)} from the tail`, {
          anchor: "start",
          upright: true,
        }),
      ),
      label([outline.length / 2, -6], "centreline"),
    ],
  };
}
