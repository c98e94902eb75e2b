import { expect } from "@playwright/test";
import {
  button,
  dragBy,
  expectText,
  expectValue,
  field,
  part,
  see,
  tap,
  unfoldAll,
  until,
  valueIn,
  write,
} from "./builder.ts";
import { bodyLength, figuresOf, nameField, verdict, type Workplace } from "./workplace.ts";

/** The window is as large and as dark as asked, and the verdict stands on an instrument that says it is invented. */
export async function firstVisit({ tab, served, look }: Workplace): Promise<readonly string[]> {
  await tab.goto(served.address);
  await see(tab, verdict);
  expect(await valueIn(tab, field("Notes"))).toMatch(/invented/i);
  const { width, height, ink } = await tab.run(() => ({
    width: innerWidth,
    height: innerHeight,
    ink: getComputedStyle(document.body).color,
  }));
  expect({ width, height }).toEqual({ width: look.width, height: look.height });
  const [red = Number.NaN] = (ink.match(/[\d.]+/g) ?? []).map(Number);
  expect(red > 128, `ink ${ink}`).toBe(look.dark);
  return figuresOf(tab);
}

/** Lengths as a builder writes them, by real keys; each stays as typed. */
export async function type({ tab }: Workplace): Promise<readonly string[]> {
  await unfoldAll(tab);
  await write(tab, bodyLength, "19 3/8 in");
  await write(tab, field("Dish radius"), "27' 6\"");
  await write(tab, field("Fingerboard thickness"), '1/4"');
  await write(tab, field("Bridge thickness"), "8,9");
  return figuresOf(tab);
}

export async function step({ tab }: Workplace): Promise<readonly string[]> {
  const thickness = field("Bridge thickness");
  await tap(tab, button("More: Bridge thickness"));
  await tap(tab, button("More: Bridge thickness"));
  const stepped = await valueIn(tab, thickness);
  expect(stepped).not.toBe("8,9");
  await tap(tab, thickness);
  await tab.press("ArrowDown");
  return [stepped, await valueIn(tab, thickness), ...(await figuresOf(tab))];
}

/** How far a drag goes depends on the fonts round the drawing; which way, and the way back, do not. */
export async function drag({ tab }: Workplace): Promise<readonly string[]> {
  const flat = field("Break from the neck end");
  const [before, figures] = [await valueIn(tab, flat), await figuresOf(tab)];
  await dragBy(tab, part("slider", "Break"), -40, 0);
  expect(Number(await valueIn(tab, flat))).toBeGreaterThan(Number(before) + 5);
  expect(await figuresOf(tab)).not.toEqual(figures);
  await tap(tab, button("Undo"));
  await expectValue(tab, flat, before);
  expect(await figuresOf(tab)).toEqual(figures);
  return [before];
}

export async function units({ tab }: Workplace): Promise<readonly string[]> {
  const before = await figuresOf(tab);
  await tap(tab, button("Inches in fractions, to 1/64"));
  const width = (sign: string): Promise<string> =>
    until(
      `the width has ${sign}`,
      () => valueIn(tab, field("Lower bout width")),
      (shown) => shown.includes(sign),
    );
  const fractions = [await width("/"), ...(await figuresOf(tab))];
  await tap(tab, button("Inches, decimal"));
  const decimals = [await width("."), ...(await figuresOf(tab))];
  await tap(tab, button("Millimetres"));
  expect(await figuresOf(tab)).toEqual(before);
  return [...fractions, ...decimals];
}

/** What cannot be read is marked and told of beside its field, and changes nothing. */
export async function nonsense({ tab }: Workplace): Promise<readonly string[]> {
  const scale = field("Scale length");
  const [before, figures] = [await valueIn(tab, scale), await figuresOf(tab)];
  await write(tab, scale, "banana");
  const seen = () => see(tab, scale);
  expect((await seen()).isInvalid).toBe(true);
  // The range that works is looked for once the drawing has had its turn.
  const described = await until(
    "what works is said",
    async () => (await seen()).described,
    (said) => said.includes("works with the rest"),
  );
  expect(await figuresOf(tab)).toEqual(figures);
  await write(tab, scale, before);
  expect((await see(tab, scale)).isInvalid).toBe(false);
  return [described];
}

/** The list of invented instruments opens by a tap and closes by one; what was open is one tap away. */
export async function startFrom({ tab }: Workplace): Promise<readonly string[]> {
  const before = await valueIn(tab, nameField);
  await tap(tab, button(/^Start from/));
  await tap(tab, button(/^Parlour size/));
  await until(
    "the Parlour is open",
    () => valueIn(tab, nameField),
    (name) => name.startsWith("Parlour size"),
  );
  const parlour = await figuresOf(tab);
  await tap(tab, button(/^Start from/));
  await tap(tab, button(`Back to “${before}”`));
  await expectValue(tab, nameField, before);
  await expectText(tab, part("main", ""), /\S/);
  return [await valueIn(tab, nameField), ...parlour];
}
