// Values that the JSON Schema describes: mostly valid, on the limits or just beyond them.
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { spellingsOf } from "#foundation/unit.ts";
import type { Chance } from "./chance.ts";
import { nameOf, type Mapping, type Schema, type SchemaNode } from "./tree.ts";

/** Names that scenarios use, some of them reserved. */
const names = ["left", "right", "side", "trimmer", "pin down", "bottle", "öl", "screw", "a", "x".repeat(60)];

/** Measures of usual and unusual cells. */
const amounts = ["0", "1", "2", "0.5", "3.9", "7.5", "12", "30", "42", "60", "95", "100", "190", "0.001", "1e-3"];
const limits = ["1e-6", "1e-7", "1e-12", "99", "99.999", "100.001", "1000", "1e6", "1e9", "3155760000", "1e15", "1e16"];
const odd = [
  "1e308",
  "1e309",
  "1e-308",
  "1e-400",
  "-0",
  "-1",
  "-1e9",
  "0.1e1",
  "00.50",
  "1.",
  ".5",
  "9007199254740993",
];

export function quantityText(dimension: Dimension, chance: Chance): string {
  const amount = chance.of(chance.is(0.8) ? amounts : chance.is(0.7) ? limits : odd);
  const unit = chance.of(chance.is(0.6) ? spellingsOf(dimension).slice(0, 1) : spellingsOf(dimension));
  return `${amount}${chance.is(0.9) ? " " : ""}${unit}`;
}

/** As an experienced user writes it. */
function usualText(dimension: Dimension, chance: Chance): string {
  const { example } = dimensions[dimension];
  return chance.is(0.5)
    ? example
    : example.replace(/^[\d.]+/u, (amount) => `${Number(amount) * (0.5 + chance.below(4) / 2)}`);
}

export class ValueSource {
  readonly #schema: Schema;
  readonly #chance: Chance;
  /** True: no limits and nothing odd. */
  readonly #usual: boolean;

  constructor(schema: Schema, chance: Chance, usual: boolean) {
    this.#schema = schema;
    this.#chance = chance;
    this.#usual = usual;
  }

  /** `depth` bounds how many optional keys are filled in. */
  valueOf(node: SchemaNode, depth = 0): unknown {
    const chance = this.#chance;
    const own = chance.of(this.#schema.alternatives(node));
    if (own.examples !== undefined && chance.is(this.#usual ? 0.6 : 0.1))
      return structuredClone(chance.of(own.examples));
    if (own.$ref !== undefined) return this.#quantity(nameOf(own.$ref));
    if (own.const !== undefined) return own.const;
    if (own.enum !== undefined) return chance.of(own.enum);
    if (own.type === "object") return this.#mapping(own, depth);
    if (own.type === "array") return this.#list(own, depth);
    if (own.type === "integer" || own.type === "number") return this.#number(own);
    if (own.type === "boolean") return chance.is(0.5);
    return chance.of(names);
  }

  #quantity(dimension: string): string {
    const of = dimension as Dimension;
    return this.#usual ? usualText(of, this.#chance) : quantityText(of, this.#chance);
  }

  #number({ type, minimum, maximum }: SchemaNode): number {
    const chance = this.#chance;
    const least = minimum ?? 0;
    const most = maximum ?? 1e6;
    const usual = Math.min(most, least + chance.below(4));
    if (this.#usual || chance.is(0.5)) return usual;
    return chance.of([least, most, least - 1, most + 1, type === "integer" ? usual + 0.5 : usual / 3, -0, 1e308]);
  }

  #mapping(node: SchemaNode, depth: number): Mapping {
    const chance = this.#chance;
    const { properties = {}, required = [], additionalProperties: others } = node;
    const made: Mapping = {};
    const keys = Object.keys(properties);
    const oneOnly = required.length === 0 && keys.includes("empirical");
    const chosen = oneOnly
      ? [chance.of(keys)]
      : keys.filter((key) =>
          required.includes(key) ? chance.is(this.#usual ? 1 : 0.97) : chance.is(0.4 / (1 + depth)),
        );
    for (const key of chosen) made[key] = this.valueOf(properties[key]!, depth + 1);
    if (typeof others === "object") {
      for (let count = 1 + chance.below(2); count > 0; count -= 1)
        made[chance.of(names)] = this.valueOf(others, depth + 1);
    }
    return made;
  }

  #list(node: SchemaNode, depth: number): readonly unknown[] {
    const { prefixItems, items, minItems = 0 } = node;
    if (prefixItems !== undefined) return inOrder(prefixItems.map((each) => this.valueOf(each, depth + 1)));
    const count = Math.max(minItems, this.#chance.below(4));
    return Array.from({ length: count }, () => (typeof items === "object" ? this.valueOf(items, depth + 1) : null));
  }
}

/** The parameters of most distributions rise, or their spread is below their mean: in half of the cases they are put so. */
function inOrder(values: readonly unknown[]): readonly unknown[] {
  const sizes = values.map((value) => Number.parseFloat(String(value)));
  return values.length === 3
    ? values.toSorted((one, other) => sizes[values.indexOf(one)]! - sizes[values.indexOf(other)]!)
    : values;
}
