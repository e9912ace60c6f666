// The tokens of all places: for each one when it came, which step's completion gave it and which number it carries.

/** Every token has a slot of its own; each place strings its slots together, oldest first, and the free ones are a string too. */
export class TokenQueues {
  /** Of the token in each slot. */
  times = new Float64Array(16);
  nodes = new Int32Array(16);
  cargoes = new Int32Array(16);
  /** Tokens at each place. */
  readonly sizes: Int32Array;
  readonly #clock: Float64Array;
  readonly #first: Int32Array;
  readonly #last: Int32Array;
  #next = new Int32Array(16);
  #free = -1;
  #used = 0;

  constructor(places: number, clock: Float64Array) {
    this.#clock = clock;
    this.sizes = new Int32Array(places);
    this.#first = new Int32Array(places);
    this.#last = new Int32Array(places);
  }

  /** Puts a token there now. */
  put(place: number, node: number, cargo: number): void {
    let slot = this.#free;
    if (slot === -1) slot = this.#newSlot();
    else this.#free = this.#next[slot]!;
    this.times[slot] = this.#clock[0]!;
    this.nodes[slot] = node;
    this.cargoes[slot] = cargo;
    if (this.sizes[place]!++ === 0) this.#first[place] = slot;
    else this.#next[this.#last[place]!] = slot;
    this.#last[place] = slot;
  }

  /** Takes the oldest token; what it was is to be read from its slot until the next one is put. */
  take(place: number): number {
    const slot = this.#first[place]!;
    this.#first[place] = this.#next[slot]!;
    this.sizes[place]!--;
    this.#next[slot] = this.#free;
    this.#free = slot;
    return slot;
  }

  /** Every node that a token names, for the chain to keep. */
  liveNodes(): number[] {
    return this.#slots().map((slot) => this.nodes[slot]!);
  }

  renumber(numbers: Int32Array): void {
    for (const slot of this.#slots()) if (this.nodes[slot] !== -1) this.nodes[slot] = numbers[this.nodes[slot]!]!;
  }

  #slots(): number[] {
    const slots: number[] = [];
    this.sizes.forEach((size, place) => {
      for (let i = 0, slot = this.#first[place]!; i < size; i++, slot = this.#next[slot]!) slots.push(slot);
    });
    return slots;
  }

  #newSlot(): number {
    if (this.#used === this.times.length) {
      this.times = lengthened(this.times, new Float64Array(2 * this.#used));
      this.nodes = lengthened(this.nodes, new Int32Array(2 * this.#used));
      this.cargoes = lengthened(this.cargoes, new Int32Array(2 * this.#used));
      this.#next = lengthened(this.#next, new Int32Array(2 * this.#used));
    }
    return this.#used++;
  }
}

function lengthened<Numbers extends Float64Array | Int32Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from);
  return to;
}
