import { instrumentSchema } from "./schema.ts";

/** A name in a file that is no field's, and the known name it is most like, where there is one. */
export interface UnknownKey {
  /** Such as `"body.backRadiuss"`. */
  readonly path: string;
  readonly nearest: string | null;
}

type Node = Readonly<Record<string, unknown>>;

const groupNames = [
  "body",
  "dome",
  "shim",
  "seat",
  "neck",
  "bridge",
  "strings",
  "target",
  "windows",
];

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The names an instrument's JSON may have in a group, or at its top for `""`: those of the default one, the tracings and a left-handed one's mark. */
function knownIn(group: string): readonly string[] {
  const names = Object.keys(instrumentSchema.shape);
  if (group === "") return names;
  const defaults: unknown = instrumentSchema.parse({});
  const stated = isNode(defaults) ? defaults[group] : undefined;
  const traced = group === "body" ? ["tracing", "tracingTreble", "leftHanded"] : [];
  return [...Object.keys(isNode(stated) ? stated : {}), ...traced];
}

/** Whether an instrument's JSON is empty or states something that is known. */
export const statesSomethingKnown = (json: object): boolean => {
  const names = Object.keys(json);
  return names.length === 0 || names.some((name) => Object.hasOwn(instrumentSchema.shape, name));
};

/** The names in an instrument's JSON that reading it leaves out, in its own order; at most a hundred. */
export function unknownKeys(json: unknown): readonly UnknownKey[] {
  if (!isNode(json)) return [];
  const top = strangersIn(json, "", knownIn(""));
  const inGroups = groupNames.flatMap((group) => {
    const node = json[group];
    return isNode(node) ? strangersIn(node, `${group}.`, knownIn(group)) : [];
  });
  return [...top, ...inGroups].slice(0, most);
}

/** Files of another kind may hold any number of names. */
const most = 100;

function strangersIn(node: Node, prefix: string, known: readonly string[]): readonly UnknownKey[] {
  return Object.keys(node)
    .filter((name) => !known.includes(name))
    .slice(0, most)
    .map((name) => {
      const nearest = nearestName(name, known);
      return { path: prefix + name, nearest: nearest === null ? null : prefix + nearest };
    });
}

/** The known name fewest slips away, two at most and fewer in a short one, capitals apart; null when none is so near. */
function nearestName(name: string, known: readonly string[]): string | null {
  const near = known
    .map((other) => ({ other, slips: slipsBetween(name.toLowerCase(), other.toLowerCase()) }))
    .filter(({ slips }) => slips <= Math.min(2, (name.length - 1) / 2))
    .sort((a, b) => a.slips - b.slips);
  return near[0]?.other ?? null;
}

/** Letters to put in, leave out or change to make one word of the other (Levenshtein's distance), or 3 for more than two. */
function slipsBetween(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 3;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(
        Math.min(
          (row[j] ?? 0) + 1,
          (next[j - 1] ?? 0) + 1,
          (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1),
        ),
      );
    row = next;
  }
  return row[b.length] ?? 0;
}
