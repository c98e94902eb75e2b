import { expect, it } from "vitest";
import { domeZ } from "../../src/geometry/dome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { randomInstruments } from "../support/random-instrument.ts";

/** Among the guitars drawn from it are some with two nearly equal extremes, of which samples alone choose the wrong one. */
const seed = 3;
const instruments = 3000;

/*
 * Stations every 2 mm of edge are the walk: a place that lies higher or lower than the extreme the
 * profile states would be seen there, to the little a curve can rise within a millimetre.
 */
it("states the least removal, its place and the widest side as a walk along the rim finds them", {
  timeout: 120_000,
}, () => {
  let raised = 0;
  for (const instrument of randomInstruments(instruments, seed)) {
    const result = profileOf(instrument, { stationEvery: 2 });
    if (!result.ok) throw new Error(JSON.stringify(result.refusal));
    const { stations, rimOffset, leastRemovalX, stockWidth, back } = result.profile;
    const [first, neckEnd] = [stations[0], stations.at(-1)];
    if (first === undefined || neckEnd === undefined) throw new Error("no stations");
    let [least, widest] = [first, first];
    for (const station of stations) {
      if (station.removal < least.removal) least = station;
      if (station.removal + station.sideDepth > widest.removal + widest.sideDepth) widest = station;
    }
    const middle = neckEnd.removal + domeZ(back, instrument.body.length, 0);
    const walkedOffset = -least.removal;
    const walkedWidth = Math.max(middle, widest.removal + widest.sideDepth);
    expect(stockWidth - rimOffset).toBeGreaterThanOrEqual(walkedWidth - 1e-9);
    expect(stockWidth - rimOffset).toBeLessThan(walkedWidth + 1e-3);
    if (walkedOffset < 1e-6) continue;
    raised++;
    expect(rimOffset).toBeGreaterThanOrEqual(walkedOffset - 1e-9);
    expect(rimOffset).toBeLessThan(walkedOffset + 1e-3);
    expect(Math.abs(leastRemovalX - least.x)).toBeLessThan(4);
  }
  expect(raised).toBeGreaterThan(instruments / 10);
});
