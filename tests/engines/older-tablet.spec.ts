import { expect, test } from "@playwright/test";
import { allOf, button, expectText, open, part, see } from "./builder.ts";
import type { Look } from "./engine.ts";
import { firstVisit, startFrom, type } from "./layout-steps.ts";
import { exportAndImport, renameAndUndo } from "./shelf-steps.ts";
import { openWebKit } from "./webkit.ts";
import { withWorkplace } from "./workplace.ts";

const openOlder = (look: Look) => openWebKit(look, "older");

/** A tablet that got its last update before popovers and before the browser said how much room it gives. */
test("a tablet without popovers or word on storage: all opens, and what is in no file is told of", async () => {
  const look = { width: 820, height: 1180, dark: false };
  await withWorkplace(openOlder, look, async (place) => {
    const { engine, tab } = place;
    await firstVisit(place);
    expect(await tab.run(() => ["popover" in document.body, "storage" in navigator])).toEqual([
      false,
      false,
    ]);
    expect(await allOf(tab, button(/^Parlour size/)), "the list is closed").toEqual([]);
    await type(place);
    await renameAndUndo(place);
    await open(tab, "Shelf");
    await expectText(tab, part("main", ""), /changes in no file/);
    await exportAndImport(place);
    await open(tab, "Layout");
    await see(tab, part("img", /^Section along/));
    await startFrom(place);
    expect(engine.faults()).toEqual([]);
  });
});
