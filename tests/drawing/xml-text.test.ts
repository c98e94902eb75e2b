import { expect, test } from "vitest";
import { xmlText } from "../../src/drawing/xml-text.ts";

test("holds only what XML may hold, whatever it was given", () => {
  const every = Array.from({ length: 0x20 }, (_, i) => String.fromCharCode(i)).join("");
  expect(xmlText(`a${every}b`)).toBe("a\t\n\rb");
  expect(xmlText("\uD800x\uDC00 \uFFFE\uFFFF 🎸 ü")).toBe("x  🎸 ü");
  expect(xmlText('<a b="c">&')).toBe("&lt;a b=&quot;c&quot;&gt;&amp;");
});
