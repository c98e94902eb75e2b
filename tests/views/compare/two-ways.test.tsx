import { screen, within } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { TwoWaysPanel } from "../../../src/views/compare/two-ways-panel.tsx";
import { onSeat, solved, solvedSeat } from "../../support/solved.ts";
import { newUser, showView } from "../show-view.tsx";

const row = (name: string): readonly string[] =>
  within(screen.getByRole("row", { name: new RegExp(`^${name}`) }))
    .getAllByRole("cell")
    .map((cell) => cell.textContent ?? "");

describe("both ways side by side", () => {
  test("tell each its part, its cut and its pitch", () => {
    showView(<TwoWaysPanel />);
    const [rim, seat] = [solved(defaultInstrument), solvedSeat(onSeat(defaultInstrument))];
    expect(row("Sets the angle")).toEqual([
      `Shim under the tail, ${rim.shim.toFixed(2)} mm`,
      `Spacer at the saddle line, ${seat.seat.spacer.toFixed(2)} mm`,
    ]);
    expect(row("Off the plate")[0]).toBe("nothing");
    expect(row("Off the plate")[1]).toContain(`${seat.seat.endCut.toFixed(2)} mm`);
    expect(row("Pitch")).toEqual([`${rim.pitch.toFixed(2)}°`, `${seat.pitch.toFixed(2)}°`]);
    expect(screen.getByText(/^For the same saddle the seat takes/)).toHaveTextContent(
      `${seat.seat.mostCut.toFixed(2)} mm of a plate 2.80 mm thick`,
    );
    expect(screen.getByText(/^Dishing the whole rim/)).toHaveTextContent(
      /does no harm here: .* at the neck end it leaves \d+\.\d+ mm for the board/,
    );
  });

  test("name their steps in order, each way its own", () => {
    showView(<TwoWaysPanel />);
    const steps = (name: string) =>
      within(screen.getByRole("region", { name })).getAllByRole("listitem").length;
    expect(steps("Steps, Flat sanded on the rim")).toBe(15);
    expect(steps("Steps, Seat sanded on the top")).toBe(13);
  });

  test("the other one is put to use by a press", async () => {
    const { store } = showView(<TwoWaysPanel />);
    await newUser().click(screen.getByRole("button", { name: "Use this way" }));
    expect(store.getState().instrument.dome.method).toBe("seat");
    expect(store.getState().instrument.version).toBe(2);
  });
});
