/**
 * Even random numbers, the same for the same seed: xoshiro128** 1.1, its four words filled from the
 * seed by splitmix32. D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Transactions on Mathematical Software 47 (2021), article 36.
 */
export class Random {
  #a: number;
  #b: number;
  #c: number;
  #d: number;
  #spare = 0;
  #hasSpare = false;

  constructor(a: number, b: number, c: number, d: number) {
    this.#a = a | 0;
    this.#b = b | 0;
    this.#c = c | 0;
    this.#d = d | 0;
  }

  static seeded(seed: number): Random {
    let state = seed | 0;
    const next = (): number => {
      state = (state + 0x9e3779b9) | 0;
      let word = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
      word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
      return word ^ (word >>> 15);
    };
    return new Random(next(), next(), next(), next());
  }

  /** A whole number from 0 to 2³² − 1. */
  word(): number {
    const b = this.#b;
    const turned = Math.imul(b, 5);
    const word = Math.imul((turned << 7) | (turned >>> 25), 9) >>> 0;
    const shifted = b << 9;
    this.#c ^= this.#a;
    this.#d ^= b;
    this.#b = b ^ this.#c;
    this.#a ^= this.#d;
    this.#c ^= shifted;
    this.#d = (this.#d << 11) | (this.#d >>> 21);
    return word;
  }

  /** From 0 up to but not 1, in steps of 2⁻⁵³. */
  even(): number {
    return ((this.word() >>> 5) * 67108864 + (this.word() >>> 6)) / 9007199254740992;
  }

  /**
   * Normal, mean 0 and deviation 1, by the polar method (G. Marsaglia and T. A. Bray, "A convenient
   * method for generating normal variables", SIAM Review 6 (1964); from memory). Each point of the
   * disc, told to 32 bits each way, gives two.
   */
  normal(): number {
    if (this.#hasSpare) {
      this.#hasSpare = false;
      return this.#spare;
    }
    let x = 0;
    let y = 0;
    let s = 0;
    do {
      x = (this.word() + 0.5) / 2147483648 - 1;
      y = (this.word() + 0.5) / 2147483648 - 1;
      s = x * x + y * y;
    } while (s >= 1);
    const stretch = Math.sqrt((-2 * Math.log(s)) / s);
    this.#spare = y * stretch;
    this.#hasSpare = true;
    return x * stretch;
  }
}
