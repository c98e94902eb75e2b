import { describe, expect, test } from "vitest";
import { emptyAsBuilt } from "../../../src/instrument/as-built/as-built.ts";
import { firstComparison } from "../../../src/store/document/comparison.ts";
import { fileLimits } from "../../../src/store/files/shelf-file.ts";
import { readImport } from "../../../src/store/shelf/import.ts";
import { importPlanOf, openShelf } from "../../support/tab.ts";

const file = (json: unknown): Blob => new Blob([JSON.stringify(json)]);

async function reasonOf(from: Blob | string): Promise<string> {
  const { shelf } = await openShelf();
  const reading = await readImport(shelf, typeof from === "string" ? new Blob([from]) : from);
  return reading.ok ? "" : reading.reason;
}

describe("what cannot be taken in", () => {
  test("is told place by place, and the good come in", async () => {
    const { shelf } = await openShelf();
    const good = { instrument: { name: "Good" } };
    const instruments = [
      { instrument: { body: { length: -3 }, bridge: { thickness: "x" } } },
      good,
      7,
      { instrument: { version: 3 } },
      { instrument: { neck: { scale: "long" } }, lastGood: {} },
      { instrument: {}, lastGood: { dome: { flatLength: 480 } } },
    ];
    const plan = await importPlanOf(
      shelf,
      file({ format: "rimwright-shelf", version: 1, instruments }),
    );
    expect(plan.fresh.map(({ instrument }) => instrument.name)).toEqual(["Good"]);
    expect(plan.bad.map(({ path }) => path)).toEqual([
      "instruments[0].instrument.body.length",
      "instruments[0].instrument.bridge.thickness",
      "instruments[2].instrument",
      "instruments[3].instrument.version",
      "instruments[4].instrument.neck.scale",
      "instruments[5].lastGood.dome.flatLength",
    ]);
    expect(plan.bad.every(({ reason }) => reason.length > 10)).toBe(true);
  });

  test("is one part alone where the measures do without it: it is named, and the rest comes in", async () => {
    const { shelf } = await openShelf();
    const instruments = [
      { instrument: { tolerances: { "dome.dishRadius": 99999999999, "neck.scale": 0.5 } } },
      { instrument: {}, asBuilt: { readings: { shim: { value: 1e6 } }, notes: { level: "kept" } } },
      { instrument: {}, comparison: { ...firstComparison, moved: "far" } },
      { instrument: {}, comparison: { variants: [7, { id: "a", name: "A", changes: {} }] } },
      { instrument: {}, asBuilt: { version: 99 } },
      {
        instrument: { body: { length: 470 }, tolerances: { "body.length": "wide" } },
        lastGood: { name: "Good once", tolerances: { "no.such": 1 } },
      },
    ];
    const { fresh, bad } = await importPlanOf(
      shelf,
      file({ format: "rimwright-shelf", version: 1, instruments }),
    );
    expect(bad.map(({ path }) => path)).toEqual([
      "instruments[0].instrument.tolerances.dome.dishRadius",
      "instruments[1].asBuilt.readings.shim",
      "instruments[1].asBuilt.readings.shim.value",
      "instruments[2].comparison.moved",
      "instruments[3].comparison.variants.0",
      "instruments[4].asBuilt.asBuilt",
      "instruments[5].instrument.tolerances.body.length",
      "instruments[5].lastGood.tolerances.no.such",
    ]);
    expect(bad.every(({ reason }) => reason.length > 10)).toBe(true);
    expect(fresh[0]?.instrument.tolerances).toEqual({ "neck.scale": 0.5 });
    expect(fresh[1]?.asBuilt.notes).toEqual({ level: "kept" });
    expect(fresh[2]?.comparison).toEqual(firstComparison);
    expect(fresh[3]?.comparison.variants).toEqual([{ id: "a", name: "A", changes: {} }]);
    expect(fresh[4]?.asBuilt).toEqual(emptyAsBuilt);
    expect(fresh[5]?.instrument.body.length).toBe(470);
    expect(fresh[5]?.lastGood.name).toBe("Good once");
  });

  test("broken JSON in one instrument spoils that one only", async () => {
    const { shelf } = await openShelf();
    const text =
      '{"format":"rimwright-shelf","version":1,"instruments":[{"instrument":{}},{x},{"instrument":{"name":"B"}}]}';
    const plan = await importPlanOf(shelf, new Blob([text]));
    expect(plan.fresh).toHaveLength(2);
    expect(plan.bad).toEqual([{ path: "instruments[1]", reason: "This is no JSON text." }]);
  });

  test.each([
    ["no JSON", "{", /no JSON/],
    ["nothing", "", /no JSON/],
    ["a list", "[]", /neither/],
    ["a newer file", '{"format":"rimwright-shelf","version":2,"instruments":[]}', /newer/],
    ["a file of no version", '{"format":"rimwright-shelf","instruments":[]}', /which version/],
    ["no list", '{"format":"rimwright-shelf","version":1}', /no list/],
    [
      "two lists",
      '{"format":"rimwright-shelf","version":1,"instruments":[],"instruments":[1]}',
      /no list/,
    ],
    [
      "cut short",
      '{"format":"rimwright-shelf","version":1,"instruments":[{"instrument":{}}',
      /cut/,
    ],
    ["nested too deep", "[".repeat(1000) + "]".repeat(1000), /no JSON/],
    [
      "too many",
      `{"format":"rimwright-shelf","version":1,"instruments":[${"0,".repeat(20_000)}0]}`,
      /more than 20000/,
    ],
    ["too much for one", `{"name":"${"x".repeat(1_500_001)}"}`, /too much/],
    ["too large", new Blob([new Uint8Array(fileLimits.bytes + 1)]), /larger than 10 MB/],
    ["Latin-1", new Blob([Buffer.from('{"name":"Gitarre für Jürgen"}', "latin1")]), /UTF-8/],
    ["a picture", new Blob([Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0xff, 0xd8)]), /UTF-8/],
  ])("is refused whole when it is %s", async (_, broken, reason) => {
    expect(await reasonOf(broken)).toMatch(reason);
  });

  test.each([
    ["UTF-8 with a mark", "utf8"],
    ["UTF-16", "utf16le"],
  ] as const)("%s is read", async (_, encoding) => {
    const { shelf } = await openShelf();
    const from = new Blob([Buffer.from('\uFEFF{"name":"Für Zoë, 二号"}', encoding)]);
    expect((await importPlanOf(shelf, from)).fresh[0]?.instrument.name).toBe("Für Zoë, 二号");
  });
});
