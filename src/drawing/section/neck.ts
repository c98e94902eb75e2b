import { fingerboardEndX, fretPlaneZ, fretX } from "../../profile/neck.ts";
import { type Point, pointAt, pyAt } from "../frame.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { areaShape, group, lineShape } from "../shapes.ts";
import { neckStub, type SectionLayout } from "./section-layout.ts";

/** Shape of the heel as drawn, mm: its tip, where its curve runs out, and the neck's own depth. Nothing depends on it. */
const heelTip = 14;
const heelRun = 44;
const neckDepth = 16;

/** Fingerboard with its frets, and the neck as far as it is drawn: heel, and a stub of the shaft. */
export function neckShapes(layout: SectionLayout): GroupShape {
  return group("neck", [...heel(layout), ...fingerboard(layout), ...frets(layout)]);
}

export const neckCutX = ({ givens }: SectionLayout): number =>
  givens.instrument.body.length + neckStub;

/** Underside of the fingerboard: on the flat, unless the neck is tilted to it. */
const boardZ = ({ givens }: SectionLayout, x: number): number =>
  fretPlaneZ(givens.instrument, x) -
  givens.instrument.neck.fretHeight -
  givens.instrument.neck.fingerboardThickness;

/** The fingerboard's outline, open where the neck is cut. */
export function fingerboardPoints(layout: SectionLayout): readonly Point[] {
  const { frame, givens } = layout;
  const { fingerboardThickness } = givens.instrument.neck;
  const x0 = fingerboardEndX(givens.instrument);
  const x1 = neckCutX(layout);
  const corner = (x: number, over: number): Point => pointAt(frame, x, boardZ(layout, x) + over);
  return [
    corner(x1, 0),
    corner(x0, 0),
    corner(x0, fingerboardThickness),
    corner(x1, fingerboardThickness),
  ];
}

const fingerboard = (layout: SectionLayout): readonly Shape[] =>
  cutPiece("fingerboard", fingerboardPoints(layout));

function frets(layout: SectionLayout): readonly Shape[] {
  const { frame, givens } = layout;
  const { lastFret, fretHeight } = givens.instrument.neck;
  const shapes: Shape[] = [];
  for (let fret = lastFret; fret > 0; fret--) {
    const x = fretX(givens.instrument, fret);
    if (x > neckCutX(layout)) break;
    const crown = fretPlaneZ(givens.instrument, x);
    shapes.push(
      lineShape("fret", "thick", [pointAt(frame, x, crown - fretHeight), pointAt(frame, x, crown)]),
    );
  }
  return shapes;
}

/** From the shoulder down the neck end to the tip, and in a quarter round up to the shaft; where the sides are cut, so is it. */
function heel(layout: SectionLayout): readonly Shape[] {
  const { frame, givens, cut } = layout;
  const { length } = givens.instrument.body;
  const { heelLength } = givens.instrument.neck;
  const end = neckCutX(layout);
  const tip = pointAt(frame, length, -Math.max(heelLength, neckDepth));
  const profile = [tip, ...heelRound(layout), pointAt(frame, end, -neckDepth)];
  const foot = cut ?? tip[1];
  const under = profile.map(([x, y]): Point => [x, Math.min(y, foot)]);
  const shoulder = pointAt(frame, length, boardZ(layout, length));
  return cutPiece("heel", [...under.reverse(), shoulder], pointAt(frame, end, boardZ(layout, end)));
}

function heelRound({ frame, givens }: SectionLayout): readonly Point[] {
  const { body, neck } = givens.instrument;
  const depth = Math.max(neck.heelLength - neckDepth, 0);
  return Array.from({ length: 11 }, (_, i) => {
    const turn = (i / 10) * (Math.PI / 2);
    const x = body.length + heelTip + (heelRun - heelTip) * (1 - Math.cos(turn));
    return pointAt(frame, x, -neckDepth - depth * (1 - Math.sin(turn)));
  });
}

/** Wood with its outline drawn but for the side on which it is cut. */
const cutPiece = (role: string, outline: readonly Point[], ...corners: readonly Point[]) => [
  areaShape(`${role} wood`, "none", "wood", [...outline, ...corners]),
  lineShape(role, "thick", outline),
];

/** Where the drawn stub of the neck ends: top and foot of its cut, px. */
export function neckCut(layout: SectionLayout): readonly [Point, Point] {
  const { frame, givens, cut } = layout;
  const x = neckCutX(layout);
  const [px, top] = pointAt(frame, x, fretPlaneZ(givens.instrument, x));
  const foot = pyAt(frame, -neckDepth);
  return [
    [px, top],
    [px, cut === null ? foot : Math.min(foot, cut)],
  ];
}
