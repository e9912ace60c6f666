// Which two times of a process pass as one, since no other process sees the moment between them.
import { describe, expect, it } from "vitest";
import { compileTable } from "#engine/compiler/program.ts";
import { secludedPassages } from "#engine/compiler/seclusion.ts";
import type { ProcessSpec, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import { ticks } from "../../support/runTable.ts";

const resource = (name: string) => ({
  name,
  states: (["waiting", "working", "resting"] as const).map((state) => ({
    name: state,
    kind: state === "waiting" ? ("waiting" as const) : ("working" as const),
  })),
});

/** A process that takes its turn, works and then rests. */
function secluded(changes: { readonly work?: Partial<StepSpec>; readonly rest?: Partial<StepSpec> } = {}): StepSpec[] {
  return [
    { name: "turn", needs: [{ place: "free", meanwhile: "waiting" }], shows: [{ resource: "a", state: "working" }] },
    { name: "work", shows: [{ resource: "a", state: "working" }], time: ticks(3), ...changes.work },
    { name: "rest", shows: [{ resource: "a", state: "resting" }], time: ticks(2), ...changes.rest },
    { name: "give", gives: [{ place: "free" }] },
  ];
}

function passages(steps: readonly StepSpec[], others: readonly ProcessSpec[] = []): readonly string[] {
  const table: StepTable = {
    resources: ["a", "c", "b 1", "b 2"].map(resource),
    places: ["free", "never"].map((name) => ({ name, tokens: name === "free" ? 1 : 0 })),
    processes: [{ name: "a", resource: "a", steps }, ...others],
  };
  const { rows } = compileTable(table);
  return secludedPassages(rows, table).flatMap((is, i) => (is && rows[i]!.process === 0 ? steps[i]!.name : []));
}

const other = (step: StepSpec, own = "c"): ProcessSpec => ({
  name: "other",
  resource: own,
  steps: [step, { name: "on", time: ticks(5) }],
});

describe("two times of a process", () => {
  it("pass as one where the first has no effect and the second shows what no other process shows", () => {
    expect(passages(secluded())).toEqual(["work"]);
    expect(
      passages(secluded(), [other({ name: "b", shows: [{ resource: "c", state: "working" }], time: ticks(1) })]),
    ).toEqual(["work"]);
  });

  it("pass as one where another process waits for the same resource and shows nothing of it", () => {
    const quiet = other({ name: "b", needs: [{ place: "never" }], time: ticks(1) }, "a");
    expect(passages(secluded(), [quiet])).toEqual(["work"]);
  });

  it.each<[string, Partial<StepSpec>]>([
    ["gives", { gives: [{ place: "free" }] }],
    ["counts", { counts: { done: 1 } }],
  ])("do not where the first %s", (_, work) => {
    expect(passages(secluded({ work }))).toEqual([]);
  });

  it.each<[string, Partial<StepSpec>]>([
    ["needs", { needs: [{ place: "free", meanwhile: "waiting" }] }],
    ["shows two resources", { shows: ["a", "c"].map((name) => ({ resource: name, state: "resting" })) }],
    ["shows none", { shows: [] }],
  ])("do not where the second %s", (_, rest) => {
    expect(passages(secluded({ rest }))).toEqual([]);
  });

  it.each<[string, ProcessSpec]>([
    ["shows it too", other({ name: "b", shows: [{ resource: "a", state: "working" }], time: ticks(1) })],
    ["waits in its name", other({ name: "b", needs: [{ place: "never", meanwhile: "waiting" }], time: ticks(1) }, "a")],
    [
      "waits in its name for its turn",
      other({ name: "b", needs: [{ place: "never", whileOthersTurn: "waiting" }], time: ticks(1) }, "a"),
    ],
  ])("do not where another process %s", (_, process) => {
    expect(passages(secluded(), [process])).toEqual([]);
  });

  it("do not where another process shows one of a family by its number", () => {
    const rest = { shows: [{ resource: "b 2", state: "resting" }] };
    expect(passages(secluded({ rest }))).toEqual(["work"]);
    const byNumber = other({ name: "b", shows: [{ resource: "b 1", by: "cargo", state: "working" }], time: ticks(1) });
    expect(passages(secluded({ rest }), [byNumber])).toEqual([]);
  });

  it.each<[string, Partial<StepSpec>]>([
    ["is a clock", { isClock: true }],
    ["lasts to an instant", { time: ticks(3, { until: 7 }) }],
    ["passes while another works", { time: ticks(3, { whileWorking: "c" }) }],
  ])("do not where the first %s", (_, work) => {
    expect(passages(secluded({ work }))).toEqual([]);
  });
});
