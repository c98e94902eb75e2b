import { screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { RimView } from "../../../src/views/rim/rim-view.tsx";
import { newUser, showView, typeOver } from "../show-view.tsx";

const stations = (): number => {
  const table = screen.getByText(/What comes off, off the level rim/).closest("table");
  return table?.querySelectorAll("tbody tr").length ?? 0;
};

describe("the rim", () => {
  test("more stations are given at a closer spacing", async () => {
    showView(<RimView />);
    const before = stations();
    expect(before).toBeGreaterThan(10);
    await typeOver(newUser(), "Stations every", "50");
    const wide = stations();
    expect(wide).toBeLessThan(before);
    expect(wide).toBeGreaterThan(5);
  });

  test("a brace is added, and told apart from the first", async () => {
    showView(<RimView />);
    const said = (): number => screen.queryAllByText(/rises [\d.]+ mm at the middle/).length;
    const before = said();
    const [add] = screen.getAllByRole("button", { name: /^Add a.* brace/ });
    if (add === undefined) throw new Error("No brace can be added.");
    await newUser().click(add);
    expect(said()).toBe(before + 1);
  });
});
