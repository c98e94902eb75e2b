import { describe, expect, test } from "vitest";
import { capHeight, textBox, textWidth } from "../../src/drawing/lettering.ts";

const characters =
  " .,:;'|!()[]/-\"0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ°×−±″′⁄–=+<>%@";

// Advances of those characters in thousandths of an em, as Chromium measured them on a canvas.
const measured = {
  "DejaVu Sans":
    "318 318 318 337 337 275 337 401 390 390 390 390 337 361 460 636 636 636 636 636 636 636 636 636 636 613 635 550 635 615 352 635 634 278 278 579 278 974 634 612 635 635 411 521 392 634 592 818 592 592 525 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 611 732 684 989 685 611 685 500 838 838 838 374 227 167 500 838 838 838 838 950 1000",
  "Liberation Sans":
    "278 278 278 278 278 191 260 278 333 333 278 278 278 333 355 556 556 556 556 556 556 556 556 556 556 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 400 584 584 549 354 188 167 556 584 584 584 584 889 1015",
};
const measuredBold = {
  "DejaVu Sans":
    "348 380 380 400 400 306 365 456 457 457 457 457 365 415 521 696 696 696 696 696 696 696 696 696 696 675 716 593 716 678 435 716 712 343 343 665 343 1042 712 687 716 716 493 595 478 712 652 924 645 652 582 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 682 812 774 1103 771 724 725 500 838 838 838 447 264 167 500 838 838 838 838 1002 1000",
  "Liberation Sans":
    "278 278 278 333 333 238 280 333 333 333 333 333 278 333 474 556 556 556 556 556 556 556 556 556 556 556 611 556 611 556 333 611 611 278 278 556 278 889 611 611 611 611 389 556 333 611 556 778 556 556 500 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 611 722 667 944 667 667 611 400 584 584 549 479 240 167 556 584 584 584 584 889 975",
};

describe("textWidth", () => {
  for (const [strong, faces] of [
    [false, measured],
    [true, measuredBold],
  ] as const) {
    test.each(Object.entries(faces))(
      `never falls short of ${strong ? "bold " : ""}%s`,
      (_, row) => {
        const advances = row.split(" ").map(Number);
        const glyphs = [...characters];
        expect(advances).toHaveLength(glyphs.length);
        for (const [i, glyph] of glyphs.entries()) {
          const least = advances[i] ?? Number.NaN;
          expect(textWidth(glyph, 1000, strong), glyph).toBeGreaterThanOrEqual(least);
        }
      },
    );
  }

  test("is not much more than the widest of them", () => {
    expect(textWidth("saddle exposed 3.44 mm", 1000)).toBeLessThan(1.1 * 12_900);
  });
});

describe("textBox", () => {
  const text = { kind: "text", role: "", x: 100, y: 50, size: 10, text: "0000" } as const;

  test("stands on the line, from the anchor", () => {
    const { left, right, top, bottom } = textBox({ ...text, anchor: "end" });
    expect(right).toBe(100);
    expect(left).toBeCloseTo(100 - 4 * 6.5, 9);
    expect(top).toBeCloseTo(50 - capHeight(10), 9);
    expect(bottom).toBeGreaterThan(50);
    expect(textBox({ ...text, anchor: "start" }).left).toBe(100);
  });

  test("is centred on a middle anchor", () => {
    const { left, right } = textBox({ ...text, anchor: "middle" });
    expect((left + right) / 2).toBeCloseTo(100, 9);
  });
});
