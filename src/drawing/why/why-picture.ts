import type { Givens } from "../../profile/givens.ts";
import { fretPlaneZ } from "../../profile/neck.ts";
import type { Profile } from "../../profile/outcome.ts";
import { datumZ } from "../../profile/rim.ts";
import { blendedTopZ, flatFromX, topZ } from "../../profile/top.ts";
import { type Frame, pointAt } from "../frame.ts";
import { curvePoints } from "../path.ts";
import type { Scene, Shape } from "../scene.ts";
import { areaShape, lineShape, rectangle, textShape } from "../shapes.ts";

/** The still pictures that explain a domed top with a flat, from cause to effect. */
export const whyPictures = ["dome", "flat", "part", "bridge", "saddle"] as const;

export type WhyPicture = (typeof whyPictures)[number];

/** How the measures on a picture are written. */
interface Words {
  readonly length: (mm: number) => string;
  readonly shim: (mm: number) => string;
  readonly height: (mm: number) => string;
  readonly angle: (degrees: number) => string;
}

const width = 340;
/** px that the tallest drawing may take, over the lettering, and what the lettering takes. */
const drawn = 132;
const lettered = 44;
const size = 14;
/** mm drawn over the flat's plane: the strings need the most. */
const over: Readonly<Record<WhyPicture, number>> = {
  dome: 4,
  flat: 4,
  part: 9,
  bridge: 16,
  saddle: 16,
};
/** mm that the body's ends are drawn below the tail. */
const foot = 3;
/** mm: half the bridge, the saddle and the spacer as drawn. */
const half = { bridge: 14, saddle: 2.5, spacer: 8 };
/** Heights are drawn so many times the lengths, as far as there is room. */
const stretch = 8;

interface Picture {
  readonly givens: Givens;
  readonly profile: Profile;
  readonly frame: Frame;
}

/** One of the pictures, from the same numbers as everything else; its lettering says the measures that it is about. */
export function whyPictureOf(
  which: WhyPicture,
  givens: Givens,
  profile: Profile,
  words: Words,
): Scene {
  const { length } = givens.outline;
  const along = (width - 32) / length;
  const low = Math.max(profile.tailDrop, 4) + foot;
  const up = Math.min(stretch * along, (drawn - 12) / (over.saddle + low));
  const frame: Frame = { along, up, left: 16, level: 6 + over[which] * up, turned: false };
  const under = frame.level + low * up;
  const picture = { givens, profile, frame };
  const said = saidOn(which, givens, profile, words);
  return {
    width,
    height: under + lettered,
    title: said.join(", "),
    shapes: [
      ...shapesOf[which](picture),
      ...said.map((text, i) =>
        textShape(`${which} measure`, text, [8, under + 18 + i * 18], size, {
          anchor: "start",
          strong: i === 0,
        }),
      ),
    ],
  };
}

const shapesOf: Readonly<Record<WhyPicture, (picture: Picture) => readonly Shape[]>> = {
  dome: (picture) => [...ends(picture), dome(picture, "thick")],
  flat: (picture) => [...ends(picture), dome(picture, "thin"), ...flat(picture)],
  part: (picture) => [...ends(picture), dome(picture, "thin"), ...flat(picture), ...part(picture)],
  bridge: (picture) => [...rimAndNeck(picture), bridge(picture)],
  saddle: (picture) => [...rimAndNeck(picture), bridge(picture), ...saddle(picture)],
};

const rimAndNeck = (picture: Picture): readonly Shape[] => [
  ...ends(picture),
  dome(picture, "thin"),
  ...flat(picture),
  fretPlane(picture),
];

/** The body's ends, as far down as there is room. */
function ends({ frame, givens, profile }: Picture): readonly Shape[] {
  const { length } = givens.outline;
  const low = -Math.max(profile.tailDrop, 4) - foot;
  return [
    [0, -profile.tailDrop],
    [length, 0],
  ].map(([x = 0, z = 0]) =>
    lineShape("end", "thin", [pointAt(frame, x, z), pointAt(frame, x, low)]),
  );
}

function dome({ frame, givens, profile }: Picture, line: "thick" | "thin"): Shape {
  const end = flatFromX(givens);
  return lineShape(
    "dome",
    line,
    curvePoints(frame, 0, end, (x) => blendedTopZ(givens, profile.dome, Math.min(x, end - 1e-9))),
  );
}

/** The flat and its plane, carried on to the tail; and what a seat takes off the plate. */
function flat({ frame, givens, profile }: Picture): readonly Shape[] {
  const { seat, outline } = givens;
  const from = flatFromX(givens);
  const at = (x: number) => pointAt(frame, x, 0);
  const cut = curvePoints(frame, from, outline.length, (x) =>
    Math.max(0, topZ(givens, profile.dome, x)),
  );
  return [
    ...(seat === null
      ? []
      : [areaShape("seat cut", "thin", "ink", [at(from), ...cut, at(outline.length)])]),
    lineShape("flat extended", "chain", [at(0), at(from)]),
    lineShape("flat", "thick", [at(from), at(outline.length)]),
  ];
}

/** The shim under the tail, or the spacer on the top, and the level rim that the flat leans to. */
function part({ frame, givens, profile }: Picture): readonly Shape[] {
  const { length } = givens.outline;
  const datum = [0, length].map((x) =>
    pointAt(frame, x, datumZ(givens, profile.dome, profile.pitch, x)),
  );
  const [from, to, z] =
    profile.seat === null
      ? [0, Math.max(givens.contact, 8), -profile.shim]
      : [givens.saddleX - half.spacer, givens.saddleX + half.spacer, -profile.seat.spacer];
  return [
    lineShape("level rim", "dashed", datum),
    areaShape(
      profile.seat === null ? "shim" : "spacer",
      "thick",
      "wood",
      rectangle(pointAt(frame, from, 0), pointAt(frame, to, z)),
    ),
  ];
}

function fretPlane({ frame, givens: { instrument, outline, saddleX } }: Picture): Shape {
  const at = (x: number) => pointAt(frame, x, fretPlaneZ(instrument, x));
  return lineShape("fret plane", "thin", [at(saddleX - 2 * half.bridge), at(outline.length)]);
}

function bridge({ frame, givens, profile }: Picture): Shape {
  const { saddleX, instrument } = givens;
  const base = -profile.flatGap;
  const box = rectangle(
    pointAt(frame, saddleX - half.bridge, base),
    pointAt(frame, saddleX + half.bridge, base + instrument.bridge.thickness),
  );
  return areaShape("bridge", "thin", "wood", box);
}

function saddle({ frame, givens, profile }: Picture): readonly Shape[] {
  const { saddleX, instrument, outline, middleString } = givens;
  const roof = instrument.bridge.thickness - profile.flatGap;
  const crown = roof + profile.saddleExposure;
  const fall = (middleString.atSaddle - middleString.atNut) / instrument.neck.scale;
  const neckZ = crown - fall * (outline.length - saddleX);
  return [
    areaShape(
      "saddle",
      "thick",
      "paper",
      rectangle(
        pointAt(frame, saddleX - half.saddle, roof),
        pointAt(frame, saddleX + half.saddle, crown),
      ),
    ),
    lineShape("string", "thin", [
      pointAt(frame, saddleX, crown),
      pointAt(frame, outline.length, neckZ),
    ]),
  ];
}

/** What is written on a picture, the measure it is about first. */
function saidOn(which: WhyPicture, givens: Givens, profile: Profile, words: Words): string[] {
  const { dome: stated } = givens.instrument;
  switch (which) {
    case "dome":
      return [
        stated.dishRadius === null ? "no dome" : `dish radius ${words.length(stated.dishRadius)}`,
      ];
    case "flat":
      return profile.seat === null
        ? [`flat ${words.length(stated.flatLength)} long`]
        : [`off the plate ${words.height(profile.seat.endCut)}`];
    case "part":
      return [
        profile.seat === null
          ? `shim ${words.shim(profile.shim)}`
          : `spacer ${words.shim(profile.seat.spacer)}`,
        `pitch ${words.angle(profile.pitch)}`,
      ];
    case "bridge":
      return [`fret plane over the bridge ${words.height(profile.bridgeClearance)}`];
    case "saddle":
      return [
        `saddle exposed ${words.height(profile.saddleExposure)}`,
        `strings over the top ${words.height(profile.stringHeight)}`,
      ];
  }
}
