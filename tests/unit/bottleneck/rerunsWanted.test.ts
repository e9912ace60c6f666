// Which replications are made again with a step longer or shorter, with answers that are written down.
import { describe, expect, it } from "vitest";
import { leadingSteps, scalesOf } from "#analysis/bottleneck/leadingSteps.ts";
import { rerunsWanted, type Sensitivity } from "#analysis/bottleneck/reruns.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import type { StepScale } from "#cell/layers/planCell.ts";
import { answerMade } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";

const share = (step: string, of: number, role = "mold.cool") =>
  ({ resource: "station 01", step, role, owner: "station 01", share: of, tied: 0 }) as never;
const made = (count: number, shares: readonly [string, number, string?][]) =>
  Array.from({ length: count }, (_, i) =>
    answerMade(
      i + 1,
      { "good parts per hour": 100 },
      { criticalShares: shares.map(([step, of, role]) => share(step, of, role)) },
    ),
  );
const nameOf = (scale: StepScale | null | undefined) => scale?.steps[0]?.step;

/** Reruns of some steps: good parts of the next replications, longer and shorter in turn. */
function wanted(
  answers: readonly ReplicationAnswer[],
  reruns: Readonly<Record<string, readonly number[]>> = {},
  sensitivity: Sensitivity = "few",
) {
  const steps = leadingSteps(oneStation, answers);
  const answersTo = (scale: StepScale) =>
    (reruns[nameOf(scale) ?? ""] ?? [])
      .map((parts, i) => {
        const replication = i + 1;
        const own = steps.map(scalesOf).find(({ longer }) => nameOf(longer) === nameOf(scale))!;
        const used = replication % 2 === 1 ? own.longer : own.shorter;
        return { ...answerMade(replication, { "good parts per hour": parts }), task: { replication, scale: used } };
      })
      .filter(({ task }) => task.scale.factor === scale.factor);
  return rerunsWanted(steps, answers, { sensitivity, answersTo }).map(({ replication, scale }) => [
    nameOf(scale),
    replication,
    scale?.factor,
  ]);
}
const four = (step: string) =>
  [1, 2, 3, 4].map((replication) => [step, replication, replication % 2 === 1 ? 1.02 : 0.98]);

describe("the leading steps", () => {
  const names = (shares: readonly [string, number, string?][]) =>
    leadingSteps(oneStation, made(2, shares)).map(({ members }) => members[0]?.step);

  it("have the largest shares of the critical path, at most five of a hundredth and more", () => {
    expect(
      names([
        ["a", 0.01],
        ["b", 0.5],
        ["c", 0.0099],
        ["d", 0.2],
      ]),
    ).toEqual(["b", "d", "a"]);
    expect(names(["a", "b", "c", "d", "e", "f"].map((step, i) => [step, 0.1 + i / 100]))).toEqual([
      "f",
      "e",
      "d",
      "c",
      "b",
    ]);
    expect(
      names([
        ["a", 0.3],
        ["b", 0.7, "stop.stand"],
      ]),
    ).toEqual(["a"]);
  });
});

describe("the reruns that are wanted", () => {
  const one: readonly [string, number][] = [
    ["a", 0.6],
    ["b", 0.2],
  ];

  it("are four of the first step, within half of the replications", () => {
    expect(wanted(made(8, one))).toEqual(four("a"));
    expect(wanted(made(7, one))).toEqual([]);
    expect(wanted(made(8, one), {}, "off")).toEqual([]);
  });

  it("begin two steps together where the second has half of the first one's share", () => {
    const rivals: readonly [string, number][] = [
      ["a", 0.6],
      ["b", 0.3],
    ];
    expect(wanted(made(16, rivals))).toEqual([...four("a"), ...four("b")]);
    expect(wanted(made(15, rivals))).toEqual(four("a"));
    expect(
      wanted(
        made(16, [
          ["a", 0.6],
          ["b", 0.29],
        ]),
      ),
    ).toEqual(four("a"));
  });

  it("go on where an interval is wide, two at a time, then with the next step", () => {
    // By hand: slopes of −1 each are settled; a part more or less in a hundred is a slope of a half.
    const settled = [100 / 1.02, 100 / 0.98, 100 / 1.02, 100 / 0.98];
    const wide = [98, 101, 99, 103];
    expect(wanted(made(16, one), { a: settled })).toEqual(four("b"));
    expect(wanted(made(11, one), { a: settled })).toEqual([]);
    expect(wanted(made(12, one), { a: wide })).toEqual([
      ["a", 5, 1.02],
      ["a", 6, 0.98],
    ]);
    expect(wanted(made(11, one), { a: wide })).toEqual([]);
    // The wider one goes on.
    expect(wanted(made(40, one), { a: wide, b: [90, 101, 99, 113] })).toEqual([
      ["b", 5, 1.02],
      ["b", 6, 0.98],
    ]);
    expect(wanted(made(40, one), { a: settled, b: settled })).toEqual([]);
  });

  it("are all replications with full, but those that are made", () => {
    const all = wanted(made(3, [["a", 0.6]]), {}, "full");
    expect(all).toEqual([0.98, 1.02].flatMap((factor) => [1, 2, 3].map((replication) => ["a", replication, factor])));
    expect(wanted(made(3, [["a", 0.6]]), { a: [100, 100] }, "full")).toEqual([
      ["a", 1, 0.98],
      ["a", 3, 0.98],
      ["a", 2, 1.02],
      ["a", 3, 1.02],
    ]);
  });
});
