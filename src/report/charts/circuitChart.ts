// The circuits of the ideal cycle: how long each takes a shot, and how much the others may still grow before they set the pace.
import { passesScrew, type IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { ChartWords } from "./chart.ts";
import { seconds } from "#report/words/digits.ts";
import type { Markup } from "./markup.ts";
import { rankedBars } from "./rankedBars.ts";
import type { Fill } from "#report/words/stateLook.ts";

const mostBars = 10;

export function circuitChart(ideal: IdealCycle, given: ChartWords): Markup {
  const bars = ideal.circuits.slice(0, mostBars).map((circuit) => ({
    name: circuit.name,
    fill: fillOf(circuit),
    value: circuit.secondsPerShot,
    halfWidth: null,
    remark: `${seconds(circuit.secondsPerShot)}, ${spareWords(circuit)}`,
  }));
  const mark = { value: ideal.secondsPerShot, label: `ideal cycle ${seconds(ideal.secondsPerShot)} a shot` };
  return rankedBars(bars, { label: "seconds a shot", tick: String, mark }, given);
}

/** As the step that is typical of what goes round. */
function fillOf(circuit: IdealCircuit): Fill {
  const { owner, steps } = circuit;
  if (passesScrew(circuit)) return "melt";
  if (owner?.kind === "valve") return "shift";
  if (owner?.kind === "chambers") return "delivery";
  return owner?.kind !== "crew" && steps.some(({ role }) => role === "mold.cool") ? "cooling" : "removal";
}

/** The steps of one round may grow by the slack; a round may be the time of several shots. */
function spareWords({ critical, slackSeconds, shots }: IdealCircuit): string {
  if (critical) return "sets the cycle";
  return `${seconds(slackSeconds)} to spare${shots > 1 ? ` in ${shots} shots` : ""}`;
}
