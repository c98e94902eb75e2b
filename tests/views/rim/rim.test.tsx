import { act, screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { chooseUnits } from "../../../src/store/document/choices.ts";
import { RimView } from "../../../src/views/rim/rim-view.tsx";
import { entry, newUser, showView, typeOver } from "../show-view.tsx";

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

  test("the strings are drawn from nut to saddle, and the saddle across them, in the unit shown", () => {
    const { store } = showView(<RimView />);
    expect(screen.getByRole("img", { name: /^6 strings from saddle to nut/ })).toBeVisible();
    const saddle = (): HTMLElement =>
      screen.getByRole("img", { name: /^The saddle seen from the tail/ });
    expect(saddle()).toHaveAccessibleName(/string 6 \d\.\d\d mm.*string 1 \d\.\d\d mm\.$/);
    act(() => store.setState((state) => chooseUnits(state, "in")));
    expect(saddle()).toHaveAccessibleName(/string 6 0\.\d{3} in/);
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

  test("a strip that is too narrow for the sides is said to be, and one that is not", async () => {
    showView(<RimView />);
    const user = newUser();
    const width = "Strip you have, width";
    await typeOver(user, width, "100");
    expect(screen.getByText(/^Too narrow: 100 mm falls [\d.]+ mm short/)).toBeVisible();
    // The entry has the focus: a second tap sets the caret and selects nothing.
    await user.clear(entry(width));
    await user.keyboard("140");
    expect(screen.getByText(/^Wide enough, with [\d.]+ mm to spare/)).toBeVisible();
  });
});
