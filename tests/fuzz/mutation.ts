// Changes of a scenario's tree: some keep it valid, some break it.
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { spellingsOf } from "#foundation/unit.ts";
import type { Chance } from "./chance.ts";
import { hostileTexts, oddValue } from "./oddValue.ts";
import { quantityText, ValueSource } from "./schemaValue.ts";
import { isMapping, nameOf, put, valueAt, type Container, type Schema, type Site } from "./tree.ts";

type Mutation = (site: Site, chance: Chance, all: readonly Site[], schema: Schema) => void;

const isQuantity = (value: unknown): value is string => typeof value === "string" && /^-?[\d.]/u.test(value);

function dimensionsOf({ schemas }: Site): readonly Dimension[] {
  return schemas.flatMap(({ $ref }) => ($ref === undefined ? [] : [nameOf($ref) as Dimension]));
}

const described =
  (usual: boolean): Mutation =>
  (site, chance, _all, schema) => {
    if (site.schemas.length > 0) put(site, new ValueSource(schema, chance, usual).valueOf(chance.of(site.schemas)));
  };

/** Some keys that the mapping may have and has not. */
const added =
  (usual: boolean): Mutation =>
  (site, chance, _all, schema) => {
    const value = valueAt(site);
    if (!isMapping(value)) return;
    const known = site.schemas.flatMap(({ properties = {} }) => Object.entries(properties));
    const absent = known.filter(([key]) => !Object.hasOwn(value, key));
    for (let more = 1 + chance.below(3); more > 0 && absent.length > 0; more -= 1) {
      const [[key, node] = ["", {}]] = absent.splice(chance.below(absent.length), 1);
      value[key] = new ValueSource(schema, chance, usual).valueOf(node);
    }
  };

const scaled =
  (factors: readonly number[]): Mutation =>
  (site, chance) => {
    const value = valueAt(site);
    const factor = chance.of(factors);
    if (typeof value === "number") put(site, Number.isInteger(value) ? Math.round(value * factor) : value * factor);
    if (isQuantity(value))
      put(
        site,
        value.replace(/^-?[\d.]+/u, (amount) => String(Number((Number(amount) * factor).toPrecision(6)))),
      );
  };

const otherAmount: Mutation = (site, chance) => {
  const [dimension] = dimensionsOf(site);
  if (dimension !== undefined) put(site, quantityText(dimension, chance));
};

const otherUnit: Mutation = (site, chance) => {
  const value = valueAt(site);
  if (!isQuantity(value)) return;
  const all = Object.keys(dimensions) as Dimension[];
  const units = chance.is(0.6) ? dimensionsOf(site).flatMap(spellingsOf) : spellingsOf(chance.of(all));
  const unit = chance.is(0.2)
    ? chance.of(["", "S", "secs", "%", "° C", "kg / h"])
    : units.length > 0
      ? chance.of(units)
      : "s";
  put(site, value.replace(/^(-?[\d.]+).*$/u, `$1 ${unit}`));
};

const asDistribution: Mutation = (site, chance) => {
  const value = valueAt(site);
  if (!isQuantity(value)) return;
  const [, amount = "1", unit = ""] = /^-?([\d.]+)(.*)$/u.exec(value) ?? [];
  const of = (factor: number): string => `${Number((Number(amount) * factor).toPrecision(6))}${unit}`;
  const kinds = [
    { normal: [value, of(chance.of([0.01, 0.1, 0.3, 1]))] },
    { lognormal: [value, of(chance.of([0.05, 0.5, 2]))] },
    { gamma: [value, of(chance.of([0.05, 0.5, 2]))] },
    { triangular: [of(0.8), value, of(1.5)] },
    { uniform: [of(0.9), of(1.1)] },
    { weibull: [value, chance.of([0.5, 1, 8, 20])] },
    { exponential: value },
    { empirical: [of(0.9), value, of(1.2)] },
  ];
  put(site, chance.of(kinds));
};

const removed: Mutation = ({ parent, key }) => {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else delete parent[key];
};

const swapped: Mutation = (site, chance, all) => {
  const other = chance.of(all);
  // Where one holds the other, a swap would make a circle.
  const [one, two] = [structuredClone(valueAt(site)), structuredClone(valueAt(other))];
  put(site, two);
  put(other, one);
};

const copied: Mutation = (site, chance, all) => put(site, structuredClone(valueAt(chance.of(all))));

const moved: Mutation = (site, chance, all, schema) => {
  const target = chance.of(all);
  const value = structuredClone(valueAt(site));
  removed(site, chance, all, schema);
  const home = valueAt(target);
  if (Array.isArray(home)) home.push(value);
  else if (isMapping(home)) home[String(site.key)] = value;
};

const ofList: Mutation = (site, chance) => {
  const value = valueAt(site);
  if (!Array.isArray(value)) return put(site, [structuredClone(value)]);
  const count = chance.of([1, 1, 1, 2, 17, 101]);
  const entry: unknown = value[chance.below(Math.max(1, value.length))];
  const more = Array.from({ length: count }, () => structuredClone(entry));
  put(site, chance.is(0.3) ? value.toReversed() : [...(value as unknown[]), ...more]);
};

const renamed: Mutation = ({ parent, key }, chance) => {
  if (Array.isArray(parent)) return;
  const name = chance.is(0.5) ? `${String(key)}${chance.of(["s", "x", " ", "2"])}` : chance.of(hostileTexts);
  const value = parent[key];
  delete parent[key];
  // Defined, not assigned: `__proto__` becomes a key like any other.
  Object.defineProperty(parent, name, { value, enumerable: true, configurable: true, writable: true });
};

const odd: Mutation = (site, chance) => put(site, oddValue(chance));

const mild = [0.5, 0.8, 0.9, 1.1, 1.5, 2, 3];
const wild = [0, 1e-3, 1e-6, 0.1, 10, 100, 1e6, 1e9, -1];
const [addUsual, addAny] = [added(true), added(false)];

/** Most of these leave a scenario that can be run. */
const benign: readonly Mutation[] = [
  scaled(mild),
  scaled(mild),
  asDistribution,
  asDistribution,
  addUsual,
  addUsual,
  addUsual,
  described(true),
  removed,
  ofList,
];

const hostile: readonly Mutation[] = [
  scaled(wild),
  addAny,
  described(false),
  otherAmount,
  otherAmount,
  otherUnit,
  removed,
  swapped,
  copied,
  moved,
  ofList,
  renamed,
  odd,
  odd,
];

/** An addition goes to a mapping, most of them small, where few keys would come by chance. */
function homeOf(sites: readonly Site[], whole: Site, chance: Chance): Site {
  const mappings = sites.filter((site) => isMapping(valueAt(site)));
  return mappings.length === 0 || chance.is(0.2) ? whole : chance.of(mappings);
}

/** Changes the tree in place, by one mutation or several. What is copied is cloned: no subtree stands in two places. */
export function mutate(tree: Container, schema: Schema, chance: Chance): void {
  const isBenign = chance.is(0.6);
  do {
    const sites = schema.sites(tree);
    const mutation = chance.of(isBenign || chance.is(0.3) ? benign : hostile);
    const whole: Site = { parent: { tree }, key: "tree", schemas: [schema.root] };
    if (mutation === addUsual || mutation === addAny) mutation(homeOf(sites, whole, chance), chance, sites, schema);
    else if (sites.length > 0) mutation(chance.of(sites), chance, sites, schema);
  } while (chance.is(0.6));
}
