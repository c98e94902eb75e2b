import { useMemo, useState } from "react";
import { tilingOf } from "../../drawing/tiling.ts";
import type { Units } from "../../instrument/length.ts";
import { braceFits } from "../../profile/brace.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import type { Paper } from "../sheet/paper.ts";
import { SaveTemplate } from "./save-template.tsx";
import { type BraceWish, braceShape, templateOf } from "./template-choice.ts";
import type { TemplateName } from "./template-names.ts";
import { TilePage } from "./tile-page.tsx";
import "./templates.css";

interface Props {
  readonly name: TemplateName;
  readonly plan: ShownPlan;
  readonly units: Units;
  readonly paper: Paper;
}

/** Room for the drawing on a page, mm: what its margins and its foot leave. */
const rooms: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  A4: [190, 252],
  Letter: [190, 234],
};

/** A template at full size over as many pages as it needs, and as files for a plotter or a cutter. */
export function TemplatePages({ name, plan, units, paper }: Props) {
  const [wish, setWish] = useState<BraceWish>({});
  const brace = name === "Top brace" || name === "Back brace" ? braceShape(name, plan, wish) : null;
  const fits = brace === null || braceFits(brace.length, brace.radius);
  const template = useMemo(
    () => (fits ? templateOf(name, plan, units, wish) : null),
    [name, plan, units, wish, fits],
  );
  const tiling = useMemo(
    () => (template === null ? null : tilingOf(template, ...rooms[paper])),
    [template, paper],
  );
  return (
    <>
      <div className="sheet-tools">
        {brace !== null && (
          <>
            <LengthEntry
              {...{ label: `${name}, length`, value: brace.length, least: 20, most: 1000 }}
              onChange={(length) => length !== null && setWish({ ...wish, length })}
            />
            <LengthEntry
              {...{ label: `${name}, radius`, value: brace.radius, least: 100, most: 1e6 }}
              {...{ none: "straight", feet: true }}
              onChange={(radius) => setWish({ ...wish, radius })}
            />
          </>
        )}
        {template !== null && <SaveTemplate template={template} />}
        <p role="status">{said(fits, tiling?.tiles.length ?? null)}</p>
      </div>
      {template !== null && tiling !== null && (
        <div className={`tiles tiles-${paper.toLowerCase()}`}>
          {tiling.tiles.map((tile) => (
            <TilePage
              key={`${tile.column} ${tile.row}`}
              instrument={plan.instrument.name}
              {...{ template, tiling, tile }}
            />
          ))}
        </div>
      )}
    </>
  );
}

function said(fits: boolean, pages: number | null): string {
  if (!fits) return "A brace cannot be longer than its circle is wide.";
  if (pages === null) return "The shim is too thin to cut a gauge for.";
  return pages === 1 ? "One page, full size." : `${pages} pages, full size.`;
}
