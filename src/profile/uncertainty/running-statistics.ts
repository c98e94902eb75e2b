import type { Range } from "../../instrument/instrument.ts";

/** What many draws of one outcome came to. */
export interface Statistics {
  readonly mean: number;
  /** Standard deviation of the draws: their standard uncertainty. */
  readonly u: number;
  /** Holds 95 % of the draws, 2.5 % lie beyond each end. */
  readonly interval: Range;
  readonly histogram: Histogram;
}

/** Counts of draws in even bins; draws beyond the ends are counted in the end bins. */
export interface Histogram {
  readonly from: number;
  readonly width: number;
  readonly counts: readonly number[];
}

const bins = 32768;
/** Half the width counted over, in standard deviations. */
const deviations = 8;
/** Draws looked at before it is settled where the bins lie. */
const firstLook = 4096;

interface Bins {
  readonly from: number;
  readonly width: number;
  readonly counts: Uint32Array;
}

/**
 * Draws of one outcome, counted as they come: their number may be millions and none is kept. The
 * bins, placed by the first few thousand, are a two-thousandth of a standard deviation wide, far
 * finer than what five million draws leave uncertain in an interval's ends.
 */
export class RunningStatistics {
  #first: number[] = [];
  #bins: Bins | null = null;
  #count = 0;
  #mean = 0;
  #squares = 0;

  add(value: number): void {
    this.#count++;
    const off = value - this.#mean;
    this.#mean += off / this.#count;
    this.#squares += off * (value - this.#mean);
    if (this.#bins !== null) count(this.#bins, value);
    else if (this.#first.push(value) === firstLook) {
      this.#bins = this.#placed();
      this.#first = [];
    }
  }

  /** Bins round the draws so far, which are counted into them. */
  #placed(): Bins {
    const half = Math.max(deviations * this.#deviation(), 1e-12 * Math.abs(this.#mean), 1e-12);
    const from = this.#mean - half;
    const placed = { from, width: (2 * half) / bins, counts: new Uint32Array(bins) };
    for (const value of this.#first) count(placed, value);
    return placed;
  }

  #deviation(): number {
    return this.#count > 1 ? Math.sqrt(this.#squares / (this.#count - 1)) : 0;
  }

  /** Null while nothing has been drawn. The histogram has so many `columns`, four deviations each way. */
  statistics(columns: number): Statistics | null {
    if (this.#count === 0) return null;
    const placed = this.#bins ?? this.#placed();
    return {
      mean: this.#mean,
      u: this.#deviation(),
      interval: [quantile(placed, 0.025 * this.#count), quantile(placed, 0.975 * this.#count)],
      histogram: histogram(placed, columns),
    };
  }
}

function count({ from, width, counts }: Bins, value: number): void {
  const i = Math.floor((value - from) / width);
  const bin = i < 0 ? 0 : i >= bins ? bins - 1 : i;
  counts[bin] = (counts[bin] ?? 0) + 1;
}

/** The value that `below` of the draws lie under. */
function quantile({ from, width, counts }: Bins, below: number): number {
  let left = below;
  for (let i = 0; i < bins; i++) {
    const here = counts[i] ?? 0;
    if (left <= here && here > 0) return from + width * (i + left / here);
    left -= here;
  }
  return from + width * bins;
}

/** The middle half of the bins gathered into columns. */
function histogram({ from, width, counts }: Bins, columns: number): Histogram {
  const [start, span] = [bins / 4, bins / 2];
  const gathered = new Array<number>(columns).fill(0);
  counts.forEach((count, i) => {
    const column = Math.floor(((i - start) * columns) / span);
    const held = Math.min(columns - 1, Math.max(0, column));
    gathered[held] = (gathered[held] ?? 0) + count;
  });
  return { from: from + start * width, width: (span * width) / columns, counts: gathered };
}
