import type { Station } from "../../profile/outcome.ts";
import type { Point } from "../frame.ts";
import type { Placer, Way } from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import { areaShape, lineShape } from "../path.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { bandAt, type EdgePlace, edgePlaceAt, type Hand, pointOut } from "./edge.ts";
import { endsSomewhere, nothing, type PlanSheet } from "./plan-sheet.ts";

/** px from the band to a figure in the first row round it, and from row to row. */
const clear = 5;
/** px that a text inside keeps from the edge and its colour. */
const within = 7;
const row = (size: number): number => size + 5;
const rows = [0, 1, 2];
/** px within which a landmark speaks for its neighbours. */
const crowded = 10;

interface Note {
  /** May also be written inside the outline. */
  readonly inside: boolean;
  readonly role: string;
  readonly place: EdgePlace;
  readonly hand: Hand;
  /** The fullest wording first. */
  readonly texts: readonly string[];
  readonly strong: boolean;
  readonly mark: readonly Shape[];
}

/** Where most and least comes off: before all else. */
export const extremeShapes = (sheet: PlanSheet, placer: Placer): readonly GroupShape[] =>
  written(sheet, placer, extremeNotes(sheet));

/** What else is written round the edge, most important first; what there is no room for is left to the table. */
export function figureShapes(sheet: PlanSheet, placer: Placer): readonly GroupShape[] {
  const { stations } = sheet.profile;
  const landmarks = stations.filter(({ name }) => name !== "");
  const others = spreadOut(
    stations.filter(
      ({ name, removal }) => name === "" && removal + sheet.profile.rimOffset > nothing,
    ),
  );
  const clearOf = (places: readonly Placed[], px: number) => (station: Station) =>
    places.every((place) => apart(place, station) * sheet.frame.along > px);
  const marked = extremeNotes(sheet).map(({ place }) => place);
  const told = landmarks.filter(clearOf(marked, 4));
  const notes = [
    ...told.map((station) => figureNote(sheet, station)),
    ...landmarks.flatMap((station) => landmarkNote(sheet, station)),
    ...others
      .filter(clearOf([...marked, ...told], crowded))
      .map((station) => figureNote(sheet, station)),
  ];
  return written(sheet, placer, notes);
}

function written(sheet: PlanSheet, placer: Placer, notes: readonly Note[]): readonly GroupShape[] {
  return notes.flatMap((note) => {
    const way = placer.choose(byCost(noteWays(sheet, note)));
    const shapes = [...note.mark, ...(way === null ? [] : [...way.shapes(), way.text])];
    return shapes.length === 0 ? [] : [{ kind: "group" as const, role: note.role, shapes }];
  });
}

type Placed = Pick<Station, "x" | "halfWidth">;

const apart = (a: Placed, b: Placed): number => Math.hypot(a.x - b.x, a.halfWidth - b.halfWidth);

/** Every second, then every second of the rest, so that those left out are spread evenly. */
function spreadOut(stations: readonly Station[]): readonly Station[] {
  const order = (i: number): number => {
    let step = 1;
    while (step < stations.length && i % (2 * step) === 0) step *= 2;
    return -step;
  };
  return stations
    .map((_, i) => i)
    .sort((a, b) => order(a) - order(b) || a - b)
    .flatMap((i) => stations[i] ?? []);
}

function extremeNotes(sheet: PlanSheet): readonly Note[] {
  const { profile, words } = sheet;
  const deepest = edgePlaceAt(sheet, profile.maxRemovalX);
  const least = edgePlaceAt(sheet, profile.leastRemovalX);
  const said = { hand: 1 as const, strong: true, inside: true };
  const [most, few] = [words.figure(deepest.off), words.figure(Math.max(0, least.off))];
  const notes: readonly Note[] = [
    {
      ...{ role: "deepest", place: deepest, ...said, mark: deepestMark(sheet, deepest) },
      texts: [`deepest ${most}`, most],
    },
    {
      ...{ role: "least", place: least, ...said, mark: leastMark(sheet, least) },
      texts: [`least ${few}, ends last`, `least ${few}`],
    },
  ];
  return endsSomewhere(profile) ? notes : notes.slice(0, 1);
}

const figureNote = (sheet: PlanSheet, { name, x, removal }: Station): Note => ({
  role: name === "" ? "station" : `station ${name}`,
  place: edgePlaceAt(sheet, x),
  hand: 1,
  texts: [sheet.words.figure(removal + sheet.profile.rimOffset)],
  strong: false,
  inside: false,
  mark: [],
});

/** Under the centreline: the landmark's name, and how far it is along the side. */
function landmarkNote(sheet: PlanSheet, { name, x, arcLength }: Station): readonly Note[] {
  if (name === "tail") return [];
  const far = sheet.words.figure(arcLength);
  return [
    {
      role: `landmark ${name}`,
      place: edgePlaceAt(sheet, x),
      hand: -1,
      texts: [`${name}, ${far} along the side`, `${name}, ${far} along`, `${name} ${far}`],
      strong: false,
      inside: false,
      mark: [],
    },
  ];
}

/** In the order a placer takes them. */
export const byCost = (ways: readonly Way[]): Way[] => [...ways].sort((a, b) => a.cost - b.cost);

/** Ways to write beyond the band, nearest first, a leader to those farther out; what matters most may stand inside. */
function noteWays(sheet: PlanSheet, note: Note): Way[] {
  const outward = rows.flatMap((tier) => noteRow(sheet, note, tier, 1));
  return note.inside
    ? [...outward, ...rows.flatMap((tier) => noteRow(sheet, note, tier, -1))]
    : outward;
}

/** One row of them; `way` −1 is inside the outline. */
function noteRow(
  sheet: PlanSheet,
  { role, place, hand, texts, strong }: Note,
  tier: number,
  way: 1 | -1,
): Way[] {
  const { size } = sheet;
  const from = way === 1 ? bandAt(sheet, place) : within;
  const out = from + clear + tier * row(size);
  const [px, py] = pointOut(sheet, place, hand, way * out);
  const leader: Point[] = [
    pointOut(sheet, place, hand, 0),
    pointOut(sheet, place, hand, way * Math.max(from, out - 3)),
  ];
  return texts.flatMap((text, shorter) =>
    [0, -1, 1].map((slip): Way => {
      const [width, tall] = [textWidth(text, size, strong), capHeight(size)];
      // The text's box touches the row, slid along the edge where its middle is taken.
      const slide = slip * Math.min(width / 2, 24) * Math.abs(place.outY);
      const drop = slip * tall * Math.abs(place.outX);
      const x = px + (way * place.outX * width) / 2 + slide;
      const y = py - (way * hand * place.outY * tall) / 2 + tall / 2 + drop;
      return {
        text: { kind: "text", role, x, y, anchor: "middle", size, strong, text },
        strokes: [leader],
        shelf: [],
        lane: null,
        cost: tier * 1.5 + shorter * 4 + Math.abs(slip) * 0.5 + (way === 1 ? 0 : 1),
        shapes: () => [lineShape("ordinate", "thin", leader)],
      };
    }),
  );
}

const hands: readonly Hand[] = [1, -1];

/** A solid arrow into the edge where most comes off. */
const deepestMark = (sheet: PlanSheet, place: EdgePlace): readonly Shape[] =>
  hands.map((hand) => {
    const out = bandAt(sheet, place);
    const [tx, ty] = pointOut(sheet, place, hand, 1);
    const [bx, by] = pointOut(sheet, place, hand, Math.max(9, out));
    const [ax, ay] = [place.outY * 4, hand * place.outX * 4];
    return areaShape("deepest mark", "none", "ink", [
      [tx, ty],
      [bx + ax, by + ay],
      [bx - ax, by - ay],
    ]);
  });

/** A ring on the edge where least comes off. */
const leastMark = (sheet: PlanSheet, place: EdgePlace): readonly Shape[] =>
  hands.map((hand) => {
    const [cx, cy] = pointOut(sheet, place, hand, 0);
    const ring = Array.from({ length: 24 }, (_, i): Point => {
      const turn = (2 * Math.PI * i) / 24;
      return [cx + 5 * Math.cos(turn), cy + 5 * Math.sin(turn)];
    });
    return areaShape("least mark", "thick", "paper", ring);
  });
