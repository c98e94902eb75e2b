import { act, fireEvent, render, screen } from "@testing-library/react";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { typeField } from "../../src/store/document/edits.ts";
import { makeStore } from "../../src/store/document/store.ts";
import { ErrorBoundary } from "../../src/views/error-boundary.tsx";
import { StoreContext, useRimwright } from "../../src/views/store-context.ts";

beforeEach(() => {
  // React tells the console of an error it has handed to a boundary.
  vi.spyOn(console, "error").mockImplementation(() => {});
});

function Brittle() {
  const length = useRimwright((state) => state.instrument.body.length);
  if (length === 493) throw new Error("493 is too much");
  return <p>drawn at {length}</p>;
}

function openFence() {
  const store = makeStore();
  render(
    <StoreContext value={store}>
      <p>the inputs</p>
      <ErrorBoundary what="The drawing">
        <Brittle />
      </ErrorBoundary>
    </StoreContext>,
  );
  return (text: string): void =>
    act(() => store.setState((state) => typeField(state, "body.length", text)));
}

describe("a part that fails", () => {
  test("leaves the rest standing, and comes back when the numbers change", () => {
    const type = openFence();
    type("493");
    expect(screen.getByRole("alert", { hidden: false })).toHaveTextContent(/^The drawing failed/);
    expect(screen.getByText("the inputs")).toBeInTheDocument();
    type("494");
    expect(screen.queryByRole("alert", { hidden: false })).toBeNull();
    expect(screen.getByText("drawn at 494")).toBeInTheDocument();
  });

  test("offers the instrument to be copied, and shows it where copying is refused", async () => {
    const type = openFence();
    type("493");
    fireEvent.click(screen.getByRole("button", { name: /^Copy/, hidden: false }));
    const shown = await screen.findByRole<HTMLTextAreaElement>("textbox", {
      name: /JSON/,
      hidden: false,
    });
    expect(JSON.parse(shown.value).body.length).toBe(493);
  });
});
