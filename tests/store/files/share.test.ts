import { deflateRawSync } from "node:zlib";
import { expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { withVersion } from "../../../src/instrument/file-version.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { openAddress, readShareText } from "../../../src/store/files/share.ts";
import { sharedIn } from "../../../src/store/files/shared-address.ts";

const here = "https://rimwright.example/tool/#/sheet";

// node:zlib and Buffer stand outside the browser's streams and atob that the page uses.
const packed = (json: string): string => `1${deflateRawSync(json).toString("base64url")}`;

async function reasonFor(text: string): Promise<string> {
  const read = await readShareText(text);
  if (read.ok) throw new Error("taken in");
  return read.problems.map(({ message }) => message).join(" ");
}

test.each(presets)("an address brings $name back whole", async (instrument) => {
  const address = await openAddress(instrument, here);
  const text = sharedIn(new URL(address).hash);
  expect(address.startsWith("https://rimwright.example/tool/#/open/1")).toBe(true);
  expect(await readShareText(text ?? "")).toEqual({ ok: true, instrument });
  // A code a camera reads holds no more than this: version 31 of ISO/IEC 18004 at level L, 1840 bytes.
  expect(address.length).toBeLessThan(1840);
});

test.each(presets)(
  "strung with twelve over a fan and a slant, settling, an address brings $name back whole, in a code that reads",
  async (preset) => {
    const instrument = withVersion({
      ...preset,
      neck: { ...preset.neck, fan: 20.5, fanFret: 8 },
      bridge: { ...preset.bridge, slant: 3.25 },
      strings: { ...preset.strings, count: 12, pairGap: 2.4, settling: 0.35 },
    });
    const address = await openAddress(instrument, here);
    expect(await readShareText(sharedIn(new URL(address).hash) ?? "")).toEqual({
      ok: true,
      instrument,
    });
    expect(address.length).toBeLessThan(1840);
  },
);

test("an address made elsewhere by the same rules is read", async () => {
  const read = await readShareText(packed('{"name":"By hand","body":{"depthTail":105}}'));
  expect(read.ok && read.instrument).toEqual({
    ...defaultInstrument,
    name: "By hand",
    body: { ...defaultInstrument.body, depthTail: 105 },
    // What an address does not state is as it was when the form was made.
    windows: { ...defaultInstrument.windows, bridgeClearance: [0.4, 1.6] },
  });
});

test("hostile and damaged addresses are refused, and say why", async () => {
  const damaged = "The address is damaged: no instrument can be read from it.";
  expect(await reasonFor("")).toMatch(/newer Rimwright, or is damaged/);
  expect(await reasonFor("2abc")).toMatch(/newer Rimwright, or is damaged/);
  expect(await reasonFor("1***")).toBe(damaged);
  expect(await reasonFor("1")).toBe(damaged);
  expect(await reasonFor(packed("{").slice(0, -2))).toBe(damaged);
  expect(await reasonFor(packed("not json"))).toBe(damaged);
  expect(await reasonFor(`1${"A".repeat(20_000)}`)).toMatch(/too long/);
  // 10 MB of spaces, small when packed: unfolding stops at the limit.
  const bomb = packed(`${" ".repeat(10_000_000)}{}`);
  expect(bomb.length).toBeLessThan(20_000);
  expect(await reasonFor(bomb)).toBe(damaged);
  for (const json of ["[]", "null", "7", '"text"', '{"body":7}', '{"body":{"length":"long"}}'])
    expect(await reasonFor(packed(json)), json).not.toBe("");
  expect(await reasonFor(packed('{"body":{"length":1e308}}'))).not.toBe("");
  expect(await reasonFor(packed(`{"name":"${"x".repeat(5000)}"}`))).not.toBe("");
});

test("a payload cannot reach a prototype", async () => {
  const evil =
    '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"body":{"__proto__":{"polluted":1}}}';
  await readShareText(packed(evil));
  expect(Object.hasOwn(Object.prototype, "polluted")).toBe(false);
  expect("polluted" in {}).toBe(false);
});

test("an address of an instrument without a plan says why there is none", async () => {
  expect(await reasonFor(packed('{"dome":{"flatLength":480}}'))).toMatch(
    /^The address holds an instrument that has no plan\. \S/,
  );
});
