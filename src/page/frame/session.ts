// What the page shows: the scenarios that it has, the chosen one as the worker opened it, and faults.
import { batch, signal, type ReadonlySignal } from "@preact/signals";
import type { Ask } from "#page/answer/asker.ts";
import type { Opening } from "#page/answer/openScenario.ts";
import type { Course, Given, GivenScenario } from "#page/file/given.ts";

export interface Session {
  readonly scenarios: ReadonlySignal<readonly GivenScenario[]>;
  readonly chosen: ReadonlySignal<GivenScenario | undefined>;
  /** Undefined while the worker reads and runs. */
  readonly opening: ReadonlySignal<Opening | undefined>;
  /** A fault of the program itself. */
  readonly fault: ReadonlySignal<string | undefined>;
  readonly ask: Ask;
  /** The shipped lessons and those of the call; undefined until they are opened. */
  readonly course: ReadonlySignal<Course | undefined>;
  /** Runs it; the place Watch begins at this time of the run, in seconds. */
  choose(scenario: GivenScenario, from?: number): void;
  /** Adds scenarios, in place of those of the same name, and chooses the first of them. */
  add(scenarios: readonly GivenScenario[]): void;
}

export function openSession(given: Given, ask: Ask, openCourse: () => Promise<Course>): Session {
  const scenarios = signal(given.scenarios);
  const chosen = signal<GivenScenario | undefined>(undefined);
  const opening = signal<Opening | undefined>(undefined);
  const fault = signal<string | undefined>(undefined);
  const course = signal<Course | undefined>(undefined);
  let choices = 0;
  const choose = (scenario: GivenScenario, from?: number): void => {
    const choice = ++choices;
    batch(() => {
      // Another stretch of the same scenario replaces the one that is shown.
      if (chosen.value !== scenario) opening.value = undefined;
      chosen.value = scenario;
      fault.value = undefined;
    });
    // A reply that comes after another choice is dropped.
    ask("openScenario", { scenario, ...(from === undefined ? {} : { from }) }).then(
      (opened) => {
        if (choice === choices) opening.value = opened;
      },
      (error: unknown) => {
        if (choice === choices) fault.value = String(error);
      },
    );
  };
  const add = (added: readonly GivenScenario[]): void => {
    const [first] = added;
    if (first === undefined) return;
    const names = new Set(added.map(({ file }) => file));
    scenarios.value = [...scenarios.value.filter(({ file }) => !names.has(file)), ...added];
    choose(first);
  };
  if (given.scenarios[0]) choose(given.scenarios[0]);
  openCourse().then(
    ({ lessons, cells }) => {
      course.value = { lessons: [...lessons, ...given.lessons], cells };
    },
    (error: unknown) => {
      fault.value = String(error);
    },
  );
  return { scenarios, chosen, opening, fault, ask, course, choose, add };
}
