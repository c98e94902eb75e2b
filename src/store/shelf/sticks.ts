import { newId } from "../document/new-id.ts";
import { mostSticks, type OwnedStick } from "../files/sticks-form.ts";
import type { OwnedSticks } from "./shop.ts";

const mostSteps = 100;

/** `sticks` after an edit of those owned, with the way back. Edits in a row of one name are one step; of null, each is its own. */
function edited(
  sticks: OwnedSticks,
  step: string | null,
  owned: readonly OwnedStick[],
): OwnedSticks {
  const goesOn = step !== null && step === sticks.step;
  const past = goesOn ? sticks.past : [...sticks.past, sticks.owned].slice(-mostSteps);
  return { owned, past, future: [], step };
}

/** With one more; as it was where there is no room for it. */
export const addStick = (sticks: OwnedSticks, stick: Omit<OwnedStick, "id">): OwnedSticks =>
  sticks.owned.length < mostSticks
    ? edited(sticks, null, [...sticks.owned, { ...stick, id: newId() }])
    : sticks;

export const removeStick = (sticks: OwnedSticks, id: string): OwnedSticks =>
  edited(
    sticks,
    null,
    sticks.owned.filter((one) => one.id !== id),
  );

/** One of a stick's parts changed; typing on in the same one is the same step. */
export const changeStick = (
  sticks: OwnedSticks,
  id: string,
  part: Partial<Omit<OwnedStick, "id">>,
): OwnedSticks =>
  edited(
    sticks,
    `${Object.keys(part).join()} ${id}`,
    sticks.owned.map((one) => (one.id === id ? { ...one, ...part } : one)),
  );

/** With those of a file that are not owned to the letter; under an id of their own where theirs is taken. In one step. */
export function importSticks(sticks: OwnedSticks, found: readonly OwnedStick[]): OwnedSticks {
  const fresh = newSticks(sticks, found).map((one) =>
    sticks.owned.some(({ id }) => id === one.id) ? { ...one, id: newId() } : one,
  );
  return fresh.length === 0
    ? sticks
    : edited(sticks, null, [...sticks.owned, ...fresh].slice(0, mostSticks));
}

/** Those of `found` that are not owned to the letter. */
export const newSticks = (
  { owned }: OwnedSticks,
  found: readonly OwnedStick[],
): readonly OwnedStick[] =>
  found.filter(
    ({ id, name, thickness, width }) =>
      !owned.some(
        (one) =>
          one.id === id && one.name === name && one.thickness === thickness && one.width === width,
      ),
  );

export function undoSticks(sticks: OwnedSticks): OwnedSticks {
  const { owned, past, future } = sticks;
  const before = past.at(-1);
  if (before === undefined) return sticks;
  return { owned: before, past: past.slice(0, -1), future: [owned, ...future], step: null };
}

export function redoSticks(sticks: OwnedSticks): OwnedSticks {
  const { owned, past, future } = sticks;
  const [after, ...rest] = future;
  if (after === undefined) return sticks;
  return { owned: after, past: [...past, owned], future: rest, step: null };
}
