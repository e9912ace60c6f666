// Every key of a lesson file, described once.
import type * as z from "zod/mini";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { CellResource } from "#cell/words/cellTable.ts";
import { isOpenTo, stateNames, type StateKind } from "#cell/words/stateNames.ts";
import { format } from "#scenario/keys/glossary.ts";
import { byName, eitherOr, isMapping, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";
import { oneOf, text, wholeNumber } from "#scenario/values/plainLeaf.ts";

/** A scenario that stands in the lesson is read by the reader of scenarios. */
const inlineScenario: Leaf<Readonly<Record<string, unknown>>> = leaf({
  expected: "a file such as `two-station.yaml`, or the scenario itself",
  json: { type: "object" },
  read: (written) =>
    isMapping(written) ? { value: written } : refused(wrongType(written, "a file, or the scenario itself")),
});

const cell = mapping(
  () => ({
    scenario: optional(
      eitherOr(text("two-station.yaml"), inlineScenario),
      "A scenario file, with its way from the lesson's folder, or a scenario written out here.",
    ),
    like: optional(text("one mold"), "Another cell with a `scenario`: the same, with the changes written here."),
    set: optional(
      listOf(text("stations.*.steps.cool=7.5 s"), "a list such as `[stations.*.steps.cool=7.5 s]`"),
      "Changes of the scenario, each as `--set` takes it.",
    ),
    length: optional(text("10 min"), "Simulated time; the scenario's where absent."),
    seed: optional(text("monday"), "Seed of the random numbers; the scenario's where absent."),
  }),
  "{ scenario: two-station.yaml, length: 10 min }",
);

const states: readonly string[] = Object.values(stateNames);

const state: Leaf<string> = leaf({
  expected: "a state such as `cooling` or `awaiting melt`",
  json: { type: "string" },
  read: (written) => {
    const expected = "a state such as `cooling` or `awaiting melt`";
    if (typeof written !== "string") return refused(wrongType(written, expected));
    if (states.includes(written) || isOpenTo(written)) return { value: written };
    const meant = didYouMean(written, states);
    const remedy =
      meant === undefined ? "See the column `state` of `time-by-state.csv`." : `Did you mean \`${meant}\`?`;
    return refused({ code: "unknown-choice", message: `There is no state \`${written}\`.`, expected, remedy });
  },
});

const kinds = {
  working: "It works.",
  waiting: "It waits.",
  stopped: "It is stopped.",
  "set-up": "It is heated, purged or changed.",
  off: "It is off shift or on break.",
} satisfies Readonly<Record<StateKind, string>>;

const owners = {
  screw: "The screw.",
  valve: "The selector valve.",
  ram: "A ram.",
  station: "A station.",
  mask: "A mask.",
  server: "A server of the takeaway.",
  operator: "An operator.",
  shift: "The calendar.",
} satisfies Readonly<Record<CellResource["kind"], string>>;

const patternShape = () => ({
  cell: optional(text("two molds"), "A cell of this lesson; the first where absent."),
  resource: optional(text("left"), "The resource by its name in the tables: `plasticator`, `valve`, a station."),
  of: optional(oneOf(owners), "What the resource is, in place of its name."),
  state: optional(state, "The state, as in `time-by-state.csv`."),
  kind: optional(oneOf(kinds), "The kind of the state."),
  station: optional(text("left"), "The station whose shot is served."),
  shot: optional(wholeNumber(1, 1_000_000), "The number of that shot at its station."),
  lasts: optional(quantity("time", { above: 0 }), "It lasts this long or longer.", "1 s"),
});

const pattern = mapping(patternShape, "{ resource: left, state: awaiting melt }");

const moment = mapping(
  () => ({
    ...patternShape(),
    occurrence: optional(wholeNumber(1, 100_000), "Which one of those that fit; the first where absent."),
    after: optional(text("first drop"), "Another moment of this lesson: only what begins then or later counts."),
  }),
  "{ resource: left, state: awaiting melt, occurrence: 2 }",
);

const momentName = text("first drop");
const pairOf = (example: string) => listOf(text(example), `a list of two, such as \`[${example}, …]\``);

const value = mapping(
  () => ({
    start: optional(momentName, "Seconds at which the moment begins."),
    duration: optional(momentName, "Seconds that the state lasts."),
    between: optional(pairOf("first drop"), "Seconds from the beginning of one moment to that of another."),
    resource: optional(momentName, "The resource that is in the state."),
    state: optional(momentName, "The state."),
    next: optional(momentName, "The state that follows."),
    startedBy: optional(momentName, "The resource whose step had to end before the state could begin."),
    freedBy: optional(momentName, "The resource whose step had to end before the state could end."),
    hang: optional(momentName, "Seconds that the parison of this shot hangs until the mold is closed."),
    sag: optional(momentName, "Share by which the parison of this shot has sagged by then."),
    timeAtHeat: optional(momentName, "Seconds at heat of the melt of this shot."),
    count: optional(pattern, "How often this happens in the record."),
    mean: optional(pattern, "Mean duration in seconds."),
    shortest: optional(pattern, "Shortest duration in seconds."),
    longest: optional(pattern, "Longest duration in seconds."),
    total: optional(pattern, "Seconds of all durations together."),
    share: optional(pattern, "Share of the time of these resources that is spent so."),
    secondsPerShot: optional(text("two molds"), "Mean seconds a shot of a cell."),
    shotsPerHour: optional(text("two molds"), "Shots per hour of a cell."),
    partsPerHour: optional(text("two molds"), "Parts per hour of a cell."),
    idealSecondsPerShot: optional(text("two molds"), "Seconds a shot when every step takes its mean time."),
    pace: optional(text("two molds"), "The resource that sets the pace at mean times."),
    ratio: optional(pairOf("one rate"), "One value divided by another."),
    shareOf: optional(pairOf("one time"), "The same as a share: one value in percent of another."),
    difference: optional(pairOf("one rate"), "One value less another."),
  }),
  "{ duration: first drop }",
);

/** A number without unit, in the unit of the value that it bounds: seconds, a share from 0 to 1, a count. */
const bound: Leaf<number> = leaf({
  expected: "a number such as `1.5`",
  json: { type: "number" },
  read: (written) =>
    typeof written === "number" && Number.isFinite(written)
      ? { value: written }
      : refused({ ...wrongType(written, "a number such as `1.5`"), remedy: "Write a number without a unit." }),
});

const choice = mapping(
  () => ({
    text: optional(text("The screw waits."), "The choice in words."),
    is: optional(text("plasticator"), "It is right where the value is this name."),
    from: optional(
      bound,
      "It is right where the value is this or more: seconds, a share from 0 to 1, a ratio, a count.",
    ),
    below: optional(bound, "It is right where the value is less than this."),
    value: optional(text("wait"), "The choice shows this value of the lesson."),
    because: required(text("The shot is full before the mold opens."), "Why it is right or wrong."),
  }),
  "{ text: The screw., is: plasticator, because: The mold is still shut. }",
);

const question = mapping(
  () => ({
    ask: required(text("Who waits next?"), "The question."),
    by: required(text("wait"), "The value of the lesson that decides which choice is right."),
    choices: required(listOf(choice, "two choices or more"), "What the trainee can choose."),
  }),
  "{ ask: Who waits?, by: waiter, choices: [] }",
);

const stage = mapping(
  () => ({
    from: optional(momentName, "Where the chart begins; 12 s before `at` where absent."),
    at: required(momentName, "The chart ends at the beginning of this moment until the trainee has chosen."),
    until: required(momentName, "Where the chart ends after that: at the end of this moment."),
    look: required(text("The mold is closed."), "What there is to see before the question."),
    predict: required(question, "The question whose answer the curtain hides."),
    reveal: required(text("The screw is full at {full}."), "What the record shows."),
    explain: required(text("The mold cools longer."), "Why it is so."),
  }),
  "{ at: first drop, until: first close }",
);

export const lessonKeys = mapping(
  () => ({
    format: optional(format, "Version of the format."),
    title: required(text("The screw waits"), "What the list of lessons shows."),
    goal: required(text("You can say who waits."), "What the trainee can do afterwards."),
    cells: required(
      byName(cell, "cells by their names", "two molds"),
      "The cells that run; the first is the usual one.",
    ),
    moments: required(byName(moment, "moments by their names", "first drop"), "What is found in the records."),
    values: required(byName(value, "values by their names", "wait"), "What the texts and questions use."),
    stages: required(listOf(stage, "a list of predictions"), "The predictions, in their order."),
    question: required(question, "The question at the end."),
  }),
  "{ title: The screw waits }",
);

export type WrittenLesson = z.infer<typeof lessonKeys>;
export type WrittenPattern = z.infer<typeof pattern>;
export type WrittenValue = z.infer<typeof value>;
export type WrittenCell = z.infer<typeof cell>;
