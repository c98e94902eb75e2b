import { fireEvent, render, screen, waitFor, within } from "@testing-library/react";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { demoShelf } from "../../../src/instrument/as-built/demo-shelf.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { type Document, firstState, newDocument } from "../../../src/store/document/state.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { makeShelfSlot } from "../../../src/store/shelf/shelf-slot.ts";
import { ShelfView } from "../../../src/views/shelf/shelf-view.tsx";
import { ShelfSlotContext, ShopContext, StoreContext } from "../../../src/views/store-context.ts";
import { openShelf, openTab } from "../../support/tab.ts";
import { newUser } from "../show-view.tsx";

beforeAll(() => {
  // Not there in jsdom; nothing comes into sight.
  vi.stubGlobal(
    "IntersectionObserver",
    class {
      observe(): void {}
      disconnect(): void {}
    },
  );
});

/** The Shelf view on a shelf with these instruments. */
async function openView(
  instruments: readonly Instrument[],
  documents: readonly Document[] = instruments.map(newDocument),
) {
  const { shelf } = await openShelf();
  for (const document of documents) await shelf.save(newEntry(document, 1));
  const { store, shop, session } = openTab(shelf, firstState);
  const slot = makeShelfSlot();
  slot.setState({ is: "open", shelf, session }, true);
  render(
    <StoreContext value={store}>
      <ShopContext value={shop}>
        <ShelfSlotContext value={slot}>
          <ShelfView />
        </ShelfSlotContext>
      </ShopContext>
    </StoreContext>,
  );
  await waitFor(() => expect(screen.queryByText("Reading the shelf…")).toBeNull());
  return { shelf, user: newUser() };
}

const called = (name: string, id = name): Instrument => ({ ...firstState.instrument, id, name });

const row = (name: string): HTMLElement => screen.getByRole("listitem", { name });

const names = (): readonly (string | null)[] =>
  screen.queryAllByRole("listitem").map((row) => row.getAttribute("aria-label"));

const fileOf = (...instruments: readonly Instrument[]): File =>
  new File(
    [JSON.stringify(shelfFileOf(instruments.map((one) => ({ document: newDocument(one) }))))],
    "shelf.json",
  );

const bring = (file: File): void => {
  fireEvent.change(screen.getByLabelText("Import a file"), { target: { files: [file] } });
};

describe("the shelf", () => {
  test("says what to do while it is empty, and takes invented instruments to look at", async () => {
    const { user, shelf } = await openView([]);
    expect(screen.getByText(/Nothing is on the shelf yet/)).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Put the invented ones on the shelf" }));
    await waitFor(() => expect(names().length).toBeGreaterThan(0));
    expect(names()).toHaveLength((await shelf.cards()).length);
  });

  test("finds by any words of a name, and says how many", async () => {
    const { user } = await openView([called("Spruce one"), called("Cedar two")]);
    await user.type(screen.getByLabelText("Find"), "CEDAR");
    expect(names()).toEqual(["Cedar two"]);
    expect(screen.getByText("1 of 2")).toBeInTheDocument();
    await user.type(screen.getByLabelText("Find"), " maple");
    expect(names()).toEqual([]);
    expect(screen.getByText("No name here has those words.")).toBeInTheDocument();
  });

  test("is put in order by name", async () => {
    const { user } = await openView([called("Birch"), called("Ash"), called("Cherry")]);
    await user.selectOptions(screen.getByLabelText("Order"), "by name");
    expect(names()).toEqual(["Ash", "Birch", "Cherry"]);
  });

  test("gives back what was taken off", async () => {
    const { user, shelf } = await openView([called("Ash")]);
    await user.click(screen.getByRole("button", { name: "More for Ash" }));
    await user.click(screen.getByRole("button", { name: "Take off the shelf" }));
    const back = await screen.findByRole("button", { name: "Put it back" });
    expect(await shelf.cards()).toEqual([]);
    await user.click(back);
    await waitFor(() => expect(names()).toEqual(["Ash"]));
    expect(await shelf.cards()).toHaveLength(1);
  });
});

describe("models", () => {
  const made = (id: string, length: number, model = "model") => ({
    ...newDocument({ ...called(id), body: { ...firstState.instrument.body, length } }),
    madeFrom: { id: model, name: "Model A" },
  });

  test("are marked, and listed alone or with what was made from one", async () => {
    const { user, shelf } = await openView([called("Model A", "model"), called("Other")]);
    await user.click(screen.getByRole("button", { name: "More for Model A" }));
    await user.click(screen.getByRole("button", { name: "Mark as a model" }));
    expect(await screen.findByText(/Nothing on the shelf was made from it yet/)).toBeVisible();
    await user.click(screen.getByRole("button", { name: "Make an instrument from it" }));
    await waitFor(async () => expect(await shelf.cards()).toHaveLength(3));
    await waitFor(() => expect(names()).toContain("Model A, no. 1"));
    await user.selectOptions(screen.getByLabelText("Show"), "models");
    expect(names()).toEqual(["Model A"]);
    expect(screen.getByText(/1 instrument was made from it, none finished/)).toBeInTheDocument();
    await user.selectOptions(screen.getByLabelText("Show"), "made from Model A");
    expect(names()).toEqual(["Model A, no. 1"]);
  });

  test("tell of what was made from them in what it differs, and of one whose model is gone that it is", async () => {
    const model = { ...newDocument(called("Model A", "model")), isModel: true };
    const documents = [model, made("Same", 492), made("Longer", 500), made("Orphan", 492, "gone")];
    const { user } = await openView([], documents);
    for (const [name, said] of [
      ["Same", /Made from “Model A”, and differs from it in nothing/],
      ["Longer", /Body length: 500 mm, model 492 mm/],
      ["Orphan", /“Model A”, which is not on the shelf/],
    ] as const) {
      await user.click(screen.getByRole("button", { name: `More for ${name}` }));
      await waitFor(() => expect(row(name)).toHaveTextContent(said));
    }
  });

  test("count what was made from them, and tell from its records how that came out", async () => {
    const model = { ...newDocument(called("Model A", "model")), isModel: true };
    const built = demoShelf.map(({ instrument, asBuilt }) => ({
      ...newDocument(instrument),
      asBuilt,
      madeFrom: { id: "model", name: "Model A" },
    }));
    const { user } = await openView([], [model, ...built]);
    await user.click(screen.getByRole("button", { name: "More for Model A" }));
    await waitFor(() =>
      expect(row("Model A")).toHaveTextContent(
        `${built.length} instruments were made from it, ${built.length} finished.`,
      ),
    );
    await waitFor(() =>
      expect(row("Model A")).toHaveTextContent(/Straightedge gap, top gluedOver \d+ instruments/),
    );
  });
});

describe("a file brought to the shelf", () => {
  test("is imported at once where nothing differs", async () => {
    await openView([]);
    bring(fileOf(...presets.slice(0, 2)));
    expect(await screen.findByText("2 imported.")).toBeInTheDocument();
    expect(names()).toHaveLength(2);
  });

  test("asks first where the shelf has another under the same id, and leaves it when told so", async () => {
    const { user, shelf } = await openView([called("Ash", "one")]);
    bring(fileOf(called("Ash renamed", "one")));
    const question = await screen.findByRole("region", {
      name: "One instrument is on the shelf already, and differs",
    });
    expect(within(question).getByText(/Ash renamed, on the shelf as Ash/)).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Leave the whole file out" }));
    expect(screen.getByText("Nothing was imported.")).toBeInTheDocument();
    expect((await shelf.cards()).map(({ name }) => name)).toEqual(["Ash"]);
  });

  test("replaces what the shelf has when that is chosen", async () => {
    const { user } = await openView([called("Ash", "one")]);
    bring(fileOf(called("Ash renamed", "one")));
    await screen.findByRole("region", { name: /differs$/ });
    await user.selectOptions(screen.getByLabelText(/on the shelf as Ash/), "replace the shelf’s");
    await user.click(screen.getByRole("button", { name: "Import them" }));
    await waitFor(() => expect(names()).toEqual(["Ash renamed"]));
  });

  test("says why when it cannot be read", async () => {
    const { shelf } = await openView([]);
    bring(new File(["not json"], "notes.txt"));
    await waitFor(() => expect(document.querySelector(".shelf-refused")).not.toBeNull());
    expect(await shelf.cards()).toEqual([]);
  });
});
