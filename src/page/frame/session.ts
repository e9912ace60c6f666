// What the page shows: the scenarios that it has, the chosen one as the worker opened it, the address, and faults.
import { batch, computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Ask } from "#page/answer/asker.ts";
import type { Pool } from "#page/answer/pool.ts";
import type { Opening } from "#page/answer/openScenario.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Course, Given, GivenScenario } from "#page/file/given.ts";
import type { Address } from "./address.ts";

export interface Session {
  readonly scenarios: ReadonlySignal<readonly GivenScenario[]>;
  readonly chosen: ReadonlySignal<GivenScenario | undefined>;
  /** Undefined while the worker reads and runs. */
  readonly opening: ReadonlySignal<Opening | undefined>;
  /** A fault of the program itself. */
  readonly fault: ReadonlySignal<string | undefined>;
  /** The workers; a place begins a job for what it may cancel. */
  readonly pool: Pool;
  readonly ask: Ask;
  /** The shipped lessons and those of the call; undefined until they are opened. */
  readonly course: ReadonlySignal<Course | undefined>;
  /** The place that is shown and what it keeps. */
  readonly address: ReadonlySignal<Address>;
  readonly units: ReadonlySignal<UnitSystem>;
  /** Why the address was refused. */
  readonly refusal: ReadonlySignal<string | undefined>;
  /** Runs it; the place Watch begins at this time of the run, in seconds. */
  readonly choose: (scenario: GivenScenario, from?: number) => void;
  /** Adds scenarios, in place of those of the same name, and chooses the first of them. */
  readonly add: (scenarios: readonly GivenScenario[]) => void;
  /** Shows another place or other units, or keeps other values of the place. */
  readonly goTo: (change: Partial<Omit<Address, "scenario">>) => void;
  /** Follows an address that was typed or linked. */
  readonly follow: (address: Address) => void;
  readonly refuse: (fault: string) => void;
}

export function openSession(given: Given, pool: Pool, openCourse: () => Promise<Course>): Session {
  const scenarios = signal(given.scenarios);
  const chosen = signal<GivenScenario | undefined>(undefined);
  const opening = signal<Opening | undefined>(undefined);
  const fault = signal<string | undefined>(undefined);
  const refusal = signal<string | undefined>(undefined);
  const course = signal<Course | undefined>(undefined);
  const address = signal<Address>({ values: {} });
  const { ask } = pool.begin();
  let choices = 0;
  const choose = (scenario: GivenScenario, from?: number): void => {
    const choice = ++choices;
    batch(() => {
      // Another stretch of the same scenario replaces the one that is shown.
      if (chosen.value !== scenario) {
        opening.value = undefined;
        address.value = { ...address.value, scenario: scenario.file, values: {} };
      }
      chosen.value = scenario;
      fault.value = undefined;
      refusal.value = undefined;
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
  const refuse = (why: string): void => {
    refusal.value = why;
  };
  const follow = (wanted: Address): void =>
    batch(() => {
      const { scenario: file = chosen.value?.file } = wanted;
      const found = scenarios.value.find((each) => each.file === file);
      if (file !== undefined && found === undefined)
        return refuse(`The address names the scenario ${file}, which this page does not have. Open its file first.`);
      if (found !== undefined && found !== chosen.value) choose(found);
      refusal.value = undefined;
      address.value = { ...wanted, ...(file === undefined ? {} : { scenario: file }) };
    });
  if (given.scenarios[0]) choose(given.scenarios[0]);
  openCourse().then(
    ({ lessons, cells }) => {
      course.value = { lessons: [...lessons, ...given.lessons], cells };
    },
    (error: unknown) => {
      fault.value = String(error);
    },
  );
  const goTo = (change: Partial<Omit<Address, "scenario">>): void =>
    batch(() => {
      refusal.value = undefined;
      address.value = { ...address.value, ...change };
    });
  const units = computed(() => address.value.units ?? "si");
  const shown = { scenarios, chosen, opening, fault, course, address, units, refusal };
  return { ...shown, pool, ask, choose, add, goTo, follow, refuse };
}
