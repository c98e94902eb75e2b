import type { Template } from "../../drawing/templates/template.ts";
import { templatePath } from "../../drawing/templates/template-svg.ts";
import { crossArm, type Tile, type Tiling } from "../../drawing/templates/tiling.ts";
import { CheckBar } from "../profile-sheet/check-bar.tsx";

interface Props {
  readonly template: Template;
  readonly instrument: string;
  readonly tiling: Tiling;
  readonly tile: Tile;
}

/** What the page's edge is drawn within it by, mm, so that its line is whole. */
const hair = 0.1;

/** One page of a template at full size, with the crosses to lay on its neighbours'. */
export function TilePage({ template, instrument, tiling, tile }: Props) {
  const [width, height] = [tile.right - tile.left, tile.top - tile.bottom];
  const many = tiling.tiles.length > 1;
  const number = tiling.tiles.indexOf(tile) + 1;
  return (
    <article className="tile" aria-label={`${template.name}, page ${number}`}>
      <svg
        className="tile-drawing"
        role="img"
        aria-label={`${template.name}, part ${number} of ${tiling.tiles.length}, full size`}
        width={`${width}mm`}
        height={`${height}mm`}
        viewBox={`${tile.left} ${-tile.top} ${width} ${height}`}
      >
        <rect
          className="tile-edge"
          x={tile.left + hair}
          y={-tile.top + hair}
          width={width - 2 * hair}
          height={height - 2 * hair}
        />
        {template.lines.map((line, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: a template is redrawn whole, and its order is its only identity.
            key={i}
            className={`tile-${line.layer}`}
            data-role={line.role}
            d={templatePath(line)}
          />
        ))}
        {template.labels.map(({ x, y, size, anchor, upright, text }) => (
          <text
            key={`${text} ${x} ${y}`}
            x={x}
            y={-y}
            fontSize={size}
            textAnchor={anchor}
            transform={upright ? `rotate(-90 ${x} ${-y})` : undefined}
          >
            {text}
          </text>
        ))}
        {many &&
          tile.crosses.map(([x, y]) => (
            <path
              key={`${x} ${y}`}
              className="tile-cross"
              d={`M${x - crossArm} ${-y}H${x + crossArm}M${x} ${-y - crossArm}V${-y + crossArm}`}
            />
          ))}
      </svg>
      <footer className="tile-foot">
        <CheckBar />
        {many && <PageMap tiling={tiling} tile={tile} />}
        <p>
          <b>
            {template.name}, page {number} of {tiling.tiles.length}
          </b>
          <span className="tile-name">{instrument}</span>
          {many && "Lay each cross on the same cross of the next page."}
        </p>
      </footer>
    </article>
  );
}

/** mm a page takes up on the map. */
const cell = { across: 5, down: 6 };

/** How the pages lie, this one dark. */
function PageMap({ tiling: { columns, rows, tiles }, tile }: Pick<Props, "tiling" | "tile">) {
  const [width, height] = [columns * cell.across, rows * cell.down];
  return (
    <svg
      className="tile-map"
      role="img"
      aria-label={`Row ${tile.row + 1} of ${rows}, column ${tile.column + 1} of ${columns}`}
      width={`${width + 1}mm`}
      height={`${height + 1}mm`}
      viewBox={`-0.5 -0.5 ${width + 1} ${height + 1}`}
    >
      {tiles.map((one, i) => (
        <g key={`${one.column} ${one.row}`} data-here={one === tile ? "" : undefined}>
          <rect
            x={one.column * cell.across}
            y={one.row * cell.down}
            width={cell.across}
            height={cell.down}
          />
          <text x={(one.column + 0.5) * cell.across} y={(one.row + 0.5) * cell.down + 1}>
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
  );
}
