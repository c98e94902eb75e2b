import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";

/**
 * The rooms of src, lowest first: a file may import from its own room and from those above it in this
 * list, unless its room has a wall to them. Run by `npm run lint`.
 */
const rooms = [
  "geometry",
  "geometry/outline",
  "instrument",
  "instrument/as-built",
  "profile",
  "profile/checks",
  "profile/profile.ts",
  "profile/uncertainty",
  "profile/comparison",
  "profile/sticks",
  "profile/bench",
  "drawing",
  "drawing/dimensions",
  "drawing/section",
  "drawing/plan",
  "drawing/side",
  "drawing/strings",
  "drawing/charts",
  "drawing/templates",
  "drawing/why",
  "store/document",
  "store/files",
  "store/shelf",
  "worker",
  "views",
  "views/figures",
  "views/fields",
  "views/verdict",
  "views/profile-sheet",
  "views/layout",
  "views/compare",
  "views/rim",
  "views/bench",
  "views/sheet",
  "views/shelf",
  "views/sticks",
  "views/why",
  "views/page",
  "main.tsx",
];

/** Rooms that stand side by side: none of a row imports from another of it. */
const walls = [
  ["drawing", "store"],
  ["drawing", "worker"],
  [
    "views/layout",
    "views/compare",
    "views/rim",
    "views/bench",
    "views/sheet",
    "views/shelf",
    "views/sticks",
    "views/why",
  ],
];

/** What each package may be imported by; a package that is not named may be imported anywhere but in geometry. */
const packages: readonly [string, readonly string[]][] = [
  ["react", ["views", "main.tsx"]],
  ["react-dom", ["views", "main.tsx"]],
  ["zustand", ["store", "views", "main.tsx"]],
  ["zod", ["instrument", "store"]],
  ["d3-shape", ["drawing"]],
  ["idb", ["store/shelf"]],
];

const src = join(import.meta.dirname, "../../src");

const within = (path: string, room: string) => path === room || path.startsWith(`${room}/`);

/** The room that a file below src belongs to: the longest that holds it. */
function roomOf(file: string): number {
  let found = -1;
  for (const [place, room] of rooms.entries()) {
    const holds = room === file || dirname(file) === room;
    if (holds && (found < 0 || room.length > (rooms[found]?.length ?? 0))) found = place;
  }
  return found;
}

/** What is wrong with one import of a file, or nothing. */
function fault(file: string, specifier: string): string | null {
  if (!specifier.startsWith(".")) {
    const name = specifier.split("/")[0] ?? specifier;
    if (within(file, "geometry")) return "geometry imports no package";
    const allowed = packages.find(([listed]) => listed === name)?.[1];
    if (allowed === undefined || allowed.some((room) => within(file, room))) return null;
    return `${name} is for ${allowed.join(", ")}`;
  }
  const target = relative(src, join(src, dirname(file), specifier));
  if (target.endsWith(".css")) return null;
  const [from, to] = [roomOf(file), roomOf(target)];
  if (to < 0) return `${target} is in no room`;
  if (to > from) return `${rooms[from]} lies below ${rooms[to]}`;
  const wall = walls.find((row) => {
    const [a, b] = [
      row.find((room) => within(file, room)),
      row.find((room) => within(target, room)),
    ];
    return a !== undefined && b !== undefined && a !== b;
  });
  return wall === undefined ? null : `there is a wall between ${rooms[from]} and ${rooms[to]}`;
}

const faults: string[] = [];
for (const file of readdirSync(src, { recursive: true, encoding: "utf8" })) {
  if (!/\.tsx?$/.test(file)) continue;
  if (roomOf(file) < 0)
    faults.push(`src/${file}: no room of this name; see tests/support/rooms.ts`);
  for (const [, specifier = ""] of readFileSync(join(src, file), "utf8").matchAll(
    /\b(?:from|import|import\()\s*"([^"]+)"/g,
  )) {
    const wrong = fault(file, specifier);
    if (wrong !== null) faults.push(`src/${file} imports ${specifier}: ${wrong}`);
  }
}
for (const line of faults) console.error(line);
process.exitCode = faults.length > 0 ? 1 : 0;
