/**
 * A drawing as data, in the page's own units (px on screen, mm on paper), y downward as in SVG.
 * React figures and the SVG writer both read it, so what is printed or tested is what is shown.
 */
export interface Scene {
  readonly width: number;
  readonly height: number;
  /** One sentence for a reader who cannot see it. */
  readonly title: string;
  readonly shapes: readonly Shape[];
}

export type Shape = PathShape | TextShape | GroupShape;

export interface PathShape {
  readonly kind: "path";
  /** Names what is drawn ("datum", "fret plane"); stable, for tests and for styling. */
  readonly role: string;
  readonly line: LineStyle;
  readonly fill?: FillStyle;
  readonly d: string;
}

export interface TextShape {
  readonly kind: "text";
  readonly role: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  /** Font size in the scene's units. */
  readonly size: number;
  readonly strong?: boolean;
  readonly text: string;
}

export interface GroupShape {
  readonly kind: "group";
  readonly role: string;
  readonly shapes: readonly Shape[];
}

/**
 * Line types of technical drawing (ISO 128): visible thick, thin, hidden dashed, centre chain; none for
 * fills. The others tell one variant from another.
 */
export type LineStyle =
  | "none"
  | "thick"
  | "thin"
  | "dashed"
  | "chain"
  | "dotted"
  | "long-dashed"
  | "double-chain"
  | "fine-dashed"
  | "dash-dotted";

/** Widths, and lengths of dashes and gaps, in the scene's units. */
export const lineStrokes: Readonly<
  Record<LineStyle, { readonly width: number; readonly dashes?: string }>
> = {
  none: { width: 0 },
  thick: { width: 1.8 },
  thin: { width: 0.8 },
  dashed: { width: 1, dashes: "6 3" },
  chain: { width: 1, dashes: "14 3 2 3" },
  dotted: { width: 1.4, dashes: "1.4 3" },
  "long-dashed": { width: 1.1, dashes: "16 5" },
  "double-chain": { width: 1.1, dashes: "14 3 2 3 2 3" },
  "fine-dashed": { width: 1.1, dashes: "3 2" },
  "dash-dotted": { width: 1.4, dashes: "6 3 1.4 3" },
};

export type FillStyle = "paper" | "ink" | "dome" | "flat" | "wood" | "window";

/** Class names of a shape's look; the colours are the style sheet's. */
export const pathClass = ({ line, fill }: PathShape): string =>
  fill === undefined ? `line-${line}` : `line-${line} fill-${fill}`;

export const textClass = ({ strong }: TextShape): string =>
  strong ? "figure-text figure-strong" : "figure-text";
