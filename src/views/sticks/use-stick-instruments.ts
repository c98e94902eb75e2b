import { useEffect, useMemo, useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { presets } from "../../instrument/presets.ts";
import type { Model } from "../../store/document/state.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import type { StickSource } from "../../store/shelf/shop.ts";
import { useRimwright, useShelfSlot } from "../store-context.ts";

export interface StickInstruments {
  readonly instruments: readonly Instrument[];
  /** The shelf's models. */
  readonly models: readonly Model[];
  /** The ids of models by those of what was made from them. */
  readonly modelOf: ReadonlyMap<string, string>;
  /** How the shelf's own are coming, in words; "" once they are here. */
  readonly told: string;
}

/** The instruments there are to be laid on sticks: invented ones, the shelf's, and the open one as it is now. Each id once. */
export function useStickInstruments(source: StickSource): StickInstruments {
  const open = useRimwright(({ lastGood }) => lastGood);
  const { kept, models, modelOf, told } = useKept(source !== "presets");
  const instruments = useMemo(() => {
    const invented = source === "shelf" ? [] : presets;
    const byId = new Map([...invented, ...kept].map((one) => [one.id, one]));
    const isThere = byId.has(open.id);
    if (isThere) byId.set(open.id, open);
    const all = [...byId.values()];
    return isThere || source === "presets" ? all : [open, ...all];
  }, [source, kept, open]);
  return { instruments, models, modelOf, told };
}

interface Kept extends Omit<StickInstruments, "instruments"> {
  readonly kept: readonly Instrument[];
}

const none: Kept = { kept: [], models: [], modelOf: new Map(), told: "" };

function useKept(wanted: boolean): Kept {
  const slot = useShelfSlot();
  const shelf = slot.is === "open" ? slot.shelf : null;
  const [kept, setKept] = useState(none);
  useEffect(() => {
    if (!wanted || shelf === null) return setKept(none);
    let stopped = false;
    const reading = readAll(shelf, (so) => {
      if (!stopped) setKept(so);
      return stopped;
    });
    reading.catch(() => {
      if (!stopped) setKept({ ...none, told: "The shelf cannot be read now; its view says why." });
    });
    return () => {
      stopped = true;
    };
  }, [wanted, shelf]);
  return kept;
}

/** Asked for at once: the database answers many as soon as one. */
const atOnce = 50;

/** What was read of each shelf, so that only what changed since is read again. */
const known = new WeakMap<
  Shelf,
  Map<string, readonly [revision: number, instrument: Instrument]>
>();

/** Reads all that a shelf has, telling now and then how far it is, until that answers that it is enough. */
async function readAll(shelf: Shelf, tell: (kept: Kept) => boolean): Promise<void> {
  const before = known.get(shelf);
  const read: NonNullable<typeof before> = new Map();
  known.set(shelf, read);
  const cards = await shelf.cards();
  const models = cards.filter(({ isModel }) => isModel);
  const modelOf = new Map(
    cards.flatMap(({ id, madeFrom }) => (madeFrom === undefined ? [] : [[id, madeFrom] as const])),
  );
  for (let from = 0; from < cards.length; from += atOnce) {
    const some = cards.slice(from, from + atOnce);
    const documents = await Promise.all(
      some.map(({ id, revision }) => {
        const had = before?.get(id);
        return had?.[0] === revision ? { lastGood: had[1] } : shelf.document(id);
      }),
    );
    some.forEach(({ id, revision }, i) => {
      const document = documents[i];
      if (document !== undefined) read.set(id, [revision, document.lastGood]);
    });
    const told = `Reading the shelf: ${read.size} of ${cards.length}…`;
    const first = from === 0 && cards.length > atOnce;
    if (
      (first || from % (10 * atOnce) === 0) &&
      tell({ kept: instrumentsIn(read), models, modelOf, told })
    )
      return;
  }
  tell({ kept: instrumentsIn(read), models, modelOf, told: "" });
}

const instrumentsIn = (
  read: ReadonlyMap<string, readonly [revision: number, instrument: Instrument]>,
): readonly Instrument[] => [...read.values()].map(([, instrument]) => instrument);
