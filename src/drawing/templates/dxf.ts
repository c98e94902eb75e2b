import type { Template, TemplateLabel, TemplateLine } from "./template.ts";

/** A group of a DXF file: a code, and a value on the line after it. */
type Group = readonly [code: number, value: string | number];

const layers = [
  { name: "CUT", colour: 7 },
  { name: "MARK", colour: 5 },
  { name: "TEXT", colour: 3 },
] as const;

/**
 * The template as a DXF drawing of AutoCAD R12 (AC1009), which every reader takes: polylines on the
 * layers CUT and MARK, lettering on TEXT, y up, 1 unit = 1 mm. R12 itself has no word for the unit;
 * `$INSUNITS` 4 tells later readers that it is the millimetre.
 */
export function dxfOf({ lines, labels }: Template): string {
  const groups: readonly Group[] = [
    ...section("HEADER", [
      [9, "$ACADVER"],
      [1, "AC1009"],
      [9, "$INSUNITS"],
      [70, 4],
    ]),
    ...section("TABLES", tables()),
    ...section("ENTITIES", [...lines.flatMap(polyline), ...labels.flatMap(text)]),
    [0, "EOF"],
  ];
  return groups.map(([code, value]) => `${code}\r\n${value}\r\n`).join("");
}

const section = (name: string, groups: readonly Group[]): readonly Group[] => [
  [0, "SECTION"],
  [2, name],
  ...groups,
  [0, "ENDSEC"],
];

const tables = (): readonly Group[] => [
  ...table("LTYPE", [
    [0, "LTYPE"],
    ...([
      [2, "CONTINUOUS"],
      [70, 0],
      [3, "Solid line"],
      [72, 65],
      [73, 0],
      [40, 0],
    ] as const),
  ]),
  ...table(
    "LAYER",
    layers.flatMap(({ name, colour }): readonly Group[] => [
      [0, "LAYER"],
      ...([
        [2, name],
        [70, 0],
        [62, colour],
        [6, "CONTINUOUS"],
      ] as const),
    ]),
  ),
];

function table(name: string, entries: readonly Group[]): readonly Group[] {
  const count = entries.filter(([code]) => code === 0).length;
  return [[0, "TABLE"], [2, name], [70, count], ...entries, [0, "ENDTAB"]];
}

function polyline({ layer, closed, places }: TemplateLine): readonly Group[] {
  const on: Group = [8, layer.toUpperCase()];
  return [
    [0, "POLYLINE"],
    on,
    ...([
      [66, 1],
      [10, "0.0"],
      [20, "0.0"],
      [30, "0.0"],
      [70, closed ? 1 : 0],
    ] as const),
    ...places.flatMap(([x, y]): readonly Group[] => [[0, "VERTEX"], on, ...at(10, x, y)]),
    [0, "SEQEND"],
    on,
  ];
}

const aligned = { start: 0, middle: 1, end: 2 } as const;

function text({ x, y, size, anchor, upright, text }: TemplateLabel): readonly Group[] {
  return [
    [0, "TEXT"],
    [8, "TEXT"],
    ...at(10, x, y),
    ...([
      [40, size],
      [1, plain(text)],
      [50, upright ? 90 : 0],
      [72, aligned[anchor]],
    ] as const),
    ...(anchor === "start" ? [] : at(11, x, y)),
  ];
}

const at = (code: number, x: number, y: number): readonly Group[] => [
  [code, fixed(x)],
  [code + 10, fixed(y)],
  [code + 20, "0.0"],
];

const fixed = (value: number): string => (Math.round(value * 1e5) / 1e5 + 0).toFixed(5);

/** R12 knows ASCII and its own sign for degrees; anything else becomes a question mark, and a line end a space. */
const plain = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[−–—]/g, "-")
    .replace(/[’‘]/g, "'")
    .replaceAll("°", "%%d")
    .replace(/\s/g, " ")
    .replace(/[^ -~]/g, "?");
