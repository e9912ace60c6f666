// Drills on what a change is worth: where does half a second less buy most?
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { seconds } from "#report/words/digits.ts";
import { idealWords } from "#report/words/idealWords.ts";
import type { Choice } from "#report/lessons/exercise.ts";
import { runOnce } from "#report/lessons/spells.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Drill, ReadCell } from "./drill.ts";

/** Steps that can be half a second shorter, each with its setting; of equal ones the first is a choice. */
const steps = [
  ["The cooling in every mold", "stations.*.steps.cool"],
  ["The recharge", "delivery.recharge"],
  ["The parison drop", "delivery.drop"],
  ["The closing of every mold", "stations.*.steps.close"],
  ["The removal at every mold", "stations.*.steps.remove.time"],
] as const;

/** Every step takes its mean time, so that the period is exact. */
const meanTimes = [
  "calendar=null",
  "delivery.recharge=4 s",
  "stations.*.steps.cool=7.5 s",
  "stations.*.steps.remove.time=1.5 s",
];

/** Cells in which another resource sets the pace, and one in which the screw nearly does. */
const cells: readonly (readonly string[])[] = [
  meanTimes,
  [...meanTimes, "delivery.recharge=6.2 s"],
  [...meanTimes, "delivery.recharge=6.6 s", "delivery.rechargeStarts=mold-closed"],
  [...meanTimes, "delivery.recharge=4.6 s", "stations.*.steps.cool=7.1 s"],
];

export function halfSecondDrills(read: ReadCell): readonly Drill[] {
  return cells.flatMap((set) => {
    const gains = gainsOf((more) => read("two-molds.yaml", [...set, ...more]));
    return gains === undefined ? [] : [drillOf(read("two-molds.yaml", set), gains)];
  });
}

interface Gain {
  readonly name: string;
  /** Seconds a shot with the change. */
  readonly period: number;
}

interface Gains {
  readonly period: number;
  readonly best: Gain;
  /** Those that gain clearly less; the rest would be right as well. */
  readonly less: readonly Gain[];
}

/** Seconds a shot: what counts as a difference. */
const clear = 0.01;

/** Undefined where no step gains more than another. */
function gainsOf(vary: (set: readonly string[]) => Scenario): Gains | undefined {
  const period = idealCycle(vary([])).secondsPerShot;
  const gains = steps
    .map(([name, path]) => ({ name, period: idealCycle(vary([`${path}=-0.5 s`])).secondsPerShot }))
    .toSorted((one, other) => one.period - other.period);
  const [best] = gains;
  const less = gains.filter((gain) => gain.period > best!.period + clear);
  return best === undefined || less.length === 0 || best.period > period - clear ? undefined : { period, best, less };
}

function drillOf(cell: Scenario, { period, best, less }: Gains): Drill {
  const run = runOnce(cell);
  const choices = [best, ...less].map(({ name, period: with_ }): Choice => {
    const gain = period - with_;
    const words = gain < clear ? "gains nothing" : `gains ${seconds(gain)} a shot`;
    return {
      text: name,
      isRight: name === best.name,
      because: `Run again with 0.5 s less, the cell ${words}: ${seconds(with_)} a shot.`,
    };
  });
  const order = steps.map(([name]) => name);
  const at = run.scenario.run.length / 2;
  return {
    look: `Every step takes the same time in each cycle. ${sentence(cell)}`,
    charts: [{ title: "The cell", run, from: at - 30, at, until: at }],
    exercise: {
      ask: "One step becomes half a second shorter. Where is that worth most?",
      choices: choices.toSorted((one, other) => order.indexOf(one.text as never) - order.indexOf(other.text as never)),
    },
  };
}

const sentence = (cell: Scenario): string => `The cell takes ${idealWords(idealCycle(cell))}.`;
