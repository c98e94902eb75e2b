import { useState } from "react";
import { sidePatternOf } from "../../drawing/side/side-pattern.ts";
import { sidePatternHeight } from "../../drawing/side/side-pattern-layout.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { measureFormat } from "../figures/measure-format.ts";
import { useRimwright } from "../store-context.ts";
import type { Rim } from "./rim-figure.tsx";
import { RimFigure } from "./rim-figure.tsx";

/** The side unrolled, and whether the strip at hand is wide enough for it. */
export function SidePanel({ rim: { givens, side } }: { readonly rim: Rim }) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const [stock, setStock] = useState<number | null>(null);
  const breakAlong = givens.seat === null ? givens.outline.arcLength(givens.breakX) : side.length;
  const { under, along } = side.deepest;
  const short = stock === null ? 0 : under - stock;
  const where = along < 1 ? "at the tail seam" : `${words.length(along)} along the side`;
  return (
    <section aria-labelledby="rim-side">
      <h2 id="rim-side">Side pattern</h2>
      <RimFigure
        first={{ width: 760, height: 360 }}
        draw={(width) =>
          sidePatternOf(side, {
            ...{ width, height: sidePatternHeight(side, stock, width) },
            ...{ words, stock, breakAlong },
          })
        }
      />
      <p>
        Each side needs a strip {words.length(under)} wide and {words.length(side.length)} long,
        finished, from the tail seam to the middle of the neck end; allow what your bending and your
        joint need. The strip’s straight edge is the level rim. Turn the pattern over for the other
        side.
      </p>
      <LengthEntry
        {...{
          label: "Strip you have, width",
          value: stock,
          least: 10,
          most: 500,
          none: "not stated",
        }}
        onChange={setStock}
      />
      <p role="status" className={short > 0 ? "rim-warn" : "rim-well"}>
        {stock !== null &&
          (short > 0
            ? `Too narrow: ${words.length(stock)} falls ${words.length(short)} short, most ${where}.`
            : `Wide enough, with ${words.length(-short)} to spare.`)}
      </p>
    </section>
  );
}
