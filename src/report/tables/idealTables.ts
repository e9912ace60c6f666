// Fills the tables of the ideal cycle: one period step by step, and the circuits that could set it.
import { hasSlack, slackPerShot } from "#analysis/ideal/idealCircuit.ts";
import type { Study } from "#analysis/study/study.ts";
import { fillTable, type Table } from "./table.ts";
import { circuitsSpec, idealCycleSpec } from "./tableSpecs.ts";

type Ideal = Pick<Study, "scenario" | "ideal">;

export function idealCycleTable(studies: readonly Ideal[]): Table {
  const rows = studies.flatMap(({ scenario, ideal }) =>
    ideal.schedule.map(({ resource, step, station, shot, start, end, critical }) => [
      scenario.name,
      resource,
      step,
      station,
      shot,
      start,
      end,
      critical,
    ]),
  );
  return fillTable(idealCycleSpec, rows);
}

export function circuitsTable(studies: readonly Ideal[]): Table {
  const rows = studies.flatMap(({ scenario, ideal }) =>
    ideal.circuits.map((circuit) => [
      scenario.name,
      circuit.name,
      circuit.steps.map(({ resource, step }) => `${resource}: ${step}`).join(" > "),
      circuit.seconds,
      circuit.shots,
      circuit.secondsPerShot,
      ...(hasSlack(ideal) ? [slackPerShot(circuit, ideal), circuit.slackSeconds] : [null, null]),
      circuit.critical,
      ideal.method,
    ]),
  );
  return fillTable(circuitsSpec, rows);
}
