import type { Range } from "../../instrument/instrument.ts";
import { Random } from "./random.ts";
import { RunningStatistics, type Statistics } from "./running-statistics.ts";

export type Shape = "normal" | "rectangular";

/** A measure that is not known exactly: its value, its standard uncertainty, and how it is spread. */
export interface Input {
  readonly value: number;
  readonly u: number;
  readonly shape: Shape;
}

/** Fills `outcomes` from `inputs`; false where these inputs give none. Keeps neither. */
export type Model = (inputs: Float64Array, outcomes: Float64Array) => boolean;

/**
 * Propagation of distributions by drawing: the inputs are drawn each from its own distribution, and
 * the outcomes counted (JCGM 101:2008, clause 7). The same seed gives the same draws, however they
 * are divided into runs.
 */
export class MonteCarlo {
  readonly #inputs: readonly Input[];
  readonly #model: Model;
  readonly #windows: readonly (Range | null)[];
  readonly #random: Random;
  readonly #values: Float64Array;
  readonly #outcomes: Float64Array;
  readonly #statistics: readonly RunningStatistics[];
  readonly #met: Uint32Array;
  #metAll = 0;
  #count = 0;
  #failed = 0;

  /** One window for each outcome, null where any value will do. */
  constructor(
    inputs: readonly Input[],
    model: Model,
    windows: readonly (Range | null)[],
    seed: number,
  ) {
    this.#inputs = inputs;
    this.#model = model;
    this.#windows = windows;
    this.#random = Random.seeded(seed);
    this.#values = new Float64Array(inputs.length);
    this.#outcomes = new Float64Array(windows.length);
    this.#statistics = windows.map(() => new RunningStatistics());
    this.#met = new Uint32Array(windows.length);
  }

  run(count: number): void {
    for (let i = 0; i < count; i++) {
      this.#draw();
      this.#count++;
      if (this.#model(this.#values, this.#outcomes)) this.#judge();
      else this.#failed++;
    }
  }

  #draw(): void {
    for (let i = 0; i < this.#inputs.length; i++) {
      const input = this.#inputs[i];
      if (input === undefined) return;
      const { value, u, shape } = input;
      this.#values[i] =
        shape === "normal"
          ? value + u * this.#random.normal()
          : value + u * Math.sqrt(3) * (2 * this.#random.even() - 1);
    }
  }

  #judge(): void {
    let all = true;
    for (let i = 0; i < this.#statistics.length; i++) {
      const value = this.#outcomes[i] ?? Number.NaN;
      this.#statistics[i]?.add(value);
      const window = this.#windows[i];
      if (window == null || (value >= window[0] && value <= window[1])) {
        this.#met[i] = (this.#met[i] ?? 0) + 1;
      } else all = false;
    }
    if (all) this.#metAll++;
  }

  get count(): number {
    return this.#count;
  }

  /** Draws whose inputs gave no outcome; they meet no window. */
  get failed(): number {
    return this.#failed;
  }

  outcome(i: number, columns: number): Statistics | null {
    return this.#statistics[i]?.statistics(columns) ?? null;
  }

  /** Share of the draws in outcome i's window. */
  chance(i: number): number {
    return this.#count === 0 ? 0 : (this.#met[i] ?? 0) / this.#count;
  }

  chanceOfAll(): number {
    return this.#count === 0 ? 0 : this.#metAll / this.#count;
  }
}
