// The circuits of the ideal cycle: seconds a shot of each, and the slack of the others.
import { hasSlack, passesScrew, slackPerShot, type IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { ChartWords } from "./chart.ts";
import { seconds } from "#report/words/digits.ts";
import { idealName } from "#report/words/idealWords.ts";
import type { Markup } from "./markup.ts";
import { rankedBars } from "./rankedBars.ts";
import type { Fill } from "#report/words/stateLook.ts";
import { screenName } from "#report/words/tradeWords.ts";

const mostBars = 10;

export function circuitChart(ideal: IdealCycle, given: ChartWords): Markup {
  const bars = ideal.circuits.slice(0, mostBars).map((circuit) => ({
    name: screenName(circuit.name),
    fill: fillOf(circuit),
    value: circuit.secondsPerShot,
    halfWidth: null,
    remark: `${seconds(circuit.secondsPerShot)}${slackWords(circuit, ideal)}`,
  }));
  const mark = {
    value: ideal.secondsPerShot,
    label: `${idealName(ideal).toLowerCase()} ${seconds(ideal.secondsPerShot)} a shot`,
  };
  return rankedBars(bars, { label: "seconds a shot", tick: String, mark }, given);
}

/** The fill of the step that is typical of the circuit. */
function fillOf(circuit: IdealCircuit): Fill {
  const { owner, steps } = circuit;
  if (passesScrew(circuit)) return "melt";
  if (owner?.kind === "valve") return "shift";
  if (owner?.kind === "chambers") return "delivery";
  return owner?.kind !== "crew" && steps.some(({ role }) => role === "mold.cool") ? "cooling" : "removal";
}

/** The slack of a circuit, a shot; none where no order is fixed. */
function slackWords(circuit: IdealCircuit, ideal: IdealCycle): string {
  if (circuit.critical) return ", sets the pace";
  return hasSlack(ideal) ? `, slack ${seconds(slackPerShot(circuit, ideal))} a shot` : "";
}
