// The answer for the present settings: what the cell makes and what sets the pace, how sure that is, and where time goes.
import { h, type ComponentChild } from "preact";
import { issueWords } from "#report/words/issueWords.ts";
import { grouped, plainNumber, withInterval } from "#report/words/digits.ts";
import type { Finding } from "#page/trial/concludeTrial.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { BeforeAfter } from "./beforeAfter.ts";
import type { Done, Rough } from "./conductRuns.ts";
import type { Pace, Trying } from "./trying.ts";

export function AnswerView({ trying }: { readonly trying: Trying }): ComponentChild {
  const { trial, shown, progress, fault, before, set } = trying;
  if (fault.value !== undefined)
    return h("p", { class: "finding", role: "alert" }, `This is a fault of blowcell: ${fault.value}`);
  const refused = trial.value !== undefined && trial.value.cell === undefined;
  if (refused) return h(Refusal, { trying });
  const finding = findingOf(shown.value);
  return [
    finding ? h(Warnings, { finding }) : null,
    h("p", { class: "finding made" }, sentenceOf(trying)),
    h("p", { class: "quiet sure", role: "status" }, sureWords(shown.value, progress.value)),
    trial.value?.cell && shown.value ? h("p", {}, trial.value.cell.sentence) : null,
    h(BeforeAfter, {
      before: partsOf(before.value),
      after: set.value.length === 0 ? undefined : partsOf(shown.value),
    }),
  ];
}

/** Above the number: what is outside the process window, and what limits the use of the result. */
function Warnings({ finding: { inUnits, issues } }: { readonly finding: Finding }): ComponentChild {
  const { warnings } = inUnits[useUnits()];
  const [head, ...others] = [...issues.map(({ message }) => message), ...warnings.map((line) => line.trim())];
  if (head === undefined) return null;
  return h(
    "div",
    { class: "caution" },
    h("p", {}, head),
    h(
      "ul",
      {},
      others.map((line) => h("li", { key: line }, line)),
    ),
  );
}

function Refusal({ trying: { trial, reset } }: { readonly trying: Trying }): ComponentChild {
  const errors = trial.value!.issues.filter(({ severity }) => severity === "error").map(issueWords);
  return h(
    "div",
    { role: "alert" },
    h("p", { class: "finding made" }, "The cell cannot have these settings."),
    h(
      "ul",
      { class: "warnings" },
      errors.map(({ place, message, details }, i) =>
        h("li", { key: i }, `${place}: ${message} ${details.map(([label, words]) => `${label}: ${words}.`).join(" ")}`),
      ),
    ),
    h("p", {}, h("button", { type: "button", onClick: reset }, "Back to the scenario as it is")),
  );
}

export function findingOf(shown: Rough | Done | undefined): Finding | undefined {
  return shown && "made" in shown && shown.conclusion.kind === "found" ? shown.conclusion : undefined;
}

function partsOf(shown: Rough | Done | undefined): Rough["parts"] {
  if (shown === undefined) return undefined;
  return "made" in shown ? findingOf(shown)?.parts : shown.parts;
}

function sentenceOf({ trial, shown: { value: shown }, before: { value: before }, set }: Trying): string {
  if (shown === undefined) return trial.value?.cell?.sentence ?? "The cell is read.";
  if ("made" in shown)
    return shown.conclusion.kind === "found"
      ? `${shown.conclusion.sentence}${set.value.length === 0 ? "" : changeWords(partsOf(before), shown.conclusion.parts)}`
      : shown.conclusion.issue.message;
  return shown.parts
    ? `Rough: ${withInterval(shown.parts)} good parts an hour${changeWords(partsOf(before), shown.parts, "")}`
    : "Rough: no part yet.";
}

/** " Before: 1,164.80 ± 0.15, so 36 more." */
function changeWords(before: Rough["parts"], after: Rough["parts"], end = "."): string {
  if (!before || !after) return end === "." ? "" : ".";
  const change = after.mean - before.mean;
  const amount = plainNumber(Math.abs(change));
  const words = amount === "0" ? "the same" : `${amount} ${change > 0 ? "more" : "fewer"}`;
  return `${end === "." ? " " : "; "}${end === "." ? "Before" : "before"}: ${withInterval(before)} good parts an hour, now ${words}.`;
}

function sureWords(shown: Rough | Done | undefined, progress: Pace | undefined): string {
  if (shown && "made" in shown)
    return shown.conclusion.kind === "found"
      ? `Final, as \`blowcell run\` answers: ${shown.conclusion.runWords.join(" ")}`
      : "Final.";
  const left = progress ? ` ${leftWords(progress)}` : "";
  if (shown === undefined) return `The ideal cycle, without a run. The first replication runs.${left}`;
  return `Rough, after ${countWords(shown.replications)}.${left}`;
}

const countWords = (count: number): string => `${count} ${count === 1 ? "replication" : "replications"}`;

function leftWords({ made, wanted, secondsLeft }: Pace): string {
  const time = secondsLeft === undefined ? "" : `, about ${grouped(Math.ceil(secondsLeft))} s left`;
  return `${made} of ${wanted} runs are made${time}.`;
}
