// An answer arrives from a worker with its own copy of every name; equal names become one, or many answers would fill the memory.

export class SharedNames {
  readonly #known = new Map<string, string>();

  /** Changes the rows of `answer`: it has just arrived, so nothing else holds them. */
  share<Answer>(answer: Answer): Answer {
    this.#visit(answer);
    return answer;
  }

  #visit(value: unknown): void {
    if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return;
    // Long lists of numbers have no names.
    if (Array.isArray(value) && typeof value[0] === "number") return;
    const fields = value as Record<string, unknown>;
    for (const key of Object.keys(fields)) {
      const field = fields[key];
      if (typeof field === "string") fields[key] = this.#one(field);
      else this.#visit(field);
    }
  }

  #one(name: string): string {
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    this.#known.set(name, name);
    return name;
  }
}
