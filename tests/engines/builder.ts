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

/** How long a look is repeated, and the pause between two, ms. */
const patience = 60_000;
const pause = 30;

/** What is looked for, once it holds. Many looks a second: the test runner's own polls come up to a second late. */
export async function until<Seen>(
  what: string,
  see: () => Promise<Seen>,
  holds: (seen: Seen) => boolean,
): Promise<Seen> {
  const end = Date.now() + patience;
  for (;;) {
    const seen = await see();
    if (holds(seen)) return seen;
    if (Date.now() > end) throw new Error(`${what}; last seen: ${JSON.stringify(seen)}`);
    await new Promise((look) => setTimeout(look, pause));
  }
}

const nameOf = ({ role, name }: Part): string => `${role} “${name}”`;

/** The first such part, once there is one. */
export async function see(tab: Tab, wanted: Part): Promise<Seen> {
  const [seen] = await until(
    `${nameOf(wanted)} is to be seen`,
    () => allOf(tab, wanted),
    (all) => all.length > 0,
  );
  if (seen === undefined) throw new Error("unseen");
  return seen;
}

export const textOf = async (tab: Tab, wanted: Part): Promise<string> =>
  (await see(tab, wanted)).text;

export const valueIn = async (tab: Tab, wanted: Part): Promise<string> =>
  (await see(tab, wanted)).value;

/** Waits until a part says so. */
export async function expectText(tab: Tab, wanted: Part, pattern: RegExp): Promise<void> {
  await until(
    `${nameOf(wanted)} says ${pattern}`,
    async () => (await allOf(tab, wanted)).map(({ text }) => text).join(" "),
    (text) => pattern.test(text),
  );
}

/** Waits until a field holds so. */
export async function expectValue(tab: Tab, wanted: Part, value: string): Promise<void> {
  await until(
    `${nameOf(wanted)} holds ${value}`,
    async () => (await allOf(tab, wanted))[0]?.value,
    (held) => held === value,
  );
}

/** Brings a part to the window's middle; its place, once it lies still and nothing lies over it. */
async function reach(tab: Tab, wanted: Part): Promise<Place> {
  let before: Place | undefined;
  let still = 0;
  const [seen] = await until(
    `a tap reaches ${nameOf(wanted)}`,
    () => tab.run(look, pathOf(wanted), true),
    ([now]) => {
      still = now !== undefined && liesStill(before, now.middle) ? still + 1 : 0;
      before = now?.middle;
      return still >= 2 && now?.cover === null;
    },
  );
  if (seen === undefined) throw new Error("unseen");
  return seen.middle;
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
