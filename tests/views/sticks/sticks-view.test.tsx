import { screen, waitFor, within } from "@testing-library/react";
import { afterEach, beforeAll, describe, expect, test, vi } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { firstShop, type Shop } from "../../../src/store/shelf/shop.ts";
import { SticksView } from "../../../src/views/sticks/sticks-view.tsx";
import { entry, newUser, runJobsHere, showView, stubPaper, typeOver } from "../show-view.tsx";

beforeAll(stubPaper);

afterEach(() => {
  vi.restoreAllMocks();
});

const names = (): readonly string[] =>
  screen.getAllByRole("checkbox").map((box) => box.closest("label")?.textContent ?? "");

/** The texts of an instrument's cells. */
function cellsOf(name: string): readonly string[] {
  const row = screen.getByLabelText(name).closest("tr");
  if (row === null) throw new Error(`${name} stands in no row.`);
  return within(row)
    .getAllByRole("cell")
    .map((cell) => cell.textContent ?? "");
}

/** The view on a first visit, with what the worker gives. */
async function open(shop: Shop = firstShop) {
  const asked = runJobsHere();
  const shown = showView(<SticksView />, { shop });
  await screen.findByText(/^The fewest for all/);
  return { ...shown, asked, user: newUser() };
}

const jumbo = presets.find(({ id }) => id === "jumbo") ?? defaultInstrument;

describe("the sticks", () => {
  test("show on a first visit what one of 7.5 mm does on each invented instrument", async () => {
    await open();
    expect(names()).toHaveLength(presets.length);
    const whole = profileOf({ ...jumbo, target: { kind: "shim", value: 7.5 } });
    if (!whole.ok) throw new Error("no plan");
    const [, pitch, bridge] = cellsOf(jumbo.name);
    expect(pitch).toContain(`${whole.profile.pitch.toFixed(2)}°`);
    expect(bridge).toContain(whole.profile.bridgeClearance.toFixed(2).replace("-", "−"));
    expect(bridge).toContain("outside");
  });

  test("follow a thickness that is typed, at once", async () => {
    const { user, shop } = await open();
    const before = cellsOf(jumbo.name);
    await typeOver(user, "Thickness", "10");
    expect(shop.getState()?.trial.stick.thickness).toBe(10);
    expect(cellsOf(jumbo.name)).not.toEqual(before);
    expect(cellsOf(jumbo.name).join()).not.toContain("outside");
    await typeOver(user, "Thickness", "ten");
    expect(entry("Thickness")).toBeInvalid();
    expect(shop.getState()?.trial.stick.thickness).toBe(10);
  });

  test("that are dragged leave what the instruments want standing, and it is not asked for anew", async () => {
    const { user, asked } = await open();
    const plans = (): number => asked.filter(({ kind }) => kind === "stick-plan").length;
    const before = plans();
    await typeOver(user, "Thickness", "9");
    expect(screen.getByText(/^The fewest for all/)).toBeInTheDocument();
    await waitFor(() => expect(asked.at(-1)).toMatchObject({ kind: "shared-shim", shim: 9 }));
    expect(plans()).toBe(before);
  });

  test("owned are added, named, put under undo, and named as the nearest", async () => {
    const { user, shop } = await open();
    await user.click(screen.getByRole("button", { name: "Add it to my sticks" }));
    await user.type(screen.getByLabelText("Name of stick 1"), "Maple");
    expect(shop.getState()?.sticks.owned).toMatchObject([{ name: "Maple", thickness: 7.5 }]);
    await user.click(screen.getByRole("button", { name: "what each wants" }));
    await waitFor(() => expect(cellsOf(jumbo.name).join()).toContain("Maple, does not serve"));
    await waitFor(() => expect(cellsOf(jumbo.name).join()).not.toContain("…"));
    await user.click(screen.getByRole("button", { name: "Remove stick 1" }));
    expect(shop.getState()?.sticks.owned).toEqual([]);
    expect(shop.getState()?.sticks.past).toHaveLength(3);
  });

  test("are sorted by any column either way, found by words, and filtered by a column's window", async () => {
    const { user } = await open();
    await user.click(screen.getByRole("button", { name: "Pitch" }));
    const rising = names();
    const pitches = (): readonly number[] =>
      names().map((name) => Number.parseFloat(cellsOf(name)[1]?.replace(/^.*: /, "") ?? ""));
    expect(pitches()).toEqual(pitches().toSorted((a, b) => a - b));
    await user.click(screen.getByRole("button", { name: /^Pitch/ }));
    expect(pitches()).toEqual(pitches().toSorted((a, b) => b - a));
    expect(screen.getByRole("columnheader", { name: /^Pitch/ })).toHaveAttribute(
      "aria-sort",
      "descending",
    );
    await user.type(screen.getByLabelText("Find"), "JUMBO");
    expect(names()).toEqual([jumbo.name]);
    await user.clear(screen.getByLabelText("Find"));
    await user.selectOptions(screen.getByLabelText("Filter by"), "Fret plane over the bridge");
    await user.selectOptions(screen.getByLabelText("Its window"), "outside");
    const outside = names();
    expect(outside).toContain(jumbo.name);
    expect(outside.length).toBeLessThan(presets.length);
    await typeOver(user, "At least", "-0.3");
    expect(names()).not.toContain(jumbo.name);
    await user.selectOptions(screen.getByLabelText("Filter by"), "nothing");
    await user.selectOptions(screen.getByLabelText("Show"), "served by it");
    const served = names();
    await user.selectOptions(screen.getByLabelText("Show"), "not served");
    expect([...served, ...names()].toSorted()).toEqual(rising.toSorted());
  });

  test("count those ticked, and say which sticks those want", async () => {
    const { user, shop } = await open();
    await user.type(screen.getByLabelText("Find"), "jumbo");
    await user.click(screen.getByRole("button", { name: "Tick only these 1" }));
    expect(shop.getState()?.trial.ticked).toEqual([jumbo.id]);
    expect(screen.getByText("serves 0 of 1")).toBeInTheDocument();
    const wanted = await screen.findByText(/^One stick serves 1 of 1/);
    const list = wanted.nextElementSibling;
    if (!(list instanceof HTMLElement)) throw new Error("It names no stick.");
    await user.click(within(list).getByRole("button", { name: /^Try/ }));
    expect(screen.getByText("serves 1 of 1")).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Tick none" }));
    expect(shop.getState()?.trial.ticked).toEqual([]);
    // Neither which sticks to have nor one shim for all.
    await waitFor(() => expect(screen.getAllByText("No instrument is ticked.")).toHaveLength(2));
    await user.click(screen.getByRole("button", { name: "Tick all" }));
    expect(shop.getState()?.trial.ticked).toBeNull();
  });

  test("have the sheets of all ticked for one print run, and come back", async () => {
    const { user } = await open();
    await user.click(screen.getByRole("button", { name: "Sheets of all ticked" }));
    expect(screen.getAllByRole("article", { name: "Profile sheet" })).toHaveLength(presets.length);
    expect(
      screen.getByRole("button", { name: `Print ${presets.length} sheets` }),
    ).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Back to the table" }));
    expect(names()).toHaveLength(presets.length);
  });
});
