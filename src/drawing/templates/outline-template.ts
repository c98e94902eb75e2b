import { type Place, polylineAlong } from "../../geometry/polyline.ts";
import type { Givens } from "../../profile/givens.ts";
import { type Half, halfOn } from "../../profile/halves.ts";
import { type Profile, stationsOn } from "../../profile/outcome.ts";
import { edgePolyline } from "../edge-polyline.ts";
import { markedPlaces } from "./marked-places.ts";
import {
  cutShape,
  label,
  markLine,
  strayLimit,
  type Template,
  type TemplateLine,
} from "./template.ts";

/** Room of a line of lettering and its distance from a line beside it, mm. */
const lettered = 6;

interface Words {
  readonly length: (mm: number) => string;
}

/** Half the outline for the mould or the pattern: x from the tail, y from the centreline, with the lines to be marked across it. */
export function halfOutlineTemplate(givens: Givens, profile: Profile, words: Words): Template {
  const [bass] = givens.halves;
  const { length } = bass.outline;
  return {
    name: "Half outline",
    lines: [
      cutShape("half outline", [...edgePolyline(bass.outline, strayLimit), [length, 0]]),
      ...marksOf(givens, profile, bass, 1),
    ],
    labels: [...markLabels(givens, words), label([length / 2, -lettered], "centreline")],
  };
}

/**
 * The whole outline seen from above, both halves: x from the tail, y from the centreline toward the bass side,
 * or the treble side of a left-handed instrument.
 */
export function wholeOutlineTemplate(givens: Givens, profile: Profile, words: Words): Template {
  const { halves, outline, instrument } = givens;
  const over = instrument.body.leftHanded === true ? -1 : 1;
  const [bass, treble] = [halfOn(halves, "bass"), halfOn(halves, "treble")];
  const edge = (half: Half, way: 1 | -1): Place[] =>
    edgePolyline(half.outline, strayLimit).map(([x, y]): Place => [x, y === 0 ? 0 : way * y]);
  const { length } = outline;
  const named = (half: Half, text: string, way: 1 | -1) =>
    label([length / 3, way * half.outline.halfWidth(length / 3) * 0.6], text);
  return {
    name: "Whole outline",
    lines: [
      cutShape("outline", [
        ...edge(bass, over),
        ...edge(treble, over === 1 ? -1 : 1)
          .toReversed()
          .slice(0, -1),
      ]),
      markLine("centreline", [
        [0, 0],
        [length, 0],
      ]),
      ...marksOf(givens, profile, bass, over),
      ...marksOf(givens, profile, treble, over === 1 ? -1 : 1),
    ],
    labels: [
      ...markLabels(givens, words),
      label([length / 2, 2], "centreline"),
      named(bass, "bass side", over),
      named(treble, "treble side", over === 1 ? -1 : 1),
    ],
  };
}

/** What is marked on one half, drawn over the centreline or under it. */
function marksOf(
  givens: Givens,
  profile: Profile,
  { side, outline }: Half,
  way: 1 | -1,
): readonly TemplateLine[] {
  const { saddleX, instrument } = givens;
  const { soundholeAt, soundholeDiameter } = instrument.body;
  const hole = soundholeDiameter / 2;
  const across = (role: string, x: number) =>
    markLine(role, [
      [x, 0],
      [x, way * outline.halfWidth(x)],
    ]);
  const arc = (t: number): Place => [soundholeAt + hole * Math.cos(t), way * hole * Math.sin(t)];
  const places = markedPlaces(givens).concat({ name: "saddle line", x: saddleX });
  const landmarks = stationsOn(profile, side).filter(({ name }) => name !== "");
  return [
    ...places.map(({ name, x }) => across(name, x)),
    ...landmarks.map(({ name, x, halfWidth }) =>
      markLine(`${name} tick`, [
        [x, way * halfWidth],
        [x, way * Math.max(0, halfWidth - lettered)],
      ]),
    ),
    ...(hole > 0 ? [markLine("soundhole", polylineAlong(arc, 0, Math.PI, strayLimit))] : []),
  ];
}

function markLabels(givens: Givens, words: Words) {
  const { saddleX, instrument } = givens;
  const { soundholeAt, soundholeDiameter } = instrument.body;
  const hole = soundholeDiameter / 2;
  // Neckward of its line, or tailward where the soundhole lies there.
  const inHole = (x: number): boolean =>
    Math.abs(x + lettered / 2 - soundholeAt) < hole + lettered / 2;
  return markedPlaces(givens)
    .concat({ name: "saddle line", x: saddleX })
    .map(({ name, x }) =>
      label([inHole(x) ? x - 2 : x + lettered, 8], `${name}, ${words.length(x)} from the tail`, {
        anchor: "start",
        upright: true,
      }),
    );
}
