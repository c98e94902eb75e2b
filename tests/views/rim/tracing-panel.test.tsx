import { screen, waitFor } from "@testing-library/react";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { TracingPanel } from "../../../src/views/rim/tracing-panel.tsx";
import { workerClient } from "../../../src/worker/client.ts";
import { pear } from "../../support/pear.ts";
import { newUser, runJobsHere, showView } from "../show-view.tsx";

beforeEach(() => {
  runJobsHere();
});

describe("a tracing", () => {
  const paste = async (text: string): Promise<void> => {
    const user = newUser();
    await user.click(screen.getByLabelText("Or paste it here"));
    await user.paste(text);
  };

  test("pasted, it is fitted, used, and taken off again", async () => {
    const { store } = showView(<TracingPanel />);
    await paste(pear.map((place) => place.join(", ")).join("\n"));
    await newUser().click(await screen.findByRole("button", { name: "Use this outline" }));
    const { tracing } = store.getState().instrument.body;
    expect(tracing?.length).toBeGreaterThan(4);
    expect(tracing?.at(-1)?.[0]).toBeCloseTo(500, 0);
    await newUser().click(screen.getByRole("button", { name: "Take the tracing off" }));
    expect(store.getState().instrument.body.tracing).toBeUndefined();
  });

  test.each([
    ["<html></html>", /not an SVG drawing/],
    ["<svg><path d='M0 0'/></svg>", /There is no line in this drawing/],
  ])("%j is no outline, and it is said why", async (text, why) => {
    const { store } = showView(<TracingPanel />);
    await paste(text);
    expect(await screen.findByRole("alert")).toHaveTextContent(why);
    expect(screen.queryByRole("button", { name: "Use this outline" })).toBeNull();
    expect(store.getState().instrument.body.tracing).toBeUndefined();
  });

  test("one far too small asks for the unit it is drawn in", async () => {
    showView(<TracingPanel />);
    await paste(pear.map(([x, y]) => `${x / 25.4}, ${y / 25.4}`).join("\n"));
    expect(await screen.findByText(/Look at the unit it is drawn in/)).toBeInTheDocument();
    await newUser().selectOptions(screen.getByLabelText("Drawn in"), "inches");
    expect(await screen.findByRole("button", { name: "Use this outline" })).toBeInTheDocument();
  });

  test("a reading can be stopped, and begun again", async () => {
    let begun = 0;
    const stop = vi.fn();
    vi.spyOn(workerClient, "run").mockImplementation(() => {
      begun += 1;
      return stop;
    });
    showView(<TracingPanel />);
    await paste("0, 0\n1, 9\n2, 8");
    await waitFor(() => expect(begun).toBe(1));
    await newUser().click(screen.getByRole("button", { name: "Stop" }));
    expect(stop).toHaveBeenCalled();
    await newUser().click(screen.getByRole("button", { name: "Read it again" }));
    expect(begun).toBe(2);
  });
});
