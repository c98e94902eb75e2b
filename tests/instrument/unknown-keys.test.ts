import { expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { unknownKeys } from "../../src/instrument/unknown-keys.ts";

it("finds no unknown name in what the page itself writes, a tracing included", () => {
  const { body } = defaultInstrument;
  expect(unknownKeys({ ...defaultInstrument, body: { ...body, tracing: [] } })).toEqual([]);
});

it("names what is left out, with the known name it is most like", () => {
  const misspelt = { SHIM: {}, colour: 1, x: 1, body: { backRadiuss: 3 }, neck: { scael: 640 } };
  expect(unknownKeys(misspelt)).toEqual([
    { path: "SHIM", nearest: "shim" },
    { path: "colour", nearest: null },
    { path: "x", nearest: null },
    { path: "body.backRadiuss", nearest: "body.backRadius" },
    { path: "neck.scael", nearest: "neck.scale" },
  ]);
});

it("looks at no more than a hundred names, and at nothing but an object", () => {
  const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`name${i}`, i]));
  expect(unknownKeys(many)).toHaveLength(100);
  expect([null, [], "text", 7].flatMap(unknownKeys)).toEqual([]);
});

it("is why a file that states nothing known is refused", () => {
  const messageOf = (json: unknown) => {
    const result = readInstrument(json);
    return result.ok ? "" : result.problems[0]?.message;
  };
  expect(messageOf({ compilerOptions: {} })).toBe("This states nothing an instrument has.");
  expect(messageOf({ SHIM: {} })).toBe(
    "This states nothing an instrument has. For the text “SHIM” write shim.",
  );
  expect(messageOf({})).toBe("");
});
