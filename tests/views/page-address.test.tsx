import { act, renderHook } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  addressFault,
  reachOf,
  usePublished,
  useSharedBase,
} from "../../src/views/page-address.ts";

beforeEach(() => localStorage.clear());
afterEach(() => {
  vi.restoreAllMocks();
});

describe("an address reaches", () => {
  // Private networks: RFC 1918, 3927, 4193, 6762 and 8375.
  test.each([
    ["file:///home/me/dist/index.html", "device"],
    ["http://localhost:4173/", "device"],
    ["http://shop.localhost/", "device"],
    ["http://127.0.0.1/", "device"],
    ["http://[::1]:80/", "device"],
    ["http://bench/", "network"],
    ["http://bench.local/", "network"],
    ["http://10.1.2.3/", "network"],
    ["http://172.16.0.1/", "network"],
    ["http://172.32.0.1/", "anyone"],
    ["http://192.168.1.20:4173/", "network"],
    ["http://192.169.1.20/", "anyone"],
    ["http://169.254.9.9/", "network"],
    ["http://[fd00::1]/", "network"],
    ["http://[2001:db8::1]/", "anyone"],
    ["https://example.org/rimwright/", "anyone"],
  ])("%s: %s", (address, reach) => {
    expect(reachOf(address)).toBe(reach);
  });
});

test.each(["", "example.org", "ftp://example.org/", "http://192.168.0.2/"])(
  "“%s” is no address of a published copy, and why is said",
  (text) => expect(addressFault(text)?.length).toBeGreaterThan(10),
);

test("what is shared opens at the published copy once one is stated, at this page until then", () => {
  const base = renderHook(useSharedBase);
  const published = renderHook(usePublished);
  expect(base.result.current).toBe(window.location.href);
  act(() => published.result.current[1]("example.org"));
  expect(base.result.current).toBe(window.location.href);
  act(() => published.result.current[1]("https://example.org/rim/"));
  expect(base.result.current).toBe("https://example.org/rim/");
  expect(renderHook(usePublished).result.current[0]).toBe("https://example.org/rim/");
});

test("where the browser stores nothing it is held for this visit", () => {
  vi.spyOn(Storage.prototype, "setItem").mockImplementation(() => {
    throw new Error("none");
  });
  vi.spyOn(Storage.prototype, "getItem").mockImplementation(() => {
    throw new Error("none");
  });
  const { result } = renderHook(usePublished);
  act(() => result.current[1]("https://example.org/"));
  expect(result.current[0]).toBe("https://example.org/");
});
