import { configure, fireEvent, render, screen, within } from "@testing-library/react";
import { type FieldGroup, fieldGroups } from "../../src/instrument/fields.ts";
import { firstState } from "../../src/store/document/state.ts";
import { makeStore, type Store } from "../../src/store/document/store.ts";
import { makeShelfSlot } from "../../src/store/shelf/shelf-slot.ts";
import { makeShopStore } from "../../src/store/shelf/shop.ts";
import { App } from "../../src/views/page/app.tsx";

// Looking through the styles of every element for what is hidden takes most of a test's time.
configure({ defaultHidden: true, asyncUtilTimeout: 20_000 });

// Not there in jsdom.
Element.prototype.scrollIntoView = () => {};
Element.prototype.setPointerCapture = () => {};
HTMLDialogElement.prototype.showModal = function () {
  this.open = true;
};
HTMLDialogElement.prototype.close = function () {
  this.open = false;
};

export const everyGroup: readonly FieldGroup[] = fieldGroups.map(([group]) => group);

/** The whole page on a store of its own, with the groups named open and the others folded. */
export function openPage(
  open: readonly FieldGroup[] = ["bench", "body", "dome"],
  shop = makeShopStore(),
): Store {
  const folded = everyGroup.filter((group) => !open.includes(group));
  const store = makeStore({
    ...firstState,
    choices: { ...firstState.choices, folded, introduced: true },
  });
  render(<App store={store} shop={shop} slot={makeShelfSlot()} />);
  return store;
}

export const field = (label: string): HTMLInputElement =>
  screen.getByLabelText<HTMLInputElement>(label, { selector: "input[id^=field-]" });

/** What folds a group. Looked for by its words: to name every button on the page takes jsdom seconds. */
export const groupHeading = (heading: string): HTMLElement =>
  screen.getByText(heading, { selector: ".group h2 button" });

export const type = (label: string, text: string): void => {
  fireEvent.change(field(label), { target: { value: text } });
};

export const verdict = (): HTMLElement => screen.getByRole("region", { name: "Verdict" });

/** The shim as the verdict shows it, such as "8.4mm" and "21/64in". */
export const shimShown = (): string =>
  within(verdict()).getByRole("region", { name: "Shim" }).textContent ?? "";

/** What is said to be wrong with a field. */
export function troubleOf(label: string): string {
  const ids = field(label).getAttribute("aria-describedby")?.split(" ") ?? [];
  const trouble = ids.find((id) => id.endsWith("-trouble")) ?? "";
  return document.getElementById(trouble)?.textContent ?? "";
}
