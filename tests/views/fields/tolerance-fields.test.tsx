import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { undo } from "../../../src/store/document/undo.ts";
import { everyGroup, openPage, shimShown } from "../page.tsx";

// Loaded when first opened: a busy machine takes its time over that.
const entry = (name: string): Promise<HTMLInputElement> =>
  screen.findByLabelText<HTMLInputElement>(
    name,
    { selector: ".tolerances input" },
    { timeout: 30_000 },
  );

describe("the tolerances beside the measures", () => {
  test("state how closely a measure is held, move no plan, and can be taken back", async () => {
    const store = openPage(["tolerances"]);
    const shim = shimShown();
    fireEvent.change(await entry("Bridge thickness"), { target: { value: "0,35" } });
    expect(store.getState().instrument.tolerances["bridge.thickness"]).toBe(0.35);
    expect(shimShown()).toBe(shim);
    act(() => store.setState(undo));
    expect(store.getState().instrument.tolerances["bridge.thickness"]).toBe(0.1);
    expect((await entry("Bridge thickness")).value).toBe("0.1");
  });

  test("keep what cannot be read in sight, marked, and out of the instrument", async () => {
    const store = openPage(["tolerances"]);
    const input = await entry("Bridge thickness");
    fireEvent.change(input, { target: { value: "-x" } });
    expect(input.value).toBe("-x");
    expect(input).toHaveAttribute("aria-invalid", "true");
    expect(screen.getByText("“x” is not a number.")).toBeInTheDocument();
    expect(store.getState().instrument.tolerances["bridge.thickness"]).toBe(0.1);
  });

  test("are folded away until asked for", () => {
    openPage(everyGroup.filter((group) => group !== "tolerances"));
    expect(screen.queryByText("ISO 2768-1 fine")).toBeNull();
  });
});
