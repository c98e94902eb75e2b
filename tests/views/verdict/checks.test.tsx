import { screen } from "@testing-library/react";
import { expect, test } from "vitest";
import { typeField } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { Checks } from "../../../src/views/verdict/checks.tsx";
import { showView } from "../show-view.tsx";

const heading = (): string | null => screen.getByRole("heading", { level: 2 }).textContent;

test("nothing stands out on the instrument of a first visit", () => {
  showView(<Checks />);
  expect(heading()).toBe("Checks: nothing stands out");
});

test("what is close to the edge of its window is named, though there is nothing to fix", () => {
  showView(<Checks />, { state: typeField(firstState, "windows.saddleExposure.0", "3.3") });
  expect(heading()).toBe("Checks: nothing to fix; close to the edge of its window: saddle exposed");
});

test("what is to be fixed is counted", () => {
  showView(<Checks />, { state: typeField(firstState, "windows.saddleExposure.1", "3.2") });
  expect(heading()).toBe("Checks: one thing to fix");
});
