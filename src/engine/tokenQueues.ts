// The tokens of all places: for each one when it came, which step's completion gave it and which number it carries.

/** One place's tokens, a ring: oldest first. */
class Ring {
  times = new Float64Array(4);
  nodes = new Int32Array(4);
  cargoes = new Int32Array(4);
  first = 0;
  size = 0;

  grow(): void {
    const { times, nodes, cargoes, first, size } = this;
    const mask = times.length - 1;
    this.times = new Float64Array(2 * times.length);
    this.nodes = new Int32Array(2 * times.length);
    this.cargoes = new Int32Array(2 * times.length);
    for (let i = 0; i < size; i++) {
      this.times[i] = times[(first + i) & mask]!;
      this.nodes[i] = nodes[(first + i) & mask]!;
      this.cargoes[i] = cargoes[(first + i) & mask]!;
    }
    this.first = 0;
  }
}

export class TokenQueues {
  readonly #rings: readonly Ring[];
  /** Of the token taken last. */
  time = 0;
  node = -1;
  cargo = 0;

  constructor(places: number) {
    this.#rings = Array.from({ length: places }, () => new Ring());
  }

  size(place: number): number {
    return this.#rings[place]!.size;
  }

  put(place: number, time: number, node: number, cargo: number): void {
    const ring = this.#rings[place]!;
    if (ring.size === ring.times.length) ring.grow();
    const at = (ring.first + ring.size++) & (ring.times.length - 1);
    ring.times[at] = time;
    ring.nodes[at] = node;
    ring.cargoes[at] = cargo;
  }

  /** Takes the oldest token; its time, node and cargo are then read from here. */
  take(place: number): void {
    const ring = this.#rings[place]!;
    const at = ring.first;
    this.time = ring.times[at]!;
    this.node = ring.nodes[at]!;
    this.cargo = ring.cargoes[at]!;
    ring.first = (at + 1) & (ring.times.length - 1);
    ring.size--;
  }

  /** Every node that a token names, for the chain to keep. */
  nodes(): number[] {
    return this.#rings.flatMap((ring) =>
      Array.from({ length: ring.size }, (_, i) => ring.nodes[(ring.first + i) & (ring.nodes.length - 1)]!),
    );
  }

  renumber(numbers: Int32Array): void {
    for (const ring of this.#rings) {
      for (let i = 0; i < ring.size; i++) {
        const at = (ring.first + i) & (ring.nodes.length - 1);
        if (ring.nodes[at] !== -1) ring.nodes[at] = numbers[ring.nodes[at]!]!;
      }
    }
  }
}
