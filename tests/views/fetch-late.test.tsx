import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { fetchLate } from "../../src/views/fetch-late.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A part that fails so many times before it comes. */
function asked(failures: number) {
  const load = vi.fn(() =>
    load.mock.calls.length > failures ? Promise.resolve("part") : Promise.reject(new Error("no")),
  );
  const [onPart, onFailure] = [vi.fn(), vi.fn()];
  const giveUp = fetchLate(load, { onPart, onFailure });
  return { load, onPart, onFailure, giveUp };
}

test("a part that comes is given once, and nothing is said to fail", async () => {
  const { load, onPart, onFailure } = asked(0);
  await vi.advanceTimersByTimeAsync(120_000);
  expect(onPart.mock.calls).toEqual([["part"]]);
  expect(load).toHaveBeenCalledTimes(1);
  expect(onFailure).not.toHaveBeenCalled();
});

test("one that does not come is asked for again after 1, 5, 20 and then every 60 seconds, each failure told", async () => {
  const { load, onPart, onFailure } = asked(6);
  const tries: number[] = [];
  for (const pause of [0, 1_000, 5_000, 20_000, 60_000, 60_000]) {
    await vi.advanceTimersByTimeAsync(pause);
    tries.push(load.mock.calls.length);
  }
  expect(tries).toEqual([1, 2, 3, 4, 5, 6]);
  expect(onFailure).toHaveBeenCalledTimes(6);
  await vi.advanceTimersByTimeAsync(59_999);
  expect(onPart).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1);
  expect(onPart).toHaveBeenCalledTimes(1);
});

test("a network that comes back ends the pause, and that pause alone", async () => {
  const { load, onPart } = asked(1);
  await vi.advanceTimersByTimeAsync(0);
  dispatchEvent(new Event("online"));
  await vi.advanceTimersByTimeAsync(0);
  expect(onPart).toHaveBeenCalledTimes(1);
  dispatchEvent(new Event("online"));
  await vi.advanceTimersByTimeAsync(120_000);
  expect(load).toHaveBeenCalledTimes(2);
});

test("what is given up is asked for no more, and not given when it comes after all", async () => {
  const failing = asked(9);
  await vi.advanceTimersByTimeAsync(0);
  failing.giveUp();
  dispatchEvent(new Event("online"));
  await vi.advanceTimersByTimeAsync(120_000);
  expect(failing.load).toHaveBeenCalledTimes(1);
  const coming = asked(0);
  coming.giveUp();
  await vi.advanceTimersByTimeAsync(0);
  expect(coming.onPart).not.toHaveBeenCalled();
});
