import { asJson } from "../document/json.ts";

/** Which instrument was on screen, in which visit, and when that was written down, ms since 1970. */
export interface LastShown {
  readonly id: string;
  readonly run: string;
  readonly time: number;
}

/** From any JSON value; undefined where it is none. */
export function readLastShown(json: unknown): LastShown | undefined {
  const { id, run, time } = asJson(json);
  return typeof id === "string" && typeof run === "string" && typeof time === "number"
    ? { id, run, time }
    : undefined;
}

/**
 * The instrument a visit goes on with: what the tab's copy shows, or what the shelf was told of later. A
 * browser writes a tab's copy down some seconds late: killed in between, it would go back to the instrument
 * before. What another visit showed is followed by a new tab only, which has no instrument of its own.
 */
export function goesOnWith(
  copied: LastShown | undefined,
  told: LastShown | undefined,
  isNewTab: boolean,
): string | undefined {
  if (told === undefined || (copied !== undefined && told.time <= copied.time)) return copied?.id;
  return isNewTab || told.run === copied?.run ? told.id : copied?.id;
}
