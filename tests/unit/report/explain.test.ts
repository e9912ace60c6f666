// Everything that can be asked for has an explanation, with no gap in it, short, and with examples that hold.
import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020, type AnySchemaObject } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { planCell } from "#cell/layers/planCell.ts";
import { isOpenTo, stateNames } from "#cell/words/stateNames.ts";
import { SHIFT } from "#cell/words/cycleNames.ts";
import { builtCommands } from "#cli/commands/commands.ts";
import { calledTopics } from "#cli/commands/calledTopics.ts";
import { issueMeanings } from "#cli/commands/issueMeanings.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { allTopics, listsOf } from "#report/explain/allTopics.ts";
import { explainAnswer, labelled, overview, topicLines } from "#report/explain/explainAnswer.ts";
import { explanationTable } from "#report/explain/explainTable.ts";
import { topicFinder } from "#report/explain/findTopics.ts";
import type { Topic, TopicKind } from "#report/explain/topic.ts";
import { cautions } from "#report/words/cautions.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import { keyFacts } from "#scenario/keys/keyFacts.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import { isLong } from "../../support/caseCount.ts";
import { shippedText } from "../../support/reported.ts";

const topics = allTopics(calledTopics(builtCommands));

const finder = topicFinder(topics);
const found = (...words: readonly string[]) => finder(words);
const kindsOf = (...words: readonly string[]) => found(...words).topics.map(({ kind }) => kind);
const ofKind = (kind: TopicKind) => topics.filter((topic) => topic.kind === kind);
/** The topic of this kind that a word finds. */
const topicOf = (word: string, kind: TopicKind) => found(word).topics.find((topic) => topic.kind === kind);

/** Parts of topics in which nothing stands, one line each. */
function gaps(all: readonly Topic[]): readonly string[] {
  return all.flatMap((topic) => {
    const { names, meaning, example, details = [], more = [], members } = topic;
    const parts = [...names, meaning, example ?? "none", ...details.flat(), ...more, ...labelled(topic).flat()];
    const isBlank = (part: string): boolean =>
      !/[\p{L}\p{N}±%°+]/u.test(part) || /undefined|\bNaN\b|\[object/u.test(part);
    const lacksExample = topic.kind === "key" && example === undefined;
    const isEmptyList = topic.kind === "list" && (members ?? []).length === 0;
    return parts.some(isBlank) || lacksExample || isEmptyList ? [`${topic.kind} ${names[0]}`] : [];
  });
}

describe("every topic", () => {
  it("has no part in which nothing stands", () => {
    expect(gaps(topics)).toEqual([]);
    expect(topics.length).toBeGreaterThan(500);
  });

  it.each([
    ["an empty meaning", { names: ["x"], kind: "state", meaning: " " }],
    ["a key without an example", { names: ["x"], kind: "key", meaning: "A key." }],
    ["an empty example", { names: ["x"], kind: "term", meaning: "A term.", example: "" }],
    ["an empty remedy", { names: ["x"], kind: "message code", meaning: "A code.", details: [["remedy", ""]] }],
    ["a list of nothing", { names: ["x"], kind: "list", meaning: "A list." }],
    ["a part that was forgotten", { names: ["x"], kind: "unit", meaning: "1 x = undefined." }],
  ] satisfies readonly (readonly [string, Topic])[])("is refused with %s", (_, planted) => {
    expect(gaps([...topics, planted])).toHaveLength(1);
  });

  it("takes few lines of 80 columns, lists and the cautions apart", () => {
    const told = topics.filter((topic) => topic.kind !== "list" && topic.names[0] !== "safety");
    const rows = told.map((topic) => ({ name: `${topic.kind} ${topic.names[0]}`, lines: topicLines(topic) }));
    // Terms that list all their values.
    const listing = ["term operators", "term elasticity"];
    // A row of the process window has its whole source and both remedies, and no other meaning beside it.
    const most = (name: string): number => (name.startsWith("window row") ? 12 : 8);
    const long = rows.filter(({ name, lines }) => lines.length > most(name) && !listing.includes(name));
    expect(long.map(({ name, lines }) => `${lines.length} ${name}`)).toEqual([]);
    const wide = rows.filter(
      ({ name, lines }) => !listing.includes(name) && lines.some((line) => Array.from(line).length > 80),
    );
    expect(wide.map(({ name }) => name)).toEqual([]);
  });

  it("leads on only to topics that there are", () => {
    const lost = topics.flatMap(({ names, more = [] }) =>
      more.filter((name) => found(name).unknown.length > 0).map((name) => `${names[0]} to ${name}`),
    );
    expect(lost).toEqual([]);
  });

  it("is found by each of its names, whatever the case", () => {
    const lost = topics.flatMap((topic) =>
      topic.names.filter(
        (name) => !found(name).topics.includes(topic) || !found(name.toUpperCase()).topics.includes(topic),
      ),
    );
    expect(lost).toEqual([]);
  });

  it("uses no word that the glossary keeps out", () => {
    const said = topics.map((topic) => topicLines(topic).join(" "));
    expect(
      said.filter((text) =>
        /\bluck|(?<!power )\blaws?\b|binding|to spare|\bhand\b|somebody|\bhe\b|die that never/iu.test(text),
      ),
    ).toEqual([]);
  });
});

interface SchemaNode {
  readonly $ref?: string;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly items?: SchemaNode;
  readonly additionalProperties?: SchemaNode | false;
  readonly anyOf?: readonly SchemaNode[];
}

/** Every key of the schema with the schema of its value, by a walk of the test's own. */
function keysOfSchema(): ReadonlyMap<string, SchemaNode> {
  const schema = scenarioSchema() as unknown as SchemaNode & { readonly $defs: Readonly<Record<string, SchemaNode>> };
  const keys = new Map<string, SchemaNode>();
  const visit = (node: SchemaNode, path: string): void => {
    if (node.$ref?.startsWith("#/$defs/station") === true) visit(schema.$defs["station"]!, path);
    for (const [name, child] of Object.entries(node.properties ?? {})) {
      const own = path === "" ? name : `${path}.${name}`;
      keys.set(own, child);
      visit(child, own);
    }
    // A mapping that stands for a list with one entry has the keys of an entry.
    const isList = node.anyOf?.some(({ items }) => items !== undefined) === true;
    for (const option of node.anyOf ?? []) visit(option, isList && option.items === undefined ? `${path}.*` : path);
    if (node.items) visit(node.items, `${path}.*`);
    if (node.additionalProperties) visit(node.additionalProperties, `${path}.*`);
  };
  visit(schema, "");
  keys.delete("$schema");
  return keys;
}

describe("every key of a scenario", () => {
  const keys = keysOfSchema();
  const facts = new Map(keyFacts().flatMap((key) => key.paths.map((path) => [path, key] as const)));

  it("is found by its path and by its bare name", () => {
    expect(keys.size).toBeGreaterThan(150);
    expect([...facts.keys()].toSorted()).toEqual([...keys.keys()].toSorted());
    for (const path of keys.keys()) {
      expect(topicOf(path, "key")?.of).toContain(path);
      expect(kindsOf(path.split(".").at(-1)!)).toContain("key");
    }
  });

  it("has an example that its own schema accepts", () => {
    const { $defs } = scenarioSchema();
    const ajv = new Ajv2020({ strict: false });
    const asked = [...keys].filter((_, i) => isLong || i % 4 === 0);
    const refused = asked.filter(([path, node]) => {
      const example = parse(facts.get(path)!.example) as Readonly<Record<string, unknown>>;
      const name = path.split(".").at(-1)!;
      const { default: _, ...own } = node as SchemaNode & { readonly default?: unknown };
      return !ajv.validate({ ...own, $defs } as AnySchemaObject, example[name]);
    });
    expect(refused.map(([path]) => `${path}: ${facts.get(path)!.example}`)).toEqual([]);
  });

  it("is found as an error or `--set` writes it", () => {
    const cool = topicOf("stations.*.steps.cool", "key");
    for (const path of [
      "stations.left.steps.cool",
      "stations[0].steps.cool",
      "stations.steps.cool",
      "STATIONS.LEFT.STEPS.COOL",
    ]) {
      expect(found(path)).toEqual({ topics: [cool], unknown: [] });
    }
    expect(kindsOf("delivery.kind")).toEqual(["key"]);
  });

  it("says what may stand behind it, what is assumed, and why", () => {
    expect(topicOf("dispatch", "key")).toMatchObject({ assumed: expect.stringMatching(/^first-ready \(the first/u) });
    expect(topicOf("cavities", "key")).toMatchObject({
      unit: "a whole number from 1 to 12",
      assumed: "none, the key is needed",
    });
    expect(topicOf("first-ready", "choice")?.meaning).toContain("ready first");
    expect(topicOf("triangular", "distribution")?.example).toBe("{ triangular: [7.0 s, 7.5 s, 9.0 s] }");
  });
});

describe("every distribution's example", () => {
  it.each(ofKind("distribution").map(({ example }) => example ?? ""))("%s is read", (example) => {
    const set = [`stations.left.steps.cool=${example}`];
    const { issues } = readSettled(shippedText("two-station"), { name: "x", file: "x.yaml", set });
    // An example may be of a stop, which no step would take.
    expect(issues.filter(({ code }) => code !== "time-unusual")).toEqual([]);
  });
});

const shipped = readdirSync("scenarios")
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""));

describe("every state", () => {
  it.each(shipped)("of %s is explained with its kind", (name) => {
    const { scenario } = readSettled(shippedText(name), { name, file: `${name}.yaml` });
    const own = new Set(scenario!.stations.flatMap(({ extra }) => extra.map((step) => step.name)));
    const states = planCell(scenario!)
      .program.table.resources.filter((resource) => resource.name !== SHIFT)
      .flatMap((resource) => resource.states)
      .filter((state) => !own.has(state.name) && !isOpenTo(state.name));
    expect(states.length).toBeGreaterThan(10);
    const wrong = states.filter(({ name: state, kind }) => topicOf(state, "state")?.of?.endsWith(`, ${kind}`) !== true);
    expect(wrong).toEqual([]);
  });

  it("that has a name is explained", () => {
    for (const state of Object.values(stateNames)) expect(topicOf(state, "state")?.meaning).toMatch(/[\w)]\.$/u);
    expect(kindsOf("open to")).toEqual(["state"]);
  });

  it("that waits says what for", () => {
    const waits = ofKind("state").filter(({ of }) => of?.endsWith("waiting"));
    expect(waits.length).toBeGreaterThan(10);
    expect(waits.filter(({ details }) => details?.some(([label]) => label === "waits for") !== true)).toEqual([]);
  });
});

describe("every result", () => {
  it("every message code has its meaning and its remedy", () => {
    expect(issueMeanings.size).toBeGreaterThan(100);
    for (const code of issueMeanings.keys()) {
      expect(topicOf(code, "message code")?.details).toEqual([["remedy", expect.stringMatching(/\w.*\.$/u)]]);
    }
  });

  it("every CSV file and column is explained", () => {
    for (const { name, columns } of tableSpecs) {
      expect(topicOf(`${name}.csv`, "CSV file")?.details?.[0]?.[1].split(", ")).toHaveLength(columns.length);
      for (const column of columns) {
        const meant = found(column.name).topics.filter(({ kind }) => kind === "column");
        expect(meant.some(({ of, meaning }) => of?.includes(`${name}.csv`) && meaning === `${column.meaning}.`)).toBe(
          true,
        );
      }
    }
  });

  const shippedColumn = (file: string, column: string): readonly string[] => {
    const text = readFileSync(`reports/one-station-against-two-station/${file}.csv`, "utf8");
    const [header = "", ...rows] = text.trim().split("\r\n");
    const at = header.split(",").indexOf(column);
    // No text before these columns holds a comma.
    return [
      ...new Set(rows.map((row) => /^"([^"]*)"/u.exec(row.split(",").slice(at).join(","))?.[1] ?? row.split(",")[at]!)),
    ];
  };

  it.each([
    ["throughput", "measure", "measure"],
    ["kpi", "kpi", "indicator"],
    ["window", "quantity", "window row"],
    ["time-by-state", "state", "state"],
  ] as const)("every %s.csv row's %s is explained", (file, column, kind) => {
    const names = shippedColumn(file, column).map((name) => name.replace(/^open to .*/u, "open to"));
    expect(names.length).toBeGreaterThan(3);
    // A row of the window after a run says how its quantity spreads over the shots.
    const words = names.map((name) => name.replace(/ of the run, \w+$/u, ""));
    const known = (word: string) => topicOf(word, kind) ?? topicOf(word, "term");
    expect(words.filter((word) => known(word) === undefined)).toEqual([]);
  });

  it("a row of the process window says what helps below its low limit and above its high one", () => {
    const labels = (name: string) => topicOf(name, "window row")?.details?.map(([label]) => label);
    expect(labels("parison length before sag")).toEqual(["needs", "below", "source"]);
    expect(labels("sag of the parison when the mold has closed")).toEqual(["needs", "above", "source"]);
  });

  it("every command, option and exit code is explained", () => {
    for (const { name, options, meaning } of builtCommands) {
      expect(topicOf(name, "command")?.meaning.toLowerCase()).toContain(meaning.toLowerCase());
      for (const { flags } of options) expect(topicOf(/--[a-z]+/u.exec(flags)![0], "option")).toBeDefined();
    }
    for (const code of Object.values(exitCode)) expect(topicOf(String(code), "exit code")).toBeDefined();
  });

  // NIST SP 811, 2008, appendix B.8: 1 psi = 6.894757 E+03 Pa, 1 lb/h = 1.259979 E-04 kg/s [M].
  it("every unit with its SI value", () => {
    const inSi = (unit: string) => topicOf(unit, "unit")?.details?.[0]?.[1] ?? "";
    const sevenDigits = (unit: string) => Number(/= ([\d.e-]+) /u.exec(inSi(unit))?.[1]).toPrecision(7);
    expect(sevenDigits("psi")).toBe("6894.757");
    expect(sevenDigits("lb/h")).toBe("0.0001259979");
    expect(kindsOf("kg/h")).toEqual(["unit"]);
    expect(kindsOf("inches")).toEqual(["unit"]);
  });
});

describe("a question is answered", () => {
  it("what ± means", () => {
    for (const words of [["±"], ["+-"], ["half", "width"], ["what", "does", "±", "mean?"]]) {
      expect(found(...words).topics[0]?.meaning).toContain("95 % confidence interval");
    }
  });

  it("why the screw waits", () => {
    const [state] = found("holding", "a", "full", "shot").topics;
    expect(state?.meaning).toContain("no mold is open and empty");
    expect(found("why", "does", "the", "screw", "wait").topics[0]?.more).toContain("holding a full shot");
    expect(found("holding", "a", "full", "shot").unknown).toEqual([]);
  });

  it("how two operators serve four molds, by a snippet that runs", () => {
    const [term] = found("operators").topics;
    const rest =
      "format: 1\ndelivery: { kind: reciprocating-screw, recharge: 3.9 s, drop: 1.2 s }\nvalve: { shift: 0.3 s }\n";
    const { scenario, issues } = readSettled(`${rest}${term?.example}\n`, { name: "x", file: "x.yaml" });
    expect(issues).toEqual([]);
    expect([scenario?.operators, scenario?.stations.length]).toEqual([2, 4]);
    expect(scenario?.stations.every(({ remove }) => remove.by === "operator")).toBe(true);
    expect(found("how do I let two operators serve four molds?").topics[0]).toBe(term);
  });

  it("of safety, with the whole text", () => {
    expect(explainAnswer(found("safety").topics).replaceAll(/\s+/gu, " ")).toContain(cautions);
  });

  it("screw and plasticator are one; removal, valve shift and work shift are distinguished", () => {
    expect(found("screw").topics[0]).toBe(found("plasticator").topics[0]);
    expect(kindsOf("removal")).toEqual(["term", "key", "choice", "state", "window row"]);
    expect(found("valve", "shift").topics[0]?.meaning).toContain("not a work shift");
    expect(found("work", "shift").topics[0]?.meaning).toContain("not a valve shift");
  });
});

describe("words", () => {
  it("that belong together are one topic, others are asked for one by one", () => {
    expect(found("awaiting", "melt").topics.map(({ names }) => names[0])).toEqual(["awaiting melt"]);
    expect(found("Awaiting Melt")).toEqual(found("awaiting-melt"));
    expect(new Set(found("triangular", "awaiting", "melt").topics.map(({ kind }) => kind))).toEqual(
      new Set(["distribution", "state"]),
    );
  });

  it("with a slip find what was meant, others nothing", () => {
    expect(found("unit-mising").unknown).toEqual([{ word: "unit-mising", meant: ["unit-missing"] }]);
    expect(found("holdign", "a", "ful", "shot").unknown[0]?.meant).toContain("holding a full shot");
    expect(found("plasticatngRate").unknown[0]?.meant).toContain("plasticatingRate");
    expect(found("xyzzyxyzzy").unknown).toEqual([{ word: "xyzzyxyzzy", meant: [] }]);
    expect(found("").topics).toEqual([]);
  });

  it("with several meanings have them all", () => {
    expect(new Set(kindsOf("recharge"))).toEqual(new Set(["key"]));
    expect(kindsOf("reject share")).toEqual(["measure"]);
    expect(new Set(kindsOf("operator"))).toEqual(new Set(["choice", "column", "key", "term"]));
  });
});

it("alone it lists every kind, and each list all of its kind", () => {
  const listed = listsOf(topics);
  const shown = overview(listed).replaceAll(/\n {4,}/gu, " ");
  for (const { names, members = [] } of listed) {
    expect(shown).toContain(`\n${names[0]}: `);
    if (members.length > 60) expect(shown).toContain(`${members.length} in all`);
  }
  const all = new Set(listed.flatMap(({ members = [] }) => members));
  expect(topics.filter(({ kind, names }) => kind !== "list" && !all.has(names[0]))).toEqual([]);
});

it("its table has a row a topic", () => {
  const { rows, columns } = explanationTable(found("cool").topics);
  expect(rows).toHaveLength(1);
  expect(rows[0]?.[columns.findIndex(({ name }) => name === "belongs_to")]).toBe("stations.*.steps.cool");
});
