import { screen, waitFor } from "@testing-library/react";
import type { UserEvent } from "@testing-library/user-event";
import { parse } from "csv-parse/sync";
import { afterEach, describe, expect, test, vi } from "vitest";
import { firstState } from "../../../src/store/document/state.ts";
import { recorded, undo } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import { VariantsPanel } from "../../../src/views/compare/variants-panel.tsx";
import { cellsOf, entry, newUser, showView, typeOver } from "../show-view.tsx";

const twoVariants = ["a", "b"].reduce(
  (state, id) => recorded(state, addVariant(state, id)),
  firstState,
);

const chooseField = (user: UserEvent, name: string): Promise<void> =>
  user.selectOptions(screen.getByLabelText("Change"), name);

/** What the page hands the browser to be saved. jsdom has neither addresses of files nor saves any. */
function catchSavedFiles(): { readonly names: string[]; readonly files: Blob[] } {
  const caught = { names: [] as string[], files: [] as Blob[] };
  // Both stay: the page gives an address back ten seconds later.
  Object.assign(URL, {
    createObjectURL: (file: Blob): string => {
      caught.files.push(file);
      return "blob:saved";
    },
    revokeObjectURL: (): void => {},
  });
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (
    this: HTMLAnchorElement,
  ) {
    caught.names.push(this.download);
  });
  return caught;
}

/** Read by jsdom's own reader: its Blob has no `arrayBuffer`. */
const bytesOf = (file: Blob): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(Buffer.from(reader.result as ArrayBuffer));
    reader.onerror = () => reject(reader.error);
    reader.readAsArrayBuffer(file);
  });

afterEach(() => {
  vi.restoreAllMocks();
});

describe("variants side by side", () => {
  test("one is added, a number of it changed, and its outcome told against the base", async () => {
    const user = newUser();
    const { store } = showView(<VariantsPanel />);
    expect(screen.getByText(/A variant is the same instrument/)).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Add a variant" }));
    await chooseField(user, "Bridge thickness");
    expect(entry("Bridge thickness, Variant A").value).toBe(entry("Bridge thickness, base").value);
    await typeOver(user, "Bridge thickness, Variant A", "9,5");
    const [variant] = store.getState().comparison.variants;
    expect(variant?.changes).toEqual({ "bridge.thickness": 9.5 });
    expect(entry("Bridge thickness, Variant A")).toHaveValue("9,5");
    const [base = "", own = ""] = cellsOf("Shim");
    expect(base).toMatch(/^\d+\.\d\d mm$/);
    expect(own).toMatch(/^\d+\.\d\d mm\+\d\.\d\d mm$/);
  });

  test("how an outcome stands is said by a word that is no unit", () => {
    showView(<VariantsPanel />, { state: twoVariants });
    const stands = cellsOf("Saddle exposed");
    expect(stands).toHaveLength(3);
    for (const text of stands) expect(text).toMatch(/(within|close|outside)$/);
  });

  test("what cannot be read is kept and said beside it, and changes nothing", async () => {
    const user = newUser();
    const { store } = showView(<VariantsPanel />, { state: twoVariants });
    await chooseField(user, "Bridge thickness");
    await typeOver(user, "Bridge thickness, Variant B", "thick");
    expect(screen.getByRole("alert")).toHaveTextContent("is not a number");
    expect(entry("Bridge thickness, Variant B")).toBeInvalid();
    expect(store.getState().comparison.variants[1]?.changes).toEqual({});
  });

  test("a changed base is a base for all that do not change it", async () => {
    const user = newUser();
    showView(<VariantsPanel />, { state: twoVariants });
    await chooseField(user, "Bridge thickness");
    await typeOver(user, "Bridge thickness, Variant B", "9.5");
    await typeOver(user, "Bridge thickness, base", "8");
    expect(entry("Bridge thickness, Variant A")).toHaveValue("8");
    expect(entry("Bridge thickness, Variant B")).toHaveValue("9.5");
  });

  test("one aims for something else, from the value it has", async () => {
    const user = newUser();
    const { store } = showView(<VariantsPanel />, { state: twoVariants });
    const shim = cellsOf("Shim")[1];
    await user.selectOptions(screen.getByLabelText("Aims for, Variant A"), "Pitch");
    expect(store.getState().comparison.variants[0]?.target?.kind).toBe("pitch");
    expect(cellsOf("Shim")[1]).toContain(shim?.slice(0, 7));
    await typeOver(user, "Pitch, Variant A", "1.6");
    expect(cellsOf("Pitch")[1]).toContain("1.60°");
  });

  test("one is removed and put back where it stood, and undo knows both", async () => {
    const user = newUser();
    const { store } = showView(<VariantsPanel />, { state: twoVariants });
    const names = (): readonly string[] =>
      store.getState().comparison.variants.map(({ name }) => name);
    await user.click(screen.getByLabelText("What to do with Variant A"));
    const [remove] = screen.getAllByRole("button", { name: "Remove" });
    if (remove === undefined) throw new Error("Nothing removes it.");
    await user.click(remove);
    expect(names()).toEqual(["Variant B"]);
    await user.click(screen.getByRole("button", { name: "Put “Variant A” back" }));
    expect(names()).toEqual(["Variant A", "Variant B"]);
    store.setState(undo);
    await waitFor(() => expect(cellsOf("Shim")).toHaveLength(2));
    store.setState(undo);
    await waitFor(() => expect(cellsOf("Shim")).toHaveLength(3));
  });

  test("one becomes the base, and what the base was a variant", async () => {
    const user = newUser();
    const { store } = showView(<VariantsPanel />, { state: twoVariants });
    await chooseField(user, "Bridge thickness");
    await typeOver(user, "Bridge thickness, Variant B", "9.5");
    await user.click(screen.getByLabelText("What to do with Variant B"));
    const makeBase = screen.getAllByRole("button", { name: "Make it the base" }).at(-1);
    if (makeBase === undefined) throw new Error("Nothing makes it the base.");
    await user.click(makeBase);
    expect(store.getState().instrument.bridge.thickness).toBe(9.5);
    expect(store.getState().comparison.variants.map(({ name }) => name)).toContain(
      "Before Variant B",
    );
  });

  test("the table is saved as it stands", async () => {
    const user = newUser();
    const { names, files } = catchSavedFiles();
    showView(<VariantsPanel />, { state: twoVariants });
    await user.click(screen.getByRole("button", { name: "Save as CSV" }));
    await waitFor(() => expect(names).toEqual(["orchestra-size-comparison.csv"]));
    const [file = new Blob()] = files;
    expect(file.type).toBe("text/csv;charset=utf-8");
    const rows = parse(await bytesOf(file), { bom: true, record_delimiter: "\r\n" });
    expect(rows[0]?.filter((_, i) => [1, 3, 6].includes(i))).toEqual([
      ...["Base", "Variant A", "Variant B"],
    ]);
    const shim = rows.find(([heading]) => heading === "Shim (mm)");
    expect(Number(shim?.[1])).toBeCloseTo(Number.parseFloat(cellsOf("Shim")[0] ?? ""), 2);
  });
});
