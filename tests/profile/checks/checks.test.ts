import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isFieldPath } from "../../../src/instrument/fields.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { parseLength, type Units } from "../../../src/instrument/length.ts";
import type { Quantity } from "../../../src/instrument/phrase.ts";
import { sayPhrase, sayQuantity } from "../../../src/instrument/phrase.ts";
import { readInstrument } from "../../../src/instrument/read-instrument.ts";
import type { Check } from "../../../src/profile/outcome.ts";
import { solved, withShim } from "../../support/solved.ts";

/** The default instrument on a given shim, which raises no check; each case changes a few fields of it. */
const shimmed = { kind: "shim", value: 8.4 };

function read(json: object): Instrument {
  const reading = readInstrument({ target: shimmed, ...json });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

function raised(instrument: Instrument, id: string): Check | undefined {
  const found = solved(instrument).checks.filter((check) => check.id === id);
  expect(found.length).toBeLessThanOrEqual(1);
  return found[0];
}

/** The instrument with some fields of one group changed. */
const change = <Group extends "body" | "dome" | "shim" | "neck" | "bridge">(
  instrument: Instrument,
  group: Group,
  fields: Partial<Instrument[Group]>,
): Instrument => ({ ...instrument, [group]: { ...instrument[group], ...fields } });

/** What a number in the fix is for: the instrument with it applied. */
type Use = (instrument: Instrument, value: number) => Instrument;

interface Case {
  readonly id: string;
  readonly raises: object;
  /** For each number of the fix, in order, every way the sentence says to use it. */
  readonly uses: readonly (readonly Use[])[];
}

const flatOf: Use = (instrument, flatLength) => change(instrument, "dome", { flatLength });
const flatShorter: Use = (instrument, by) =>
  change(instrument, "dome", { flatLength: instrument.dome.flatLength - by });
const blendShorter: Use = (instrument, by) =>
  change(instrument, "dome", { blendLength: instrument.dome.blendLength - by });
const thickerBoard: Use = (instrument, by) =>
  change(instrument, "neck", { fingerboardThickness: instrument.neck.fingerboardThickness + by });
const thinnerBridge: Use = (instrument, by) =>
  change(instrument, "bridge", { thickness: instrument.bridge.thickness - by });
const tailDepth: Use = (instrument, depthTail) => change(instrument, "body", { depthTail });
const neckDepth: Use = (instrument, depthNeck) => change(instrument, "body", { depthNeck });

const cases: readonly Case[] = [
  {
    id: "saddle-buried",
    raises: { bridge: { thickness: 13.3 } },
    uses: [[thickerBoard, thinnerBridge]],
  },
  {
    id: "fingerboard-past-flat",
    raises: { neck: { fingerboardOverhang: 23.37 } },
    uses: [[flatOf]],
  },
  {
    id: "last-fret-before-join",
    raises: { neck: { lastFret: 12 } },
    uses: [[(instrument, lastFret) => change(instrument, "neck", { lastFret })]],
  },
  {
    id: "soundhole-under-fingerboard",
    raises: { body: { soundholeAt: 357.77 } },
    uses: [[(instrument, soundholeAt) => change(instrument, "body", { soundholeAt })]],
  },
  {
    id: "break-in-soundhole",
    raises: { dome: { flatLength: 131.13 } },
    uses: [[flatOf]],
  },
  {
    id: "soundhole-on-flat",
    raises: { dome: { flatLength: 221.13 } },
    uses: [[flatOf]],
  },
  {
    id: "flat-overrun",
    raises: { target: { kind: "shim", value: 6 } },
    uses: [[(instrument, shim) => withShim(instrument, shim)]],
  },
  {
    id: "bridge-in-blend",
    raises: { dome: { blendLength: 183.33 } },
    uses: [[blendShorter], [flatShorter]],
  },
  {
    id: "contact-past-block",
    raises: { shim: { contact: 25, tailBlockDepth: 19.96 } },
    uses: [[(instrument, contact) => change(instrument, "shim", { contact })]],
  },
  {
    id: "dish-too-small",
    raises: { dome: { dishDiameter: 400 } },
    uses: [[(instrument, dishDiameter) => change(instrument, "dome", { dishDiameter })]],
  },
  { id: "depth-tail", raises: { body: { depthTail: 60 } }, uses: [[tailDepth], [tailDepth]] },
  { id: "depth-tail", raises: { body: { depthTail: 150 } }, uses: [[tailDepth], [tailDepth]] },
  { id: "depth-neck", raises: { body: { depthNeck: 40 } }, uses: [[neckDepth], [neckDepth]] },
  { id: "depth-neck", raises: { body: { depthNeck: 130 } }, uses: [[neckDepth], [neckDepth]] },
];

const isQuantity = (part: string | Quantity): part is Quantity => typeof part !== "string";

function numbersToFix({ id, raises }: Case): readonly Quantity[] {
  return (raised(read(raises), id)?.fix ?? []).filter(isQuantity);
}

/** The number as the reader reads it off the screen and types it back, mm. */
function readOff(quantity: Quantity, units: Units): number {
  if (quantity.as === "count") return Number(sayQuantity(quantity, units));
  const parsed = parseLength(sayQuantity(quantity, units), "mm");
  if (!parsed.ok) throw new Error(parsed.why);
  return parsed.mm;
}

describe.each(cases)("$id, $raises", (given) => {
  const { id, raises, uses } = given;

  it("is raised, for a field, in two sentences", () => {
    const check = raised(read(raises), id);
    expect(check).toBeDefined();
    expect(isFieldPath(check?.field ?? "")).toBe(true);
    for (const phrase of [check?.means ?? [], check?.fix ?? []])
      expect(sayPhrase(phrase, "mm")).toMatch(/^[A-Z].*[.]$/);
  });

  it("is fixed by each number it names, exactly", () => {
    const quantities = numbersToFix(given);
    expect(quantities).toHaveLength(uses.length);
    quantities.forEach(({ value }, i) => {
      for (const use of uses[i] ?? []) expect(raised(use(read(raises), value), id)).toBeUndefined();
    });
  });

  it.each(["mm", "in", "in-fraction"] as const)(
    "is fixed by the number as shown in %s and typed back",
    (units) => {
      numbersToFix(given).forEach((quantity, i) => {
        for (const use of uses[i] ?? [])
          expect(raised(use(read(raises), readOff(quantity, units)), id)).toBeUndefined();
      });
    },
  );

  it("asks for no more than it must: a hair toward where it was, and it is raised again", () => {
    numbersToFix(given).forEach(({ value, as }, i) => {
      for (const use of uses[i] ?? []) {
        const hair = as === "count" ? 1 : 0.001;
        const sides = [use(read(raises), value - hair), use(read(raises), value + hair)];
        expect(sides.filter((instrument) => raised(instrument, id) !== undefined)).toHaveLength(1);
      }
    });
  });
});

/** Checks whose fix is a direction or an act: just on the bad side, and just on the good. */
const sides: readonly (readonly [id: string, bad: object, good: object])[] = [
  // Fret plane 7.4 over the flat, bridge 8.6 thick: the gap is the clearance and 1.2.
  [
    "straightedge-cannot-lie",
    { target: { kind: "bridgeClearance", value: -1.2001 } },
    { target: { kind: "bridgeClearance", value: -1.1999 } },
  ],
  [
    "deeper-at-neck",
    { body: { depthTail: 100, depthNeck: 100.001 } },
    { body: { depthTail: 100, depthNeck: 100 } },
  ],
  [
    "pitch-unusual",
    { target: { kind: "pitch", value: 0.9999 } },
    { target: { kind: "pitch", value: 1 } },
  ],
  [
    "pitch-unusual",
    { target: { kind: "pitch", value: 2.0001 } },
    { target: { kind: "pitch", value: 2 } },
  ],
  [
    "saddle-buried",
    { strings: { count: 1 }, target: { kind: "saddleExposure", value: -0.0001 } },
    { strings: { count: 1 }, target: { kind: "saddleExposure", value: 0 } },
  ],
  [
    "last-fret-before-join",
    { neck: { joinFret: 14, lastFret: 13 } },
    { neck: { joinFret: 14, lastFret: 14 } },
  ],
  ["contact-past-block", { shim: { contact: 20.001 } }, { shim: { contact: 20 } }],
];

it.each(sides)("%s: %j raises it, %j does not", (id, bad, good) => {
  expect(raised(read(bad), id)).toBeDefined();
  expect(raised(read(good), id)).toBeUndefined();
});

it("the default instrument, and every shim between the clean one and its like, raises no check of the section", () => {
  expect(solved(read({})).checks).toEqual([]);
});

it("no dome raises no question of pitch or of the dish's size", () => {
  const bare = { dome: { dishRadius: null, braceRadius: null, dishDiameter: 10 } };
  const ids = solved(read({ ...bare, target: { kind: "pitch", value: 0.3 } })).checks.map(
    ({ id }) => id,
  );
  expect(ids).not.toContain("pitch-unusual");
  expect(ids).not.toContain("dish-too-small");
});

describe("a direction named as a fix", () => {
  const fixText = (json: object, id: string): string =>
    sayPhrase(raised(read(json), id)?.fix ?? [], "mm");

  it("is the right one for the pitch", () => {
    expect(fixText({ target: { kind: "pitch", value: 0.5 } }, "pitch-unusual")).toMatch(/thicker/);
    expect(fixText({ target: { kind: "pitch", value: 2.5 } }, "pitch-unusual")).toMatch(/thinner/);
  });

  it("lets a straightedge lie again: the shim is thicker", () => {
    const low = read({ target: { kind: "bridgeClearance", value: -1.5 } });
    expect(raised(withShim(low, solved(low).shim + 2), "straightedge-cannot-lie")).toBeUndefined();
  });

  it("exchanges depths that were exchanged", () => {
    const body = { depthTail: 86, depthNeck: 104 };
    expect(raised(read({ body }), "deeper-at-neck")).toBeDefined();
    const right = { depthTail: 104, depthNeck: 86 };
    expect(raised(read({ body: right }), "deeper-at-neck")).toBeUndefined();
  });
});

describe("what cannot be done is not offered", () => {
  const fix = (json: object, id: string): readonly Quantity[] =>
    (raised(read(json), id)?.fix ?? []).filter(isQuantity);

  it("a blend or a flat shorter than nothing", () => {
    const short = { dome: { flatLength: 100, blendLength: 250 } };
    expect(fix(short, "bridge-in-blend").length).toBe(2);
    // The saddle stands 20 mm from the break: a blend of 5 mm cannot make room for the bridge.
    const near = { dome: { flatLength: 270.8, blendLength: 5 } };
    for (const { value } of fix(near, "bridge-in-blend")) {
      expect(value).toBeLessThanOrEqual(270.8);
      expect(raised(flatShorter(read(near), value), "bridge-in-blend")).toBeUndefined();
    }
    // The saddle 7.7 mm from the break: neither 8 mm of blend nor 10 mm of flat can be given up enough.
    const neither = {
      dome: { flatLength: 10, blendLength: 8 },
      neck: { scale: 100, joinFret: 30, lastFret: 36 },
      bridge: { compensation: 0 },
    };
    const check = raised(read(neither), "bridge-in-blend");
    expect(check).toBeDefined();
    expect(sayPhrase(check?.fix ?? [], "mm")).not.toMatch(/blend|flat/);
  });

  it("a clean shim there is none of", () => {
    const shallow = { body: { depthTail: 6, depthNeck: 6 }, target: { kind: "shim", value: 5 } };
    expect(fix(shallow, "flat-overrun")).toEqual([]);
  });

  it("a break, or a soundhole, beyond the ends of the body", () => {
    const hole = { body: { soundholeAt: 480, soundholeDiameter: 60 }, dome: { flatLength: 10 } };
    for (const { value } of fix(hole, "break-in-soundhole"))
      expect(value).toBeGreaterThanOrEqual(0);
    expect(raised(read(hole), "break-in-soundhole")).toBeDefined();
    const stub = {
      neck: { scale: 400, joinFret: 5, lastFret: 36 },
      body: { soundholeDiameter: 500 },
    };
    for (const { value } of fix(stub, "soundhole-under-fingerboard"))
      expect(value).toBeGreaterThanOrEqual(0);
  });
});

it("checks come worst first", () => {
  const many = read({
    body: { depthTail: 60, depthNeck: 70, soundholeAt: 400 },
    dome: { dishDiameter: 300, blendLength: 200 },
    bridge: { thickness: 30 },
    shim: { contact: 40 },
    neck: { fingerboardOverhang: 40, lastFret: 24 },
    target: { kind: "shim", value: 2 },
  });
  const rank = { stop: 0, warn: 1, note: 2 } as const;
  const ranks = solved(many).checks.map(({ grade }) => rank[grade]);
  expect(new Set(ranks)).toEqual(new Set([0, 1, 2]));
  expect(ranks).toEqual([...ranks].sort());
});

it("every check there is has its case above", () => {
  const source = ["checks", "depth-checks"]
    .map((name) =>
      readFileSync(new URL(`../../../src/profile/checks/${name}.ts`, import.meta.url), "utf8"),
    )
    .join("");
  const literal = [...source.matchAll(/id: "([a-z-]+)"/g)].map(([, id]) => id);
  const proven = new Set([...cases.map(({ id }) => id), ...sides.map(([id]) => id)]);
  expect(proven).toEqual(new Set([...literal, "depth-tail", "depth-neck"]));
});
