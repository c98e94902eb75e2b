import { expect } from "@playwright/test";
import type { Place, Tab } from "./engine.ts";
import { look, type Part, pathOf, type Role, type Seen } from "./find.ts";

/** A part of the page by its role and its name; `within` another. */
export const part = (role: Role, name: string | RegExp, within?: Part): Part =>
  within === undefined ? { role, name } : { role, name, within };

export const button = (name: string | RegExp, within?: Part): Part => part("button", name, within);
export const field = (name: string | RegExp, within?: Part): Part => part("textbox", name, within);
export const region = (name: string | RegExp): Part => part("region", name);

/** All there is of a part now. */
export const allOf = (tab: Tab, wanted: Part): Promise<Seen[]> =>
  tab.run(look, pathOf(wanted), false);

/** The first such part, once there is one. */
export async function see(tab: Tab, wanted: Part): Promise<Seen> {
  let seen: Seen | undefined;
  await expect
    .poll(
      async () => {
        [seen] = await allOf(tab, wanted);
        return seen !== undefined;
      },
      { message: `${wanted.role} “${wanted.name}” is to be seen` },
    )
    .toBe(true);
  if (seen === undefined) throw new Error("unseen");
  return seen;
}

export const textOf = async (tab: Tab, wanted: Part): Promise<string> =>
  (await see(tab, wanted)).text;

export const valueIn = async (tab: Tab, wanted: Part): Promise<string> =>
  (await see(tab, wanted)).value;

/** Waits until a part says so. */
export const expectText = (tab: Tab, wanted: Part, pattern: RegExp): Promise<void> =>
  expect
    .poll(async () => (await allOf(tab, wanted)).map(({ text }) => text).join(" "), {
      message: `${wanted.role} “${wanted.name}” says ${pattern}`,
    })
    .toMatch(pattern);

/** Waits until a field holds so. */
export const expectValue = (tab: Tab, wanted: Part, value: string): Promise<void> =>
  expect
    .poll(async () => (await allOf(tab, wanted))[0]?.value, {
      message: `${wanted.role} “${wanted.name}” holds ${value}`,
    })
    .toBe(value);

/** Brings a part to the window's middle; its place, once it lies still and nothing lies over it. */
async function reach(tab: Tab, wanted: Part): Promise<Place> {
  let place: Place | undefined;
  await expect
    .poll(
      async () => {
        const before = place;
        const [seen] = await tab.run(look, pathOf(wanted), true);
        place = seen?.middle;
        if (seen === undefined) return "not there";
        return seen.cover ?? (liesStill(before, place) ? null : "moving");
      },
      { message: `what hinders a tap on ${wanted.role} “${wanted.name}”`, intervals: [0, 50, 100] },
    )
    .toBe(null);
  if (place === undefined) throw new Error("unseen");
  return place;
}

/** WebKit scrolls to a middle by whole px, and to and fro by one of them. */
const liesStill = (before: Place | undefined, now: Place | undefined): boolean =>
  before !== undefined && now !== undefined && Math.hypot(now.x - before.x, now.y - before.y) < 1.5;

export async function tap(tab: Tab, wanted: Part): Promise<void> {
  await tab.drag(await reach(tab, wanted));
}

/** Drags a part by so many px. */
export async function dragBy(tab: Tab, wanted: Part, x: number, y: number): Promise<void> {
  const from = await reach(tab, wanted);
  const to = (share: number): Place => ({ x: from.x + share * x, y: from.y + share * y });
  await tab.drag(from, to(0.25), to(0.5), to(0.75), to(1));
}

/** Types into a number's field, whose text a tap selects, and leaves it. What is typed stays as typed. */
export async function write(tab: Tab, wanted: Part, text: string): Promise<void> {
  await tap(tab, wanted);
  await tab.type(text);
  await tab.run(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  await expectValue(tab, wanted, text);
}

/** Types into a field that holds words, in place of them all. */
export async function rewrite(tab: Tab, wanted: Part, text: string): Promise<void> {
  await tap(tab, wanted);
  await tab.run(() => {
    if (document.activeElement instanceof HTMLInputElement) document.activeElement.select();
  });
  await tab.type(text);
  await expectValue(tab, wanted, text);
}

/** Opens a view by its link. */
export async function open(tab: Tab, view: string): Promise<void> {
  await tap(tab, part("link", view));
}

const measurements = region("Measurements");

/** Opens every folded group of fields. */
export async function unfoldAll(tab: Tab): Promise<void> {
  await see(tab, measurements);
  await tab.run(() => {
    for (const one of document.querySelectorAll<HTMLElement>("section [aria-expanded=false]"))
      one.click();
  });
}
