import type { Template } from "../../drawing/template.ts";
import { templateSvg } from "../../drawing/template-svg.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";

/** The template as a file in millimetres: SVG, or DXF, which is fetched when it is asked for. */
export function SaveTemplate({ template }: { readonly template: Template }) {
  const name = useRimwright((state) => state.instrument.name);
  const called = (ending: string): string =>
    fileName(name, template.name.replaceAll(" ", "-").toLowerCase(), ending);
  const saveSvg = (): void => saveFile(called("svg"), "image/svg+xml", templateSvg(template));
  const saveDxf = async (): Promise<void> => {
    const { dxfOf } = await import("../../drawing/dxf.ts");
    saveFile(called("dxf"), "image/vnd.dxf", dxfOf(template));
  };
  return (
    <>
      <button type="button" onClick={saveSvg}>
        Save SVG
      </button>
      <button type="button" onClick={() => void saveDxf()}>
        Save DXF
      </button>
    </>
  );
}
