import type { Point } from "./frame.ts";
import { nameWays } from "./line-name.ts";
import type { Placer } from "./placer.ts";
import type { TextShape } from "./scene.ts";
import { boardFoot, datumPoints, flatPoints, fretPlanePoints } from "./section-lines.ts";
import type { SectionSheet } from "./section-sheet.ts";

/** Narrower drawings leave the names to the reader. */
const roomy = 600;

/** A name is not worth standing on a line. */
const dearestName = 3;

/** Names of the lines, where they do not crowd the measures. */
export function nameShapes(sheet: SectionSheet, placer: Placer): readonly TextShape[] {
  if (sheet.width < roomy) return [];
  return namedLines(sheet).flatMap(({ role, text, line }) => {
    const way = placer.choose(nameWays(role, text, line, sheet.size - 1), dearestName);
    return way === null ? [] : [way.text];
  });
}

interface NamedLine {
  readonly role: string;
  readonly text: string;
  readonly line: readonly [Point, Point];
}

function namedLines(sheet: SectionSheet): readonly NamedLine[] {
  const datum: NamedLine = { role: "datum", text: "level rim", line: datumPoints(sheet) };
  if (sheet.frame.turned)
    return [{ role: "board", text: "sanding board", line: boardFoot(sheet) }, datum];
  return [
    { role: "flat carried on", text: "flat carried on", line: flatPoints(sheet) },
    { role: "fret plane", text: "fret plane", line: fretPlanePoints(sheet) },
    datum,
  ];
}
