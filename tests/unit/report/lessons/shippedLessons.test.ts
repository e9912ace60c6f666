// Holds every shipped lesson to its record: all numbers come from it, and the simple ones equal a calculation by formula.
import { describe, expect, it } from "vitest";
import type { Exercise } from "#report/lessons/exercise.ts";
import { findValue } from "#report/lessons/findValue.ts";
import { runOnce } from "#report/lessons/spells.ts";
import { lessonFiles, readShipped, solveShipped, textOf } from "./shipped.ts";

const solved = new Map(lessonFiles.map((file) => [file, solveShipped(file)]));
const exercisesOf = (file: string): readonly Exercise[] => {
  const { stages, question } = solved.get(file)!.solved;
  return [...stages.map(({ predict }) => predict), question];
};
const rightOf = ({ choices }: Exercise): string => choices.find(({ isRight }) => isRight)!.text;

/** Every text of a lesson, filled in. */
function textsOf(file: string): readonly string[] {
  const { title, goal, stages } = solved.get(file)!.solved;
  return [
    title,
    goal,
    ...stages.flatMap(({ look, reveal, explain }) => [look, reveal, explain]),
    ...exercisesOf(file).flatMap(({ ask, choices }) => [
      ask,
      ...choices.flatMap(({ text, because }) => [text, because]),
    ]),
  ];
}

describe("the shipped lessons", () => {
  it("are the nine of the course, in their order", () => {
    expect([...solved.values()].map(({ solved: { title } }) => title.split(" ")[0])).toEqual("123456789".split(""));
  });

  it.each(lessonFiles)("%s is read without an issue", (file) => {
    expect(readShipped(file).issues).toEqual([]);
  });

  it.each(lessonFiles)("%s has one right choice in every question, and a reason for every choice", (file) => {
    for (const { choices } of exercisesOf(file)) {
      expect(choices.filter(({ isRight }) => isRight)).toHaveLength(1);
      expect(new Set(choices.map(({ text }) => text)).size).toBe(choices.length);
      expect(choices.every(({ because }) => because !== "")).toBe(true);
    }
  });

  it.each(lessonFiles)("%s shows a stretch of its record, before and after the curtain", (file) => {
    const { runs, solved: lesson } = solved.get(file)!;
    for (const { cell, from, at, until } of lesson.stages) {
      expect(from).toBeLessThanOrEqual(at);
      expect(at).toBeLessThan(until);
      expect(until).toBeLessThanOrEqual(runs.get(cell)!.scenario.run.length);
    }
  });

  it("show no resource in the state that they ask for", () => {
    const asked = lessonFiles.flatMap((file) => {
      const { lesson, runs, solved: answers } = solved.get(file)!;
      return lesson.stages.flatMap(({ predict }, i) => {
        const { cell, resource, at, predict: shown } = answers.stages[i]!;
        const spell = runs.get(cell)!.spells.find((each) => each.resource === resource && each.start === at);
        const right = predict.choices.find((_, number) => shown.choices[number]!.isRight)!;
        return "is" in right ? [{ file, right: right.is, shows: spell!.state }] : [];
      });
    });
    expect(asked.length).toBeGreaterThan(5);
    for (const { file, right, shows } of asked) expect(right, file).not.toBe(shows);
  });

  it.each(lessonFiles)("%s has short sentences, and no place in them is left open", (file) => {
    for (const text of textsOf(file)) {
      expect(text).not.toMatch(/[{}]|undefined|NaN|Infinity/u);
      for (const sentence of text.split(/(?<=[.?!])\s/u)) {
        expect(sentence.split(/\s+/u).length, sentence).toBeLessThanOrEqual(25);
      }
    }
  });

  // Results typed into a text would stay when the record changes. What is left are settings: 1 s less cooling, a 20 L canister.
  it.each(lessonFiles)("%s has no number of a result typed into a text", (file) => {
    const texts = textOf(file).slice(textOf(file).indexOf("\nstages:"));
    const prose = [
      ...texts.matchAll(/(?:look|ask|text|because|reveal|explain): (?:>-\n)?([^]*?)(?=\n\s*(?:- )?[a-z]+:|$)/gu),
    ];
    const digits = prose.flatMap(
      ([, text = ""]) => text.replaceAll(/\{[^}]*\}|side \d/gu, "").match(/\d[^ ]* \w+/gu) ?? [],
    );
    expect(digits.filter((each) => !["1 s", "20 L"].includes(each))).toEqual([]);
  });
});

// Closed forms of equal stations with fixed times [C]: 109.2 g at 110 kg/h and 360 kg/h, 0.3 s a valve shift.
describe("the numbers of the lessons", () => {
  const [recharge, drop, shift] = [(0.1092 * 3600) / 110, (0.1092 * 3600) / 360, 0.3];
  const [close, blow, cool, vent, open, remove] = [0.8, 0.5, 7.5, 0.5, 0.8, 0.85];
  const mold = shift + drop + close + blow + cool + vent + open + remove;
  const screw = recharge + drop + 2 * shift;
  const shown = (seconds: number): string => `${seconds.toFixed(2)} s`;

  it("are the cycle of one mold", () => {
    const [, , , question] = exercisesOf("1-one-mold.yaml");
    expect(rightOf(question!)).toBe(shown(mold));
    expect(textsOf("1-one-mold.yaml").join(" ")).toContain(
      `That is ${Math.round((100 * cool) / mold)} % of the cycle.`,
    );
  });

  it("are the wait of the screw", () => {
    expect(rightOf(exercisesOf("2-screw-and-mold.yaml").at(-1)!)).toBe(shown(mold - screw));
    const slow = (0.1092 * 3600) / 30 + drop + 2 * shift;
    expect(textsOf("2-screw-and-mold.yaml").join(" ")).toContain(
      `Every cycle now takes ${shown(slow)}, and not ${shown(mold)}.`,
    );
  });

  it("are what a recharge costs that waits for the closed mold", () => {
    const [, loss, lag] = exercisesOf("3-valve.yaml");
    expect(rightOf(loss!)).toBe(shown(close - shift));
    expect(rightOf(lag!)).toBe(shown(shift));
  });

  it("are the pace of two molds, which is that of the molds", () => {
    expect(rightOf(exercisesOf("4-second-mold.yaml").at(-1)!)).toBe(shown(mold / 2));
    expect(textsOf("4-second-mold.yaml").join(" ")).toContain(`Here it is ${(mold / screw).toFixed(2)}:`);
  });

  it("are the pace of three molds, which is that of the screw", () => {
    const texts = textsOf("5-third-mold.yaml").join(" ");
    expect(texts).toContain(`${Math.round(3600 / screw)} shots an hour: ${(mold / screw).toFixed(2)} times as many`);
    expect(texts).toContain(`The right mold waits ${shown(3 * screw - mold)} in this cycle.`);
    expect(rightOf(exercisesOf("5-third-mold.yaml").at(-1)!)).toBe("The screw.");
  });

  it("are the rate without variation", () => {
    const period = (0.3 + 1.1 + 0.8 + 0.5 + 7.5 + 0.5 + 0.8 + 1) / 2;
    expect(textsOf("6-variation.yaml").join(" ")).toContain(
      `${((2 * 3600) / period).toLocaleString("en-US")} parts an hour`,
    );
  });

  it("are the stop with the clearing of the lost shot", () => {
    expect(rightOf(exercisesOf("8-stops.yaml").at(-1)!)).toBe("35.00 s");
    expect(rightOf(exercisesOf("8-stops.yaml")[0]!)).toBe(shown(3.6 + 0.3 + 1.1 + 0.3 + 3.6));
  });

  it("are the hang, which is the closing of the clamp", () => {
    expect(rightOf(exercisesOf("9-melt.yaml").at(-1)!)).toBe("1.60 s");
  });

  it("count a pace from the second half of a record, when the cell has settled", () => {
    const { runs, lesson } = solved.get("5-third-mold.yaml")!;
    const cell = lesson.cells.get("three molds")!;
    const short = runOnce({ ...cell, run: { ...cell.run, length: 150 } });
    const found = { run: () => short, moment: () => undefined, value: () => undefined };
    expect(findValue({ by: "secondsPerShot", cell: "three molds" }, found)).toEqual({
      unit: "s",
      number: expect.closeTo(screw, 5),
    });
    expect(runs.size).toBe(4);
  });

  it("count each task of an operator, also where one follows the other", () => {
    const { spells } = solved.get("7-operators.yaml")!.runs.get("one operator")!;
    const tasks = spells.filter(
      ({ resource, state, end }) => resource === "operator 1" && state === "packing" && end !== null,
    );
    const packed = spells.filter(
      ({ resource, state, end }) => resource === "pack" && state === "working" && end !== null,
    );
    expect(tasks.length).toBeGreaterThan(500);
    expect(tasks.map(({ start, end }) => [start, end])).toEqual(packed.map(({ start, end }) => [start, end]));
  });

  it("follow the record when the scenario is another", () => {
    const other = textOf("2-screw-and-mold.yaml").replace("plasticatingRate=110 kg/h", "plasticatingRate=60 kg/h");
    const { question } = solveShipped("2-screw-and-mold.yaml", other).solved;
    expect(rightOf(question)).toBe(shown(mold - (0.1092 * 3600) / 60 - drop - 2 * shift));
  });
});
