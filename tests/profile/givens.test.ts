import { expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { contactOf } from "../../src/profile/givens.ts";
import { solved } from "../support/solved.ts";

const withShimOf = (contact: number, tailBlockDepth: number) => ({
  ...defaultInstrument,
  target: { kind: "shim", value: 8 } as const,
  shim: { contact, tailBlockDepth },
});

it("a shim that reaches past the tail block is worked out on the block's edge", () => {
  const past = solved(withShimOf(40, 18));
  const onEdge = solved(withShimOf(18, 18));
  for (const key of ["pitch", "tailDrop", "saddleExposure", "maxRemoval"] as const)
    expect(past[key], key).toBe(onEdge[key]);
  expect(past.pitch).not.toBe(solved(withShimOf(40, 40)).pitch);
  expect(past.checks.map(({ id }) => id)).toContain("contact-past-block");
  expect(onEdge.checks.map(({ id }) => id)).not.toContain("contact-past-block");
});

it("a shim within the tail block bears on its own edge", () => {
  expect(contactOf(withShimOf(12, 18))).toBe(12);
  expect(solved(withShimOf(12, 18)).pitch).not.toBe(solved(withShimOf(18, 18)).pitch);
});
