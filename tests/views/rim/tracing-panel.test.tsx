import { screen, waitFor } from "@testing-library/react";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { TracedOutline } from "../../../src/geometry/outline/traced-outline.ts";
import { runsBack } from "../../../src/geometry/outline/turns.ts";
import type { Body } from "../../../src/instrument/instrument.ts";
import { TracingPanel } from "../../../src/views/rim/tracing-panel.tsx";
import { workerClient } from "../../../src/worker/client.ts";
import { pear } from "../../support/pear.ts";
import { loopOf, roundedCutaway } from "../../support/uneven-bodies.ts";
import { newUser, runJobsHere, showView } from "../show-view.tsx";

beforeEach(() => {
  runJobsHere();
});

/** Whether a tracing has the cutaway. */
const isCut = (places: Body["tracing"]): boolean => runsBack(places ?? []);

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

  test("of a whole body keeps both halves; either can be mirrored, and the sides changed over, in one tap", async () => {
    const { store } = showView(<TracingPanel />);
    const body = () => store.getState().instrument.body;
    await paste(
      loopOf(roundedCutaway)
        .map((place) => place.join(", "))
        .join("\n"),
    );
    expect(await screen.findByLabelText("Use")).toHaveValue("both");
    expect(screen.getByText(/The two halves lie up to \d+\.\d mm apart/)).toBeInTheDocument();
    await newUser().click(screen.getByRole("button", { name: "Use this outline" }));
    expect([isCut(body().tracing), isCut(body().tracingTreble)]).toEqual([false, true]);
    expect(store.getState().instrument.version).toBe(2);
    const { tracing, tracingTreble } = body();
    await newUser().click(screen.getByRole("button", { name: "Change the sides over" }));
    expect(body()).toMatchObject({ tracing: tracingTreble, tracingTreble: tracing });
    await newUser().click(screen.getByRole("button", { name: "Mirror the treble half" }));
    expect(body().tracing).toEqual(tracing);
    expect("tracingTreble" in body()).toBe(false);
    expect(store.getState().instrument.version).toBe(1);
  });

  test("of a treble half with a cutaway stands beside the stated widths, whichever side it is drawn on", async () => {
    const { store } = showView(<TracingPanel />);
    const horn = new TracedOutline(roundedCutaway.body.tracingTreble ?? []);
    const drawn = Array.from({ length: 300 }, (_, i) =>
      horn.placeAtArc((horn.totalArc() * i) / 299),
    );
    await paste(drawn.map((place) => place.join(", ")).join("\n"));
    await newUser().selectOptions(await screen.findByLabelText("Use"), "treble half alone");
    await newUser().click(screen.getByRole("button", { name: "Use this outline" }));
    const { body } = store.getState().instrument;
    expect(body).toMatchObject({ length: 500 });
    expect(body.tracing).toBeUndefined();
    const kept = new TracedOutline(body.tracingTreble ?? []);
    expect(kept.foldX).toBeCloseTo(horn.foldX, 0);
    expect(screen.getByText(/the treble half follows a tracing/)).toBeInTheDocument();
    await newUser().click(screen.getByRole("button", { name: "Mirror the bass half" }));
    expect(store.getState().instrument.body.tracingTreble).toBeUndefined();
  });

  test("from an SVG drawing has its bass side where the drawing shows it, y running down the page", async () => {
    const { store } = showView(<TracingPanel />);
    // Tail at the bottom, neck end up, the whole side on the left: the bass side, seen from above.
    const path = loopOf(roundedCutaway).map(([x, y]) => `${-y} ${-x}`);
    await paste(
      `<svg width="1000mm" viewBox="0 0 1000 1000"><path d="M${path.join("L")}Z"/></svg>`,
    );
    await newUser().click(await screen.findByRole("button", { name: "Use this outline" }));
    const { tracing, tracingTreble } = store.getState().instrument.body;
    expect([isCut(tracing), isCut(tracingTreble)]).toEqual([false, true]);
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
