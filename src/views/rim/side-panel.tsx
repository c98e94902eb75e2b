import { useState } from "react";
import { sidePatternOf } from "../../drawing/side/side-pattern.ts";
import { sidePatternHeight } from "../../drawing/side/side-pattern-layout.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Side } from "../../profile/side.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { measureFormat } from "../figures/measure-format.ts";
import { useRimwright } from "../store-context.ts";
import { type Rim, RimFigure, type RimSide, sideNames } from "./rim-figure.tsx";

/** The sides unrolled, and whether the strip at hand is wide enough for them. */
export function SidePanel({ rim }: { readonly rim: Rim }) {
  const [stock, setStock] = useState<number | null>(null);
  const [first, second] = rim.sides;
  return (
    <section aria-labelledby="rim-side">
      <h2 id="rim-side">Side pattern</h2>
      {rim.sides.map((on) => (
        <SideFigure
          key={on.half.side}
          {...{ givens: rim.givens, on, stock, named: rim.sides.length > 1 }}
        />
      ))}
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
      {first !== undefined && (
        <StripVerdict stock={stock} side={deeperOf(first.side, second?.side ?? first.side)} />
      )}
    </section>
  );
}

const deeperOf = (one: Side, other: Side): Side =>
  other.deepest.under > one.deepest.under ? other : one;

interface SideFigureProps {
  readonly givens: Givens;
  readonly on: RimSide;
  readonly stock: number | null;
  /** Whether it must be said which side it is. */
  readonly named: boolean;
}

function SideFigure({ givens, on: { half, side }, stock, named }: SideFigureProps) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const breakAlong = givens.seat === null ? half.outline.arcLength(givens.breakX) : side.length;
  return (
    <>
      {named && <h3>{sideNames[half.side]}</h3>}
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
        {named ? "This side" : "Each side"} needs a strip {words.length(side.deepest.under)} wide
        and {words.length(side.length)} long, finished, from the tail seam to the middle of the neck
        end; allow what your bending and your joint need. The strip’s straight edge is the level
        rim.{!named && " Turn the pattern over for the other side."}
      </p>
    </>
  );
}

function StripVerdict({ stock, side }: { readonly stock: number | null; readonly side: Side }) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const { under, along } = side.deepest;
  const short = stock === null ? 0 : under - stock;
  const where = along < 1 ? "at the tail seam" : `${words.length(along)} along the side`;
  return (
    <p role="status" className={short > 0 ? "rim-warn" : "rim-well"}>
      {stock !== null &&
        (short > 0
          ? `Too narrow: ${words.length(stock)} falls ${words.length(short)} short, most ${where}.`
          : `Wide enough, with ${words.length(-short)} to spare.`)}
    </p>
  );
}
