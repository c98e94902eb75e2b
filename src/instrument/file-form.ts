import { withVersion } from "./file-version.ts";
import type { Instrument } from "./instrument.ts";

/** An instrument as a file holds it: what version 1 did not have is left out of a file of version 1. */
export type InstrumentForm = Omit<Instrument, "dome" | "seat" | "neck" | "bridge" | "strings"> & {
  readonly dome: Lacking<"dome", "method">;
  readonly seat?: Instrument["seat"];
  readonly neck: Lacking<"neck", "fan" | "fanFret">;
  readonly bridge: Lacking<"bridge", "slant">;
  readonly strings: Lacking<"strings", "pairGap" | "settling">;
};

type Lacking<Group extends keyof Instrument, Key extends keyof Instrument[Group]> = Omit<
  Instrument[Group],
  Key
> &
  Partial<Pick<Instrument[Group], Key>>;

/** `beside`: what else stands in the file and is made of it, whose version it must state too. */
export function fileForm(
  instrument: Instrument,
  beside: readonly Instrument[] = [],
): InstrumentForm {
  if ([instrument, ...beside].some((one) => withVersion(one).version === 2))
    return { ...instrument, version: 2 };
  const own = withVersion(instrument);
  const { seat: _, ...rest } = own;
  const { method: __, ...dome } = own.dome;
  const { fan: ___, fanFret: ____, ...neck } = own.neck;
  const { slant: _____, ...bridge } = own.bridge;
  const { pairGap: ______, settling: _______, ...strings } = own.strings;
  return { ...rest, dome, neck, bridge, strings };
}
