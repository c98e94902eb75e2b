import { boxesMeet, boxHolds } from "../../src/drawing/box.ts";
import type { Point } from "../../src/drawing/frame.ts";
import { textBox } from "../../src/drawing/lettering.ts";
import type { PathShape, Scene, Shape, TextShape } from "../../src/drawing/scene.ts";

/** Every shape that is not a group, in drawing order. */
function leaves(shapes: readonly Shape[]): readonly (PathShape | TextShape)[] {
  return shapes.flatMap((shape) => (shape.kind === "group" ? leaves(shape.shapes) : [shape]));
}

export const textsOf = ({ shapes }: Scene): readonly TextShape[] =>
  leaves(shapes).filter((shape) => shape.kind === "text");

export const pathsOf = ({ shapes }: Scene, role?: string): readonly PathShape[] =>
  leaves(shapes)
    .filter((shape) => shape.kind === "path")
    .filter((path) => role === undefined || path.role === role);

/** Points of the first path with that role, as written in its data. */
export function pointsOf(scene: Scene, role: string): readonly Point[] {
  const [path] = pathsOf(scene, role);
  if (path === undefined) throw new Error(`nothing is drawn as “${role}”`);
  return readPoints(path.d);
}

export const readPoints = (d: string): readonly Point[] =>
  [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

/** Centre and radius of a circle as written in a path's data: from its right end round. */
export function circleIn(d: string): { readonly centre: Point; readonly radius: number } {
  const [, x, y, radius] = /^M(-?[\d.]+),(-?[\d.]+)A([\d.]+),\3,/.exec(d) ?? [];
  if (radius === undefined) throw new Error(`no circle: ${d}`);
  return { centre: [Number(x) - Number(radius), Number(y)], radius: Number(radius) };
}

/** The one text that starts so. */
export function textOf(scene: Scene, start: string): TextShape {
  const found = textsOf(scene).find(({ text }) => text.startsWith(start));
  if (found === undefined) throw new Error(`nothing is written as “${start}…”`);
  return found;
}

/** What is wrong with a drawing's lettering, in words: nothing where every text is on the drawing and off every other. */
export function letteringFaults(scene: Scene): readonly string[] {
  const bounds = { left: 0, top: 0, right: scene.width, bottom: scene.height };
  const texts = textsOf(scene).map((shape) => ({ text: shape.text, box: textBox(shape) }));
  const off = texts.filter(({ box }) => !boxHolds(bounds, box)).map(({ text }) => `${text} is off`);
  const over = texts.flatMap(({ text, box }, i) =>
    texts
      .slice(i + 1)
      .filter((other) => boxesMeet(box, other.box))
      .map((other) => `${text} is over ${other.text}`),
  );
  return [...off, ...over];
}
