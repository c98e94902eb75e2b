import type { BodySide } from "../../profile/halves.ts";
import { type Station, stationsOn } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { circleShape } from "../circle-shape.ts";
import type { Point } from "../frame.ts";
import { byCost, type LabelCandidate, type LabelPlacement } from "../label-placement.ts";
import { capHeight, textWidth } from "../lettering.ts";
import type { GroupShape, Shape } from "../scene.ts";
import { areaShape, group, lineShape, textShape } from "../shapes.ts";
import { bandAt, type EdgePlace, edgePlaceAt, placeOf, pointOut } from "./edge.ts";
import {
  type DrawnHalf,
  type EdgeSide,
  endsSomewhere,
  type PlanLayout,
} from "./rim-plan-layout.ts";

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
  readonly side: EdgeSide;
  /** The fullest wording first. */
  readonly texts: readonly string[];
  readonly strong: boolean;
  readonly mark: readonly Shape[];
}

/** Where most and least comes off: before all else. */
export const extremeShapes = (layout: PlanLayout, labels: LabelPlacement): readonly GroupShape[] =>
  written(layout, labels, extremeNotes(layout));

/** What else is written round the edge, most important first; what there is no room for is left to the table. */
export function figureShapes(layout: PlanLayout, labels: LabelPlacement): readonly GroupShape[] {
  return layout.givens.halves.length === 1
    ? written(layout, labels, [
        ...figureNotes(layout, layout.drawn[0], landmarkNotes(layout, layout.drawn[1])),
      ])
    : written(layout, labels, [
        ...figureNotes(layout, layout.drawn[0], []),
        ...figureNotes(layout, layout.drawn[1], landmarkNotes(layout, layout.drawn[1])),
      ]);
}

/** The stations of a half up to its horn: within a cutaway's scoop there is no room to write. */
function openStations({ profile }: PlanLayout, { half }: DrawnHalf): readonly Station[] {
  const stations = stationsOn(profile, half.side);
  const horn = stations.findIndex(({ name }) => name === "horn");
  return horn < 0 ? stations : stations.slice(0, horn + 1);
}

/** What comes off along a half, most important first; `landmarks` come after those of its own landmarks. */
function figureNotes(
  layout: PlanLayout,
  drawn: DrawnHalf,
  landmarkNotes: readonly Note[],
): readonly Note[] {
  const stations = openStations(layout, drawn);
  const landmarks = stations.filter(({ name }) => name !== "");
  const others = spreadOut(
    stations.filter(
      ({ name, removal }) => name === "" && removal + layout.profile.rimOffset > leastShown,
    ),
  );
  const clearOf = (places: readonly Placed[], px: number) => (station: Station) =>
    places.every((place) => apart(place, station) * layout.frame.along > px);
  const marked = extremeNotes(layout)
    .filter(({ side }) => side === drawn.way)
    .map(({ place }) => place);
  const told = landmarks.filter(clearOf(marked, 4));
  return [
    ...told.map((station) => figureNote(layout, drawn, station)),
    ...landmarkNotes,
    ...others
      .filter(clearOf([...marked, ...told], crowded))
      .map((station) => figureNote(layout, drawn, station)),
  ];
}

function written(
  layout: PlanLayout,
  labels: LabelPlacement,
  notes: readonly Note[],
): readonly GroupShape[] {
  return notes.flatMap((note) => {
    const candidate = labels.choose(byCost(noteCandidates(layout, note)));
    const shapes = [
      ...note.mark,
      ...(candidate === null ? [] : [...candidate.shapes(), candidate.text]),
    ];
    return shapes.length === 0 ? [] : [group(note.role, shapes)];
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

/** The half a place of the rim is on, as drawn; over the centreline where both halves have it. */
const drawnOn = ({ drawn }: PlanLayout, side: BodySide | null): DrawnHalf =>
  side !== null && drawn[1].half.side === side && drawn[0].half.side !== side ? drawn[1] : drawn[0];

function extremeNotes(layout: PlanLayout): readonly Note[] {
  const { profile, words } = layout;
  const placed = (x: number, arcLength: number, side: BodySide | null) => {
    const { way, half } = drawnOn(layout, side);
    const place = edgePlaceAt(layout, half, placeOf(half, { x, arcLength }));
    const ways = side === null ? edgeSides : [way];
    return { side: way, place, ways, strong: true, inside: true };
  };
  const deepest = placed(profile.maxRemovalX, profile.maxRemovalArc, profile.maxRemovalSide);
  const least = placed(profile.leastRemovalX, profile.leastRemovalArc, profile.leastRemovalSide);
  const [most, few] = [deepest, least].map(({ place }) => words.figure(Math.max(0, place.off)));
  const notes: readonly Note[] = [
    {
      ...{ role: "deepest", ...deepest, mark: deepestMark(layout, deepest.place, deepest.ways) },
      texts: [`deepest ${most}`, `${most}`],
    },
    {
      ...{ role: "least", ...least, mark: leastMark(layout, least.place, least.ways) },
      texts: [`least ${few}, sanded last`, `least ${few}`],
    },
  ];
  return endsSomewhere(profile) ? notes : notes.slice(0, 1);
}

const figureNote = (layout: PlanLayout, { way, half }: DrawnHalf, station: Station): Note => ({
  role: station.name === "" ? "station" : `station ${station.name}`,
  place: edgePlaceAt(layout, half, placeOf(half, station)),
  side: way,
  texts: [layout.words.figure(station.removal + layout.profile.rimOffset)],
  strong: false,
  inside: false,
  mark: [],
});

/** The landmarks' names along a half, and how far each is along the side. */
function landmarkNotes(layout: PlanLayout, { way, half }: DrawnHalf): readonly Note[] {
  const named = openStations(layout, { way, half }).filter(
    ({ name }) => name !== "" && name !== "tail",
  );
  return named.map((station): Note => {
    const { name, arcLength } = station;
    const far = layout.words.figure(arcLength);
    return {
      role: `landmark ${name}`,
      place: edgePlaceAt(layout, half, placeOf(half, station)),
      side: way,
      texts: [`${name}, ${far} along the side`, `${name}, ${far} along`, `${name} ${far}`],
      strong: false,
      inside: false,
      mark: [],
    };
  });
}

/** Places to write beyond the band, nearest first, a leader to those farther out; what matters most may stand inside. */
function noteCandidates(layout: PlanLayout, note: Note): LabelCandidate[] {
  const beyond = rows.flatMap((tier) => noteRow(layout, note, tier, 1));
  return note.inside
    ? [...beyond, ...rows.flatMap((tier) => noteRow(layout, note, tier, -1))]
    : beyond;
}

/** One row of them; `outward` −1 is inside the outline. */
function noteRow(
  layout: PlanLayout,
  { role, place, side, texts, strong }: Note,
  tier: number,
  outward: 1 | -1,
): LabelCandidate[] {
  const { size } = layout;
  const from = outward === 1 ? bandAt(layout, place) : within;
  const out = from + clear + tier * row(size);
  const [px, py] = pointOut(layout, place, side, outward * out);
  const leader: Point[] = [
    pointOut(layout, place, side, 0),
    pointOut(layout, place, side, outward * Math.max(from, out - 3)),
  ];
  return texts.flatMap((text, shorter) =>
    [0, -1, 1].map((slip): LabelCandidate => {
      const [width, tall] = [textWidth(text, size, strong), capHeight(size)];
      // The text's box touches the row, slid along the edge where its middle is taken.
      const slide = slip * Math.min(width / 2, 24) * Math.abs(place.outY);
      const drop = slip * tall * Math.abs(place.outX);
      const x = px + (outward * place.outX * width) / 2 + slide;
      const y = py - (outward * side * place.outY * tall) / 2 + tall / 2 + drop;
      return {
        text: textShape(role, text, [x, y], size, { strong }),
        strokes: [leader],
        leader: [],
        lane: null,
        cost: tier * 1.5 + shorter * 4 + Math.abs(slip) * 0.5 + (outward === 1 ? 0 : 1),
        shapes: () => [lineShape("ordinate", "thin", leader)],
      };
    }),
  );
}

const edgeSides: readonly EdgeSide[] = [1, -1];

/** A solid arrow into the edge where most comes off. */
const deepestMark = (
  layout: PlanLayout,
  place: EdgePlace,
  ways: readonly EdgeSide[],
): readonly Shape[] =>
  ways.map((side) => {
    const out = bandAt(layout, place);
    const [tx, ty] = pointOut(layout, place, side, 1);
    const [bx, by] = pointOut(layout, place, side, Math.max(9, out));
    const [ax, ay] = [place.outY * 4, side * place.outX * 4];
    return areaShape("deepest mark", "none", "ink", [
      [tx, ty],
      [bx + ax, by + ay],
      [bx - ax, by - ay],
    ]);
  });

/** A ring on the edge where least comes off. */
const leastMark = (
  layout: PlanLayout,
  place: EdgePlace,
  ways: readonly EdgeSide[],
): readonly Shape[] =>
  ways.map((side) =>
    circleShape("least mark", "thick", "paper", pointOut(layout, place, side, 0), 5),
  );
