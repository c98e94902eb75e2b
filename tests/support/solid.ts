import createManifold, {
  type CrossSection,
  type Manifold,
  type ManifoldToplevel,
  type Vec3,
} from "manifold-3d";

/** A solid of facets, the kernel's own. */
export type Solid = Manifold;
type Pair = [number, number];

const tall = 80;
const deep = -160;

/**
 * Where solids are made and cut. Everything made here is freed by `close`.
 * Coordinates in mm, z out of the top.
 */
export interface Workshop {
  /** A body filled solid: half an outline, mirrored, standing square to z from far below to far above the top. */
  readonly levelBody: (half: readonly Pair[]) => Solid;
  /** The same of a whole outline, its places in their order round it, anticlockwise. */
  readonly levelBodyRound: (loop: readonly Pair[]) => Solid;
  /** The wood a dish takes off: everything over `height` from behind the tail end up to the break. */
  readonly dishCut: (height: (x: number, y: number) => number, cut: DishCut) => Solid;
  readonly subtract: (from: Solid, cut: Solid) => Solid;
  /** What is left under the plane z = (x − x0)·tan(lean). */
  readonly boardCut: (from: Solid, x0: number, lean: number) => Solid;
  /** The section square to the centreline, as y–z polygons. */
  readonly sectionAt: (solid: Solid, x: number) => Pair[][];
  /** The level section, as x–y polygons. */
  readonly levelAt: (solid: Solid, z: number) => Pair[][];
  readonly close: () => void;
}

interface DishCut {
  readonly breakX: number;
  readonly halfWidth: number;
  /** Longest allowed side of a facet in plan, both along and across. */
  readonly facet: number;
}

export async function openWorkshop(): Promise<Workshop> {
  const kernel = await createManifold();
  kernel.setup();
  const made: { delete(): void }[] = [];
  const keep = <T extends { delete(): void }>(thing: T): T => {
    made.push(thing);
    return thing;
  };
  const turned = new Map<Solid, Solid>();
  const onEnd = (solid: Solid): Solid => {
    const held = turned.get(solid) ?? keep(solid.transform(neckUp));
    turned.set(solid, held);
    return held;
  };
  return {
    levelBody: (half) => keep(standing(kernel, mirrored(half))),
    levelBodyRound: (loop) => keep(standing(kernel, loop)),
    dishCut: (height, cut) => keep(dishCut(kernel, height, cut)),
    subtract: (from, cut) => keep(from.subtract(cut)),
    boardCut: (from, x0, lean) =>
      keep(from.trimByPlane([Math.sin(lean), 0, -Math.cos(lean)], x0 * Math.sin(lean))),
    sectionAt: (solid, x) => polygonsOf(onEnd(solid).slice(x)),
    levelAt: (solid, z) => polygonsOf(solid.slice(z)),
    close: () => {
      for (const thing of made) thing.delete();
    },
  };
}

/** Stands a body on its tail: (x, y, z) becomes (y, z, x), so that a level slice is a section across it. */
const neckUp: Parameters<Manifold["transform"]>[0] = [
  0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1,
];

function polygonsOf(section: CrossSection): Pair[][] {
  const polygons = section.toPolygons().map((polygon) => polygon.map(([u, v]): Pair => [u, v]));
  section.delete();
  return polygons;
}

function mirrored(half: readonly Pair[]): Pair[] {
  const right = half.map(([x, y]): Pair => [x, -y]);
  const left = half.slice(1).map(([x, y]): Pair => [x, y]);
  return [...right, ...left.reverse()];
}

function standing(kernel: ManifoldToplevel, loop: readonly Pair[]): Solid {
  const bottom = kernel.Manifold.extrude([[...loop]], tall - deep);
  const body = bottom.translate(0, 0, deep);
  bottom.delete();
  return body;
}

/**
 * A patch of facets whose corners all lie on the surface, closed far above it. Built as a plain prism over a lattice
 * and then moved corner by corner in double precision, because a mesh handed in would be rounded to single.
 */
function dishCut(
  kernel: ManifoldToplevel,
  height: (x: number, y: number) => number,
  { breakX, halfWidth, facet }: DishCut,
): Solid {
  const behind = 5;
  const along = Math.ceil((breakX + behind) / facet);
  const across = 2 * Math.ceil(halfWidth / facet);
  const edge = Array.from({ length: along + 1 }, (_, i): Pair => [i, 0]);
  const prism = kernel.Manifold.extrude([[...edge, [along, 1], [0, 1]]], across, across - 1);
  const cut = prism.warp((corner: Vec3) => {
    const x = breakX - (corner[0] / along) * (breakX + behind);
    const y = (2 * (corner[2] / across) - 1) * halfWidth;
    const z = corner[1] > 0.5 ? 2 * tall : height(x, y);
    corner[0] = x;
    corner[1] = y;
    corner[2] = z;
  });
  prism.delete();
  return cut;
}

/** Height of a solid over the plan at (x, y): where a plumb line first meets it. */
export function topOf(solid: Solid, x: number, y: number): number {
  return meetingOf(solid, [x, y, 2 * tall], [x, y, deep])[2];
}

/** Where a straight line from one place to another first meets a solid. */
export function meetingOf(solid: Solid, from: Vec3, to: Vec3): Vec3 {
  const first = solid.rayCast(from, to).sort((a, b) => a.distance - b.distance)[0];
  if (first === undefined) throw new Error("the line meets no solid");
  return first.position;
}

/** Top edge of the side in a section: the highest corner of those farthest out, one on each hand. */
export function edgesOf(section: readonly (readonly Pair[])[]): { left: Pair; right: Pair } {
  const corners = section.flat();
  const out = Math.max(...corners.map(([y]) => y));
  const back = Math.min(...corners.map(([y]) => y));
  return { left: highestAt(corners, out), right: highestAt(corners, back) };
}

function highestAt(corners: readonly Pair[], y: number): Pair {
  const here = corners.filter((corner) => Math.abs(corner[0] - y) < 1e-7);
  return here.reduce((best, corner) => (corner[1] > best[1] ? corner : best));
}

/** Area of a solid's upright faces. Reads the single-precision mesh: good to about 1e-6 of the whole. */
export function uprightArea(solid: Solid): number {
  const mesh = solid.getMesh();
  let area = 0;
  for (let triangle = 0; triangle < mesh.numTri; triangle++) {
    const [a, b, c] = [...mesh.verts(triangle)].map(
      (corner) => [...mesh.position(corner)] as Vec3,
    ) as [Vec3, Vec3, Vec3];
    const across = crossOf(minus(b, a), minus(c, a));
    const size = Math.hypot(...across);
    if (Math.abs(across[2]) < 1e-3 * size) area += size / 2;
  }
  return area;
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

const crossOf = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
