// Phrases for the model against the real cell: both numbers, the difference, the verdict and what to do.
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { assumptionsOf } from "./assumptionWords.ts";
import { paceSetter, resourceName } from "./bottleneckWords.ts";
import { grouped, seconds, withInterval } from "./digits.ts";
import { nounOf } from "./tradeWords.ts";

type Check = Study["measured"][number];

const nouns = { shots: "shots an hour", parts: "good parts an hour", cycle: "s a cycle" } as const;

/** "395 shots an hour, model 409.1 ± 0.2: −3.4 %, more than the model explains; …", one row for each measured number. */
export function measuredRows(study: Study): readonly (readonly string[])[] {
  return study.measured.map((check, i) => [i === 0 ? "Measured" : "", measuredWords(check, study)]);
}

function measuredWords(check: Check, study: Study): string {
  const { quantity, measured, model, difference } = check;
  const where = study.scenario.calendar ? " on shift" : "";
  const given = grouped(Number(measured.toPrecision(6)));
  const found = `${given} ${nouns[quantity]}${where}, model ${withInterval(model)}: ${signedPercent(difference)}`;
  if (check.verdict === "agrees") return `${found}, agrees`;
  return `${found}, more than the model explains; ${measuredRemedy(check, study)}`;
}

/** What to enter or to check, with the size that would explain the difference; nothing where both agree. */
export function measuredRemedy({ quantity, difference, verdict, model }: Check, study: Study): string {
  if (verdict === "agrees") return "";
  // Time of the real cell over that of the model.
  const ratio = quantity === "cycle" ? 1 + difference : 1 / (1 + difference);
  const shot = measureOf(study.measures, CELL, "seconds per shot")?.interval.mean ?? 0;
  const [time, unit] = quantity === "cycle" ? [model.mean, "a cycle"] : [shot, "a shot"];
  const change = `${seconds(Math.abs(ratio - 1) * time)} ${unit}`;
  if (verdict === "faster") return `check step times: the real cell takes ${change} less${firstWords(study)}`;
  const missing = assumptionsOf(study.scenario).map(({ key }) => key);
  const isStops = missing.includes("stops");
  const isRejects = missing.includes("quality") && quantity === "parts";
  const stops = `stops (${plainMinutes(ratio)} an hour would explain it)`;
  const enter = [...(isStops ? [stops] : []), ...(isRejects ? ["rejects"] : [])];
  const check = `${isStops ? "" : "stops and "}step times (${change} more would explain it${firstWords(study)})`;
  return enter.length === 0 ? `check ${check}` : `enter ${enter.join(" and ")}, or check ${check}`;
}

const plainMinutes = (ratio: number): string => `${Number((60 * (1 - 1 / ratio)).toPrecision(2))} min`;

/** ", first cooling of left and right". */
function firstWords(study: Study): string {
  const pace = paceSetter(study);
  const [step] = pace?.steps ?? [];
  if (!pace || !step) return "";
  const [noun, name] = [nounOf(step), resourceName(pace)];
  return noun === name ? `, first ${name}` : `, first ${noun} of ${name}`;
}

/** "−3.4 %". */
function signedPercent(share: number): string {
  return `${share < 0 ? "−" : "+"}${Math.abs(share * 100).toFixed(1)} %`;
}
