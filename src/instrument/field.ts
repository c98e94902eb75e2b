/** One number a builder states: what it is called, what it may be, and how to measure it. mm and degrees. */
export interface Field {
  /** The trade's word for it. */
  readonly label: string;
  readonly quantity: "length" | "angle" | "count";
  /** Wide physical limits, both included. What fits one instrument is narrower, and for the core to say. */
  readonly min: number;
  readonly max: number;
  readonly default: number;
  /** One press of a stepper. */
  readonly step: number;
  /** Present where the field may be null: the word that null is shown as. */
  readonly nullWord?: string;
  /** The inch unit a builder quotes it in, where that is not plain inches. */
  readonly usual?: "ft";
  readonly howTo: string;
}

/** A number's limits, both included, and whether it counts. */
export type Bounds = Pick<Field, "quantity" | "min" | "max">;

/** What may be stated as plus-or-minus of a field: at most the field's own range. */
export const toleranceBounds = ({ min, max }: Field): Bounds => ({
  quantity: "length",
  min: 0,
  max: max - min,
});

/** Whether a number may stand in a field: within its limits, and whole where it counts. */
export const isWithin = (value: number, { quantity, min, max }: Bounds): boolean =>
  min <= value && value <= max && (quantity !== "count" || Number.isInteger(value));
