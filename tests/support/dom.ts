import "@testing-library/jest-dom/vitest";
import { cleanup } from "@testing-library/react";
import { afterAll, afterEach, vi } from "vitest";

afterEach(cleanup);

// One browser serves many files: each leaves it as it found it.
afterAll(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  // What user-event and `stubPaper` put there; jsdom has neither of its own.
  Reflect.deleteProperty(navigator, "clipboard");
  Reflect.deleteProperty(document, "adoptedStyleSheets");
  localStorage.clear();
  sessionStorage.clear();
  history.replaceState(null, "", "/");
});
