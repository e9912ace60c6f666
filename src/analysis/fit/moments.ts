// Moments of a stream of values in one pass: exact to the last digits, whatever the number of values.

/** Source: Welford, Technometrics 4 (1962) 419; pairs as Chan, Golub and LeVeque (1983) [M]. */
export class Moments {
  count = 0;
  mean = 0;
  min = Infinity;
  max = -Infinity;
  #squares = 0;

  add(value: number): void {
    this.count += 1;
    const away = value - this.mean;
    this.mean += away / this.count;
    this.#squares += away * (value - this.mean);
    this.min = Math.min(this.min, value);
    this.max = Math.max(this.max, value);
  }

  /** With n − 1 in the denominator; 0 for one value. */
  get sd(): number {
    return this.count > 1 ? Math.sqrt(this.#squares / (this.count - 1)) : 0;
  }

  /** Σ (value − mean)². */
  get squares(): number {
    return this.#squares;
  }

  join(other: Moments): void {
    if (other.count === 0) return;
    const [away, total] = [other.mean - this.mean, this.count + other.count];
    this.#squares += other.#squares + (away * away * this.count * other.count) / total;
    this.mean += (away * other.count) / total;
    this.count = total;
    this.min = Math.min(this.min, other.min);
    this.max = Math.max(this.max, other.max);
  }
}

/** The lag-1 autocorrelation of values in their order: Σ (x_t − m)(x_t+1 − m) / Σ (x_t − m)². */
export class Autocorrelation {
  #first: number | undefined;
  #last = 0;
  #count = 0;
  #sum = 0;
  #products = 0;

  /** Values are taken from the first one, so that no digits are lost. */
  add(value: number): void {
    this.#first ??= value;
    const away = value - this.#first;
    if (this.#count > 0) this.#products += away * this.#last;
    this.#last = away;
    this.#sum += away;
    this.#count += 1;
  }

  /** Undefined for fewer than 3 values, or without spread. */
  value(moments: Moments): number | undefined {
    if (this.#count < 3 || !(moments.squares > 0)) return undefined;
    const mean = moments.mean - this.#first!;
    const crossed = this.#products - mean * (2 * this.#sum - this.#last) + (this.#count - 1) * mean * mean;
    return crossed / moments.squares;
  }
}

/** The straight line of values over time by least squares. */
export class Trend {
  readonly #times = new Moments();
  readonly #values = new Moments();
  #products = 0;

  add(time: number, value: number): void {
    const away = time - this.#times.mean;
    this.#times.add(time);
    this.#values.add(value);
    this.#products += away * (value - this.#values.mean);
  }

  /** Slope with its standard error for independent values; undefined for fewer than 3 values or a single time. */
  slope(): { readonly slope: number; readonly error: number; readonly span: number } | undefined {
    const { count, squares, min, max } = this.#times;
    if (count < 3 || !(squares > 0)) return undefined;
    const slope = this.#products / squares;
    const rest = Math.max(0, this.#values.squares - slope * this.#products);
    return { slope, error: Math.sqrt(rest / (count - 2) / squares), span: max - min };
  }
}
