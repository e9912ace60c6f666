// A choice with observations that are written down.
import type { ChoiceGoal, ChoiceState, Course } from "#analysis/choice/choice.ts";
import type { Observation } from "#analysis/choice/observed.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { usualGoal } from "../../support/chosen.ts";
import { oneStation } from "../../support/madeOrder.ts";

export const seen = (value: number, more: Partial<Observation> = {}): Observation => ({
  value,
  goodParts: value,
  costPerHour: null,
  costPerThousand: null,
  met: null,
  stops: {},
  ...more,
});

/** Values that go up and down by a spread, a little more in each replication. */
export const around = (mean: number, spread: number, count = 20): readonly Observation[] =>
  Array.from({ length: count }, (_, i) => seen(mean + (i % 2 === 0 ? spread : -spread)));

export interface MadeCourse extends Partial<Course> {
  readonly investment?: number;
  readonly stations?: number;
}

export function courseOf(
  name: string,
  observations: readonly Observation[],
  { investment, stations = 1, ...more }: MadeCourse = {},
): Course {
  const scenario: Scenario = {
    ...oneStation,
    name,
    stations: Array.from({ length: stations }, (_, i) => ({ ...oneStation.stations[0]!, name: `side ${i + 1}` })),
    ...(investment === undefined ? {} : { costs: { currency: "EUR", investment } }),
  };
  return { layout: { scenario, floorSpace: null }, windows: [], costs: null, observations, leftOut: null, ...more };
}

export function choiceOf(courses: readonly Course[], goal: Partial<ChoiceGoal> = {}): ChoiceState {
  return { goal: { ...usualGoal, worthwhile: { by: "amount", value: 2 }, ...goal }, courses };
}
