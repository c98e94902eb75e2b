import type { Instrument, Range } from "../../instrument/instrument.ts";
import { chanceWithin, type FirstOrder, firstOrderOf } from "./first-order.ts";
import { MonteCarlo, type Shape } from "./monte-carlo.ts";
import {
  inputsOf,
  modelOf,
  type PerturbedInput,
  type PerturbedOutcome,
  perturbedOutcomesOf,
  stepOf,
  windowsOf,
} from "./perturbed-model.ts";
import type { Statistics } from "./running-statistics.ts";
import { errorsActOn } from "./tolerances.ts";

/** One outcome, by both methods. */
export interface OutcomeUncertainty {
  readonly kind: PerturbedOutcome;
  readonly window: Range;
  readonly first: FirstOrder;
  readonly firstChance: number;
  readonly sampled: Statistics;
  readonly chance: number;
  /** Whether the two intervals part: see `disagree`. */
  readonly disagree: boolean;
}

/** How sure a plan is, with the draws made so far. */
export interface Uncertainty {
  readonly draws: number;
  /** Draws that could not be built at all. */
  readonly failed: number;
  readonly inputs: readonly PerturbedInput[];
  readonly outcomes: readonly OutcomeUncertainty[];
  /** Share of the draws that meet every window at once, without an overrun. */
  readonly chanceOfAll: number;
}

export interface UncertaintyRequest {
  readonly instrument: Instrument;
  readonly shape: Shape;
  readonly seed: number;
}

const columns = 64;

/**
 * How sure the outcomes of a built instrument are, its shim fixed at the planned thickness and every
 * measure off by its tolerance, each independent of the rest.
 */
export class UncertaintyRun {
  readonly #inputs: readonly PerturbedInput[];
  readonly #kinds: readonly PerturbedOutcome[];
  readonly #windows: readonly Range[];
  readonly #first: readonly FirstOrder[];
  readonly #draws: MonteCarlo;

  private constructor(built: Instrument, first: readonly FirstOrder[], asked: UncertaintyRequest) {
    this.#inputs = inputsOf(built, asked.shape);
    this.#kinds = perturbedOutcomesOf(built);
    this.#windows = windowsOf(built);
    this.#first = first;
    const paths = this.#inputs.map(({ path }) => path);
    this.#draws = new MonteCarlo(
      this.#inputs,
      modelOf(built, paths, true),
      this.#windows,
      asked.seed,
    );
  }

  /** Null where the instrument has no plan, or none as soon as a measure is a little off. */
  static of(asked: UncertaintyRequest): UncertaintyRun | null {
    const built = errorsActOn(asked.instrument);
    if (built === null) return null;
    const inputs = inputsOf(built, asked.shape);
    const paths = inputs.map(({ path }) => path);
    const steps = inputs.map(({ path, value }) => stepOf(path, value));
    const model = modelOf(built, paths, false);
    const first = firstOrderOf(model, inputs, steps, perturbedOutcomesOf(built).length);
    return first === null ? null : new UncertaintyRun(built, first, asked);
  }

  run(draws: number): void {
    this.#draws.run(draws);
  }

  get count(): number {
    return this.#draws.count;
  }

  result(): Uncertainty {
    const draws = this.#draws;
    return {
      draws: draws.count,
      failed: draws.failed,
      inputs: this.#inputs,
      outcomes: this.#kinds.flatMap((kind, i) => {
        const [first, window] = [this.#first[i], this.#windows[i]];
        const sampled = draws.outcome(i, columns);
        if (first === undefined || window === undefined || sampled === null) return [];
        const chance = draws.chance(i);
        const firstChance = chanceWithin(first, window);
        const apart = disagree(first, sampled, draws.count);
        return [{ kind, window, first, firstChance, sampled, chance, disagree: apart }];
      }),
      chanceOfAll: draws.chanceOfAll(),
    };
  }
}

/**
 * Whether two 95 % intervals part, their ends compared as in JCGM 101:2008, clause 8: one differs by
 * more than a tenth of the standard uncertainty, less than which no builder acts on, and by more than
 * the draws leave open: three standard errors of a 2.5 % point, 2.67·u/√n each for a normal outcome.
 */
function disagree(first: FirstOrder, sampled: Statistics, draws: number): boolean {
  const u = Math.max(first.u, sampled.u);
  const told = u / 10;
  const open = (3 * 2.67 * u) / Math.sqrt(draws);
  return [0, 1].some((end) => {
    const apart = Math.abs((first.interval[end] ?? 0) - (sampled.interval[end] ?? 0));
    return apart > told && apart > open;
  });
}
