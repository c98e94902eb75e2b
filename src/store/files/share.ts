import { dequal as equal } from "dequal/lite";
import { defaultInstrument } from "../../instrument/default-instrument.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { type ReadInstrumentResult, readInstrument } from "../../instrument/read-instrument.ts";
import { asJson } from "../document/json.ts";
import { hasPlan, solvedPlan } from "../document/plan.ts";
import { openMark } from "./shared-address.ts";

/** What an address states the differences from: the default instrument as it was when this form was made. */
const base: Instrument = {
  ...defaultInstrument,
  windows: { ...defaultInstrument.windows, bridgeClearance: [0.4, 1.6] },
};

/**
 * An instrument as part of an address: what differs from the base, as JSON, deflated (RFC 1951),
 * in base64url (RFC 4648). The digit in front is the version of this form.
 */
async function shareText(instrument: Instrument): Promise<string> {
  const json = JSON.stringify(difference(instrument, base) ?? {});
  return `1${base64url(await deflated(json))}`;
}

/** The address of the page at `here` that opens the instrument. */
export async function openAddress(instrument: Instrument, here: string): Promise<string> {
  return `${here.replace(/#.*$/, "")}${openMark}${await shareText(instrument)}`;
}

/** Longest text taken in, and most bytes it may unfold to: a short text can be made to unfold to gigabytes. */
const shareLimits = { text: 20_000, bytes: 200_000 } as const;

/** The instrument a shared text holds, checked like any other input. */
export async function readShareText(text: string): Promise<ReadInstrumentResult> {
  if (text.length > shareLimits.text)
    return refused("The address is too long to hold an instrument.");
  if (!text.startsWith("1"))
    return refused("The address comes from a newer Rimwright, or is damaged.");
  try {
    const json: unknown = JSON.parse(await inflated(bytesOf(text.slice(1))));
    return withPlan(readInstrument(merged(base, json)));
  } catch {
    return refused("The address is damaged: no instrument can be read from it.");
  }
}

/** An address opens what can be drawn: of an instrument without a plan it says why there is none. */
function withPlan(read: ReadInstrumentResult): ReadInstrumentResult {
  if (!read.ok || hasPlan(read.instrument)) return read;
  const plan = solvedPlan(read.instrument);
  if (plan.ok) return read;
  const why = sayPhrase(plan.refusal.why, "mm");
  return refused(`The address holds an instrument that has no plan. ${why}`);
}

const refused = (message: string): ReadInstrumentResult => ({
  ok: false,
  problems: [{ path: "", message }],
});

/** Branches taken whole: what they lack counts too. */
const whole = ["tolerances", "tracing", "tracingTreble"];

/** The branches of `value` that differ from `base`; undefined when none does. Lists are kept whole. */
function difference(value: unknown, base: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return equal(value, base) ? undefined : value;
  }
  const changed = Object.entries(value).flatMap(([key, one]) => {
    const own = asJson(base)[key];
    const differs = whole.includes(key) && !equal(one, own) ? one : difference(one, own);
    return differs === undefined ? [] : [[key, differs] as const];
  });
  return changed.length === 0 ? undefined : Object.fromEntries(changed);
}

/** `base` with the branches of `change` laid over it. Only keys the change has of its own count. */
function merged(base: unknown, change: unknown): unknown {
  if (typeof change !== "object" || change === null || Array.isArray(change)) return change;
  if (typeof base !== "object" || base === null) return change;
  const laid = Object.entries(change)
    .filter(([key]) => key !== "__proto__")
    .map(([key, one]) => {
      const own = asJson(base)[key];
      return [key, whole.includes(key) ? one : merged(own, one)] as const;
    });
  return { ...base, ...Object.fromEntries(laid) };
}

async function deflated(text: string): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** The text deflated into `bytes`; throws on damaged data, and on more than the limit. */
async function inflated(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  const reader = stream.getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    size += part.value.length;
    if (size > shareLimits.bytes) {
      await reader.cancel();
      throw new RangeError("unfolds to too much");
    }
    parts.push(part.value);
  }
  return new TextDecoder("utf-8", { fatal: true }).decode(await new Blob(parts).arrayBuffer());
}

function base64url(bytes: Uint8Array): string {
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
