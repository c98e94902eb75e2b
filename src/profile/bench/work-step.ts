import type { StepId } from "../../instrument/as-built/steps.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { onSide } from "../halves.ts";
import type { Profile } from "../outcome.ts";
import { leastShown } from "../standing.ts";

/** One step of the work on one instrument. The figures to be measured stand beside it: `expectedOf`. */
export interface WorkStep {
  readonly id: StepId;
  readonly instructions: readonly Phrase[];
  readonly measure: Phrase;
  /** The usual mistake, and how it shows. */
  readonly mistake: Phrase;
  readonly sign: Phrase;
  readonly caution: Phrase | null;
}

/** Writes one step for an instrument and its profile, corrections taken included. */
export type StepWriter<P = Profile> = (instrument: Instrument, plan: P) => Omit<WorkStep, "id">;

export const dust: Phrase = [
  "Wood dust: extraction at the source and a fitted mask. Hands and sleeves clear of a dish under power.",
];
export const edges: Phrase = [
  "Fresh edges cut and splinter: take the corners off before you lift the rim.",
];

/** Where the dish takes off last, and what comes down with it. */
export const sandedLast = ({
  leastRemovalX,
  leastRemovalSide,
  rimOffset,
}: Profile): readonly Phrase[] => [
  [
    "It is sanded last ",
    mm(leastRemovalX),
    ` from the tail${onSide(leastRemovalSide)}: look there for untouched edge before you stop.`,
  ],
  ...(rimOffset > leastShown
    ? [phrase`The whole edge comes down ${mm(rimOffset)}, because it was too low there.`]
    : []),
];

/** What comes off the level edge at a station, `rimOffset` included, mm. */
export const offAt = ({ stations, rimOffset }: Profile, name: string): number =>
  rimOffset + (stations.find((station) => station.name === name)?.removal ?? 0);
