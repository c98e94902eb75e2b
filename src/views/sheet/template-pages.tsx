import { useMemo, useState } from "react";
import type { Template } from "../../drawing/templates/template.ts";
import { templateSvg } from "../../drawing/templates/template-svg.ts";
import { tilingOf } from "../../drawing/templates/tiling.ts";
import type { Units } from "../../instrument/length.ts";
import { braceFits } from "../../profile/brace.ts";
import { givensOf } from "../../profile/givens.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import { BraceEntries } from "../fields/brace-entries.tsx";
import { braceShape, useBraces } from "../fields/braces.tsx";
import { NotFetched } from "../late-part.tsx";
import { addStyles } from "../late-styles.ts";
import type { Paper } from "../profile-sheet/paper.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { plateOf, templateOf } from "./template-choice.ts";
import type { TemplateName } from "./template-names.ts";
import styles from "./templates.css?inline";
import { TilePage } from "./tile-page.tsx";

addStyles(styles);

/** The template as a file in millimetres: SVG, or DXF, which is fetched when it is asked for. */
function SaveTemplate({ template }: { readonly template: Template }) {
  const name = useRimwright((state) => state.instrument.name);
  const called = (ending: string): string =>
    fileName(name, template.name.replaceAll(" ", "-").toLowerCase(), ending);
  const saveSvg = (): void => saveFile(called("svg"), "image/svg+xml", templateSvg(template));
  const [dxfMissing, setDxfMissing] = useState(false);
  const saveDxf = async (): Promise<void> => {
    try {
      const { dxfOf } = await import("../../drawing/templates/dxf.ts");
      saveFile(called("dxf"), "image/vnd.dxf", dxfOf(template));
      setDxfMissing(false);
    } catch {
      setDxfMissing(true);
    }
  };
  return (
    <>
      <button type="button" onClick={saveSvg}>
        Save SVG
      </button>
      <button type="button" onClick={() => void saveDxf()}>
        Save DXF
      </button>
      {dxfMissing && <NotFetched what="What writes DXF" again="Press again" />}
    </>
  );
}

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
  const plate = plateOf(name);
  const [wishes] = useBraces(plate ?? "Top");
  const set = useMemo(() => givensOf(plan.instrument), [plan.instrument]);
  const template = useMemo(() => {
    if (!set.ok) return null;
    const shapes = plate === null ? [] : wishes.map((wish) => braceShape(plate, wish, set.givens));
    const fitting = shapes.filter(({ length, radius }) => braceFits(length, radius));
    return templateOf(name, set.givens, plan.profile, units, fitting);
  }, [name, plate, set, plan.profile, units, wishes]);
  const tiling = useMemo(
    () => (template === null ? null : tilingOf(template, ...rooms[paper])),
    [template, paper],
  );
  return (
    <>
      <div className="sheet-tools">
        {plate !== null && set.ok && <BraceEntries plate={plate} givens={set.givens} />}
        {template !== null && <SaveTemplate template={template} />}
        <p role="status">{said(plate !== null, tiling?.tiles.length ?? null)}</p>
      </div>
      {template !== null && tiling !== null && (
        <section
          className={`tiles tiles-${paper.toLowerCase()}`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: on a small screen they scroll, which must be done by keyboard too.
          tabIndex={0}
          aria-label="The pages as they print"
        >
          {tiling.tiles.map((tile) => (
            <TilePage
              key={`${tile.column} ${tile.row}`}
              instrument={plan.instrument.name}
              {...{ template, tiling, tile }}
            />
          ))}
        </section>
      )}
    </>
  );
}

function said(braces: boolean, pages: number | null): string {
  if (pages === null)
    return braces
      ? "A brace cannot be longer than its circle is wide."
      : "The shim is too thin to cut a gauge for.";
  return pages === 1 ? "One page, full size." : `${pages} pages, full size.`;
}
