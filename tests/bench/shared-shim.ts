import { presets } from "../../src/instrument/presets.ts";
import {
  bestContact,
  sharedShimOf,
  usualLeastContact,
} from "../../src/profile/sticks/shared-shim.ts";
import { randomInstruments } from "../support/random-instrument.ts";
import { duration, report } from "./report.ts";
import { timed } from "./timed.ts";

/** How one shim for many scales with how many. */
export function benchSharedShim(): void {
  const many = [...presets, ...randomInstruments(194, 11)];
  sharedShimOf(many, null);
  const rows = [1, 10, 50, 200].map((count) => {
    const members = many.slice(0, count);
    return [
      `${count} ${count === 1 ? "instrument" : "instruments"}`,
      duration(timed(() => sharedShimOf(members, null))),
      duration(timed(() => bestContact(members, usualLeastContact))),
    ];
  });
  report(
    "One shim for the shop",
    [["", "own contacts", "best contact"], ...rows],
    "Every member's range, what they share, and the middle of it; for the best contact, at forty contacts and more.",
  );
}
