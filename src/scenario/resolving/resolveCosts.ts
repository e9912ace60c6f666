// From the drafts of costs and options: molds given by price and life become a cost per part, and options are checked.
import type { Resolution, ScenarioDraft } from "./resolution.ts";
import type { CostSpec, OptionSpec, Scenario } from "#scenario/scenario.ts";

type CostDraft = NonNullable<ScenarioDraft["costs"]>;

/** Undefined where none are given; a currency that could not be read has been reported already. */
export function resolveCosts(draft: CostDraft | undefined): CostSpec | undefined {
  const { currency, tooling, ...rates } = draft ?? {};
  if (currency === undefined) return undefined;
  const given = Object.entries({ ...rates, tooling: perPart(tooling) }).filter(([, rate]) => rate !== undefined);
  return { currency, ...(Object.fromEntries(given) as Omit<CostSpec, "currency">) };
}

function perPart(tooling: CostDraft["tooling"]): number | undefined {
  if (typeof tooling !== "object") return tooling;
  const { price, life } = tooling;
  return price === undefined || life === undefined ? undefined : price / life;
}

type OptionDraft = NonNullable<NonNullable<ScenarioDraft["options"]>[number]>;

/** Nothing where there are none, or where one could not be read. */
export function resolveOptions(resolution: Resolution): Pick<Scenario, "options"> {
  const { draft, report } = resolution;
  const written = draft.options ?? [];
  const names = written.map((option) => option?.name);
  names.forEach((name, i) => {
    if (name === undefined || names.indexOf(name) === i) return;
    const remedy = "Rename one of them.";
    report({
      code: "option-twice",
      message: `Two options are called "${name}".`,
      remedy,
      path: ["options", i, "name"],
    });
  });
  written.forEach((option, i) => {
    checkPrices(option, i, resolution);
    checkPaths(written, i, resolution);
  });
  const options = written.flatMap((option) => optionOf(option ?? {}) ?? []);
  return options.length > 0 && options.length === written.length ? { options } : {};
}

/** An amount without a currency says nothing. */
function checkPrices(option: OptionDraft | undefined, index: number, { draft, report }: Resolution): void {
  if (draft.costs !== undefined) return;
  const priced = (["investment", "perHour"] as const).find((key) => option?.[key] !== undefined);
  if (priced === undefined) return;
  const expected = "`costs: { currency: EUR, machine: 35 per h }`";
  report({
    code: "option-currency",
    message: "An option has a price, and the scenario has no costs.",
    expected,
    remedy: `Add ${expected}, or delete \`${priced}\`.`,
    path: ["options", index, priced],
  });
}

/** Options of different groups are combined: two values for one path would depend on their order. */
function checkPaths(options: readonly (OptionDraft | undefined)[], index: number, { report }: Resolution): void {
  const own = options[index];
  if (own?.group === undefined) return;
  const others = options.slice(0, index).filter((other) => other?.group !== undefined && other.group !== own.group);
  const paths = pathsOf(own);
  for (const other of others) {
    const shared = pathsOf(other ?? {}).find((path) => paths.includes(path));
    if (shared === undefined) continue;
    report({
      code: "option-path",
      message: `"${other?.name ?? ""}" and "${own.name ?? ""}" are combined, and both set \`${shared}\`.`,
      remedy: "Put both into one group, or let one of them set it.",
      path: ["options", index, "settings"],
    });
  }
}

function pathsOf({ settings = [] }: OptionDraft): readonly string[] {
  return settings.flatMap((setting) => setting?.split("=", 1) ?? []);
}

function optionOf({ name, settings, ...others }: OptionDraft): OptionSpec | undefined {
  if (name === undefined || settings === undefined) return undefined;
  const given = Object.entries(others).filter(([, value]) => value !== undefined);
  const texts = settings.flatMap((setting) => setting ?? []);
  return { name, settings: texts, ...(Object.fromEntries(given) as Partial<OptionSpec>) };
}
