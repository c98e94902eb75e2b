import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { undo } from "../../src/store/document/undo.ts";
import { everyGroup, openPage, shimShown } from "./page.tsx";

const entry = async (name: string): Promise<HTMLInputElement> => {
  // Loaded when first opened: a busy machine takes its time over that.
  const words = await screen.findByText(
    name,
    { selector: ".tolerance > span" },
    { timeout: 30_000 },
  );
  const input = words.parentElement?.querySelector("input");
  if (input == null) throw new Error(`${name} has no entry`);
  return input;
};

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
    expect(screen.getByText("This must be 0 or more.")).toBeInTheDocument();
    expect(store.getState().instrument.tolerances["bridge.thickness"]).toBe(0.1);
  });

  test("are folded away until asked for", () => {
    openPage(everyGroup.filter((group) => group !== "tolerances"));
    expect(screen.queryByText("ISO 2768-1 fine")).toBeNull();
  });
});
