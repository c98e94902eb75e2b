import { expect, test } from "vitest";
import { fileForm } from "../../../src/instrument/file-version.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import { fileEntryOf } from "../../../src/store/files/shelf-file.ts";

test("the order of keys says nothing: a last good instrument that is the same is left out", () => {
  const { instrument } = firstState;
  const turned = Object.fromEntries(Object.entries(instrument).reverse());
  const lastGood = { ...instrument, ...turned };
  const reversed = { ...turned, ...instrument };
  expect(Object.keys(reversed)).not.toEqual(Object.keys(lastGood));
  const entry = fileEntryOf({ ...documentIn(firstState), instrument: reversed, lastGood });
  expect(entry).toEqual({ instrument: fileForm(instrument) });
  expect(entry).not.toHaveProperty("lastGood");
});
