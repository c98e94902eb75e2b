import type { FieldPath } from "../../instrument/fields.ts";

/** The look of a stroke (the part, the dome, the flat, what is measured) and its path in a 120 × 60 box. */
type Stroke = readonly [look: "part" | "dome" | "flat" | "aid" | "measure", d: string];

const dish: readonly Stroke[] = [
  ["dome", "M8 22 Q60 56 112 22"],
  ["aid", "M8 22 H112"],
  ["measure", "M60 22 V39 M57 26 L60 22 L63 26 M57 35 L60 39 L63 35"],
  ["measure", "M60 12 H112 M64 9 L60 12 L64 15 M108 9 L112 12 L108 15"],
];

const clearance: readonly Stroke[] = [
  ["part", "M4 52 H116"],
  ["part", "M36 52 V40 H76 V52"],
  ["aid", "M4 26 H116"],
  ["measure", "M56 26 V40 M53 30 L56 26 L59 30 M53 36 L56 40 L59 36"],
];

const saddle: readonly Stroke[] = [
  ["part", "M4 54 H116"],
  ["part", "M20 54 V34 H74 V26 H80 V34 H98 V54"],
  ["part", "M116 22 L77 25 L42 44"],
];

/** Pictures for what is quicker drawn than said. */
const howPictures: Readonly<Partial<Record<FieldPath, readonly Stroke[]>>> = {
  "dome.dishRadius": dish,
  "dome.flatLength": [
    ["dome", "M4 50 Q40 26 74 26"],
    ["flat", "M74 26 H112"],
    ["aid", "M74 22 V6 M112 50 V6"],
    ["measure", "M74 11 H112 M78 8 L74 11 L78 14 M108 8 L112 11 L108 14"],
  ],
  "dome.tailExtra": [
    ["aid", "M4 14 H116"],
    ["dome", "M8 48 Q50 28 92 30"],
    ["flat", "M92 30 H116"],
    ["measure", "M8 14 V48 M5 18 L8 14 L11 18 M5 44 L8 48 L11 44"],
    ["measure", "M92 14 V30 M89 18 L92 14 L95 18 M89 26 L92 30 L95 26"],
  ],
  "dome.blendLength": [
    ["dome", "M4 48 Q26 36 50 31"],
    ["part", "M50 31 Q66 27 78 27"],
    ["flat", "M78 27 H116"],
    ["aid", "M50 27 V6 M78 23 V6"],
    ["measure", "M50 11 H78 M54 8 L50 11 L54 14 M74 8 L78 11 L74 14"],
  ],
  "shim.contact": [
    ["part", "M4 54 H116"],
    ["part", "M10 54 V42 H40 V54 Z"],
    ["dome", "M10 35 Q58 44 94 54"],
    ["flat", "M94 54 H116"],
    ["aid", "M10 31 V8 M40 38 V8"],
    ["measure", "M10 13 H40 M14 10 L10 13 L14 16 M36 10 L40 13 L36 16"],
  ],
  "bridge.pinDistance": [
    ...saddle,
    ["aid", "M42 40 V6 M77 22 V6"],
    ["measure", "M42 11 H77 M46 8 L42 11 L46 14 M73 8 L77 11 L73 14"],
  ],
  "bridge.pinRamp": [
    ...saddle,
    ["aid", "M42 44 H10"],
    ["measure", "M14 34 V44 M14 24 V34 M11 30 L14 34 L17 30 M14 54 V44 M11 48 L14 44 L17 48"],
  ],
  "neck.relief": [
    ["part", "M8 22 Q60 56 112 22"],
    ["aid", "M8 22 H112"],
    ["measure", "M60 22 V39 M57 26 L60 22 L63 26 M57 35 L60 39 L63 35"],
  ],
  "strings.nutClearance": [
    ["part", "M4 48 H116"],
    ["part", "M10 48 V14 H18 V48 M50 48 V40 H56 V48 M94 48 V40 H100 V48"],
    ["aid", "M18 40 H116"],
    ["part", "M18 16 L116 30"],
    ["measure", "M24 17 V40 M21 21 L24 17 L27 21 M21 36 L24 40 L27 36"],
  ],
  "seat.topThickness": [
    ["dome", "M4 30 Q60 18 116 24"],
    ["part", "M4 44 Q60 32 116 38"],
    ["measure", "M88 21 V35 M85 25 L88 21 L91 25 M85 31 L88 35 L91 31"],
  ],
  "seat.leastCut": [
    ["dome", "M4 34 Q60 10 116 20"],
    ["flat", "M60 30 H116"],
    ["aid", "M60 30 H8"],
    ["measure", "M112 8 V20 M109 16 L112 20 L115 16 M112 42 V30 M109 34 L112 30 L115 34"],
  ],
  "seat.fingerboardWidth": [
    ["part", "M116 6 Q40 2 14 30 Q40 58 116 54"],
    ["flat", "M116 20 H64 V40 H116"],
    ["measure", "M72 20 V40 M69 24 L72 20 L75 24 M69 36 L72 40 L75 36"],
  ],
  "windows.bridgeClearance.0": clearance,
  "windows.bridgeClearance.1": clearance,
};

/** The picture of how a field is measured, where there is one. */
export function HowPicture({ path }: { readonly path: FieldPath }) {
  const strokes = howPictures[path];
  if (strokes === undefined) return null;
  return (
    <svg viewBox="0 0 120 60" aria-hidden="true">
      {strokes.map(([look, d]) => (
        <path key={d} className={`how-${look}`} d={d} />
      ))}
    </svg>
  );
}
