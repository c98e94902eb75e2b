import { screen, within } from "@testing-library/react";
import { afterEach, beforeAll, describe, expect, test } from "vitest";
import { chooseUnits } from "../../../src/store/document/choices.ts";
import { typeField } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { SheetView } from "../../../src/views/sheet/sheet-view.tsx";
import { newUser, showView, stubPaper } from "../show-view.tsx";

beforeAll(stubPaper);

afterEach(() => localStorage.clear());

const choosePage = async (name: string): Promise<HTMLElement> => {
  await newUser().selectOptions(screen.getByLabelText("Page or template"), name);
  return screen.findByRole("region", { name: "The pages as they print" }, { timeout: 20_000 });
};

describe("the sheet", () => {
  test("gives the shim, the target and how each outcome stands to its window", () => {
    showView(<SheetView />);
    const sheet = screen.getByRole("region", { name: "The sheet as it prints" });
    expect(sheet).toHaveTextContent(firstState.instrument.name);
    expect(sheet).toHaveTextContent("8.4 mm");
    expect(sheet).toHaveTextContent(/2\.50 to 5\.00, within/);
    expect(sheet).toHaveTextContent(/0\.00 to 1\.60, within/);
    expect(sheet).not.toHaveTextContent(/, in\b/);
  });

  test("names what the shim was planned for, and as much of the notes as there is room for", () => {
    const planned = typeField(firstState, "dome.braceRadius", "25 ft");
    const notes = `Spruce. ${"A long story. ".repeat(100)}`;
    showView(<SheetView />, {
      state: { ...planned, instrument: { ...planned.instrument, notes } },
    });
    const given = screen.getByRole("region", { name: "Planned for" });
    for (const words of [
      "Dish 8534 mm (28 ft)",
      "Braces 7620 mm (25 ft)",
      "492 mm long",
      "fret 14",
    ])
      expect(given).toHaveTextContent(words);
    expect(given).toHaveTextContent("Target saddle exposed 3.4 mm");
    expect(given).toHaveTextContent(/Spruce\. A long story\..*…$/);
  });

  test("says outside where an outcome is outside its window", () => {
    showView(<SheetView />, { state: typeField(firstState, "windows.saddleExposure.1", "3.2") });
    expect(screen.getByRole("region", { name: "The sheet as it prints" })).toHaveTextContent(
      /2\.50 to 3\.20, outside/,
    );
  });

  test("has the inch first where inches are shown", () => {
    showView(<SheetView />, { state: chooseUnits(firstState, "in-fraction") });
    expect(screen.getByRole("region", { name: "The sheet as it prints" })).toHaveTextContent(
      /21\/64 in8\.4 mm/,
    );
  });

  test("says that it is the last plan that worked while the fields have none", () => {
    showView(<SheetView />, { state: typeField(firstState, "dome.dishRadius", "100") });
    expect(screen.getByText(/This is the last plan that worked/)).toBeInTheDocument();
  });

  test("keeps the paper chosen for the next visit", async () => {
    showView(<SheetView />);
    await newUser().click(screen.getByRole("button", { name: "Letter" }));
    expect(screen.getByRole("button", { name: "Letter" })).toHaveAttribute("aria-pressed", "true");
    showView(<SheetView />);
    for (const letter of screen.getAllByRole("button", { name: "Letter" }))
      expect(letter).toHaveAttribute("aria-pressed", "true");
  });
});

describe("the templates", () => {
  test("stand over as many pages as they need, and can be saved", async () => {
    showView(<SheetView />);
    const pages = await choosePage("Half outline");
    const count = pages.children.length;
    expect(count).toBeGreaterThan(1);
    expect(screen.getByText(`${count} pages, full size.`)).toBeInTheDocument();
    expect(screen.getByRole("button", { name: "Save DXF" })).toBeInTheDocument();
  });

  test("of braces take another brace, and leave out one that its circle cannot hold", async () => {
    showView(<SheetView />);
    const pages = await choosePage("Top braces");
    const user = newUser();
    const arcs = (): number => pages.querySelectorAll("[data-role='brace arc']").length;
    const one = arcs();
    await user.click(screen.getByRole("button", { name: "Add a top brace" }));
    expect(arcs()).toBeGreaterThan(one);
    const radius = screen.getByRole("textbox", { name: "Top brace 2, radius" });
    await user.click(radius);
    await user.keyboard("110");
    expect(arcs()).toBe(one);
    await user.click(screen.getByRole("button", { name: "Remove top brace 2" }));
    expect(within(pages).queryByText("Top brace 2")).toBeNull();
  });
});
