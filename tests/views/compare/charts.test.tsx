import { screen, waitFor } from "@testing-library/react";
import { afterEach, describe, expect, test, vi } from "vitest";
import { MapPanel } from "../../../src/views/compare/map-panel.tsx";
import { SensitivityPanel } from "../../../src/views/compare/sensitivity-panel.tsx";
import { SweepPanel } from "../../../src/views/compare/sweep-panel.tsx";
import { UncertaintyPanel } from "../../../src/views/compare/uncertainty-panel.tsx";
import { entry, newUser, runJobsHere, showView, typeOver } from "../show-view.tsx";

afterEach(() => {
  vi.restoreAllMocks();
});

describe("the sweep", () => {
  test("says where the base meets its window, and its value is stepped by keyboard", async () => {
    const user = newUser();
    const { store } = showView(<SweepPanel />);
    await user.selectOptions(screen.getByLabelText("Outcome"), "Saddle exposed");
    const told = screen.getByRole("list", { name: "Where each meets its window" });
    expect(told).toHaveTextContent(/comes into its window at [\d.]+ mm/);
    const before = store.getState().instrument;
    screen.getByRole("slider").focus();
    await user.keyboard("{ArrowRight}");
    expect(store.getState().instrument).not.toBe(before);
    expect(store.getState().instrument.target.kind).toBe("shim");
  });

  test("another input is swept, closer and wider", async () => {
    const user = newUser();
    const { store } = showView(<SweepPanel />);
    await user.selectOptions(screen.getByLabelText("Input"), "Bridge thickness");
    expect(store.getState().comparison.sweep.path).toBe("bridge.thickness");
    const range = (): number => {
      const slider = screen.getByRole("slider");
      return Number(slider.ariaValueMax) - Number(slider.ariaValueMin);
    };
    const first = range();
    await user.click(screen.getByRole("button", { name: "Closer" }));
    expect(range()).toBeLessThan(first);
    await user.click(screen.getByRole("button", { name: "Wider" }));
    expect(range()).toBe(first);
  });
});

describe("the map", () => {
  test("asks the worker for the two inputs shown, and again for others", async () => {
    const user = newUser();
    const asked = runJobsHere();
    showView(<MapPanel />);
    expect(await screen.findByRole("button", { name: "Save the map as SVG" })).toBeInTheDocument();
    expect(asked).toHaveLength(1);
    await user.selectOptions(screen.getByLabelText("Along"), "Fingerboard thickness");
    await waitFor(() => expect(asked).toHaveLength(2));
    const last = asked.at(-1);
    if (last?.kind !== "map") throw new Error("No map was asked for.");
    expect(last.asked.across.path).toBe("neck.fingerboardThickness");
    expect(await screen.findByRole("button", { name: "Save the map as SVG" })).toBeInTheDocument();
  });
});

describe("how sure it is", () => {
  test("draws so many with the seed shown, and says how many meet every window", async () => {
    const user = newUser();
    const asked = runJobsHere();
    showView(<UncertaintyPanel />);
    expect(await screen.findByText(/meet every window at once/, undefined, slow)).toHaveTextContent(
      /^[\d.]+ %/,
    );
    await typeOver(user, "Seed", "7");
    await waitFor(() => expect(asked).toHaveLength(2));
    const last = asked.at(-1);
    expect(last?.kind === "uncertainty" && last.asked.seed).toBe(7);
    await typeOver(user, "Seed", "many");
    expect(entry("Seed")).toBeInvalid();
    expect(screen.getByText(/A seed is a whole number/)).toBeInTheDocument();
  });

  test("is stopped, and drawn again", async () => {
    const user = newUser();
    runJobsHere();
    showView(<UncertaintyPanel />);
    await user.selectOptions(screen.getByLabelText("Draws"), "5 000 000");
    await screen.findByText(/Drawing 5 000 000/);
    await waitFor(async () => {
      await user.click(screen.getByRole("button", { name: "Stop" }));
      expect(screen.getByText(/^Stopped at [\d ]+ of 5 000 000/)).toBeInTheDocument();
    }, slow);
    expect(screen.getByRole("button", { name: "Draw again" })).toBeInTheDocument();
  });
});

const slow = { timeout: 30_000 };

test("what matters is told for another outcome, the largest first", async () => {
  const user = newUser();
  const { store } = showView(<SensitivityPanel />);
  await user.selectOptions(screen.getByLabelText("Outcome"), "Pitch");
  expect(store.getState().comparison.moved).toBe("pitch");
  const words = screen.getAllByRole("listitem");
  expect(words.length).toBeGreaterThan(2);
  expect(words[0]).toHaveTextContent(/°/);
});
