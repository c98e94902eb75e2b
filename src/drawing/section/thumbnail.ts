import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { blendedTopZ, flatFromX } from "../../profile/top.ts";
import { type Frame, pointAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { Scene } from "../scene.ts";
import { areaShape, lineShape, rectangle } from "../shapes.ts";

const width = 160;
const height = 48;
/** Height the strings' side of the drawing needs over the flat, mm. */
const over = 14;

/** The section in small, heights ten times the lengths: the top, the flat extended, the shim where there is one, and the saddle. */
export function thumbnailOf(givens: Givens, profile: Profile): Scene {
  const { body } = givens.instrument;
  const along = (width - 8) / body.length;
  const up = Math.min(10 * along, (height - 6) / (over + profile.tailDrop));
  const frame: Frame = { along, up, left: 4, level: 3 + over * up, turned: false };
  const flatX = flatFromX(givens);
  const top = curvePoints(frame, 0, flatX, (x) => blendedTopZ(givens, profile.dome, x));
  const at = (x: number, z: number) => pointAt(frame, x, z);
  const { contact } = givens;
  const seat = givens.saddleX;
  return {
    width,
    height,
    title: "Section, in small",
    shapes: [
      ...(profile.seat === null
        ? [areaShape("shim", "thin", "wood", rectangle(at(0, 0), at(contact, -profile.shim)))]
        : []),
      lineShape("flat extended", "chain", [at(0, 0), at(flatX, 0)]),
      lineShape("top", "thick", top),
      lineShape("flat", "thick", [at(flatX, 0), at(body.length, 0)]),
      lineShape("saddle", "thick", [
        at(seat, -profile.flatGap),
        at(seat, profile.stringHeight - profile.flatGap),
      ]),
    ],
  };
}
