import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { atRest } from "../../../src/store/shelf/at-rest.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

it("acts once, when edits have rested", () => {
  const act = vi.fn();
  const waiting = atRest(act, 200, 600);
  waiting.edited();
  vi.advanceTimersByTime(150);
  waiting.edited();
  vi.advanceTimersByTime(199);
  expect(act).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(act).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(10_000);
  expect(act).toHaveBeenCalledOnce();
});

it("lets no edit wait longer than the longest, however fast they follow", () => {
  const at: number[] = [];
  const start = performance.now();
  const waiting = atRest(() => at.push(performance.now() - start), 200, 600);
  for (let i = 0; i < 15; i++) {
    waiting.edited();
    vi.advanceTimersByTime(100);
  }
  expect(at).toEqual([600, 1200]);
});

it("does not act when it is stopped, and says whether it waited", () => {
  const act = vi.fn();
  const waiting = atRest(act, 200, 600);
  expect(waiting.stop()).toBe(false);
  waiting.edited();
  expect(waiting.stop()).toBe(true);
  vi.advanceTimersByTime(10_000);
  expect(act).not.toHaveBeenCalled();
});
