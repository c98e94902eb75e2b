import { expect } from "@playwright/test";
import {
  allOf,
  button,
  expectText,
  field,
  open,
  part,
  region,
  see,
  tap,
  textOf,
  until,
  write,
} from "./builder.ts";
import { tablesOf, type Workplace } from "./workplace.ts";

/** A variant; and the worker's draws, which the same seed repeats to the last figure. */
export async function compare({ tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Compare");
  await tap(tab, button("Add a variant"));
  await see(tab, field("Name of the variant"));
  const sure = region("How sure");
  const draws = async (): Promise<string> => {
    await expectText(tab, part("status", "", sure), /drawn\./);
    return textOf(tab, part("table", "", sure));
  };
  const first = await draws();
  const seed = field("Seed", sure);
  await write(tab, seed, "2");
  await until("another seed's draws", draws, (drawn) => drawn !== first);
  await write(tab, seed, "1");
  await until("the first seed's draws", draws, (drawn) => drawn === first);
  return tablesOf(tab);
}

export async function rim({ tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Rim");
  await see(tab, part("img", /^Plan of the rim/));
  await see(tab, part("table", "", part("main", "")));
  return tablesOf(tab);
}

/** A shim that came out thinner, and what it foretells. */
export async function bench({ tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Bench");
  await tap(tab, button(/Set the shim/, part("navigation", "Steps")));
  await write(tab, field("Shim used"), "8.1");
  const outlook = region("Outlook");
  await expectText(tab, outlook, /\d mm/);
  return [await textOf(tab, outlook), (await see(tab, field("Shim used"))).described];
}

export async function sheet({ tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Sheet");
  await see(tab, part("img", "Code that opens this instrument"));
  expect((await allOf(tab, part("img", ""))).length).toBeGreaterThan(2);
  // How a drawing words what it has little room for goes by the fonts round it.
  return [...(await tablesOf(tab)), await textOf(tab, region("Planned for"))];
}
