// The answer of an order: yes or no first, then the chance as a count, and how far the work is.
import { h, type ComponentChild, type RefObject } from "preact";
import { chanceWords } from "#report/answers/chanceWords.ts";
import { promiseFinding } from "#report/answers/promiseAnswer.ts";
import { grouped } from "#report/words/digits.ts";
import { spanWords } from "#report/words/momentWords.ts";
import type { Answered, Progress } from "./orderWork.ts";

export interface OrderAnswerProps {
  readonly answered: Answered;
  readonly isStopped: boolean;
  readonly stop: () => void;
  readonly goOn: () => void;
  /** The answer takes the focus after a change. */
  readonly place: RefObject<HTMLParagraphElement | null>;
}

export function OrderAnswerView({ answered, isStopped, stop, goOn, place }: OrderAnswerProps): ComponentChild {
  const { study, progress } = answered;
  const [finding, ...behind] = study ? promiseFinding(study) : [openingWords(answered)];
  return [
    h("p", { class: "finding answer", role: "status", tabIndex: -1, ref: place }, finding),
    study?.due ? h("p", { class: "count" }, chanceWords(study.due, study.order)) : null,
    behind.map((words) => h("p", {}, words)),
    h(
      "div",
      { class: "work" },
      h(Work, { answered, isStopped }),
      progress ? button("Stop", stop) : isStopped ? button("Run again", goOn) : null,
    ),
  ];
}

const button = (words: string, act: () => void): ComponentChild => h("button", { type: "button", onClick: act }, words);

function openingWords({ issues, progress, fault }: Answered): string {
  if (fault !== undefined) return `This is a fault of blowcell: ${fault}`;
  if (progress) return "The order is run.";
  if (issues.some(({ code }) => code === "order-missing")) return "Type how many good parts are wanted, and by when.";
  if (issues.some(({ fate }) => fate === "cell")) return "No: the cell cannot make this order.";
  return "The order cannot be run: the reason stands below.";
}

function Work({
  answered: { study, isFinal, progress },
  isStopped,
}: Pick<OrderAnswerProps, "answered" | "isStopped">): ComponentChild {
  const rough = study && !isFinal ? `Rough after ${grouped(study.replications)} runs. ` : "";
  if (isStopped) return h("p", { class: "quiet" }, `${rough}Stopped.`);
  if (!progress) return study ? h("p", { class: "quiet" }, `Final after ${grouped(study.replications)} runs.`) : null;
  const { done, of } = progress;
  return [
    h("progress", { value: done, max: of, "aria-label": "Runs done" }),
    h("p", { class: "quiet" }, `${rough}${progressWords(progress)}`),
  ];
}

function progressWords({ what, done, of, secondsLeft }: Progress): string {
  if (secondsLeft === undefined) return `Now: ${what}.`;
  const left = secondsLeft < 60 ? `${Math.max(1, Math.ceil(secondsLeft))} s` : spanWords(secondsLeft);
  return `Now: ${what}, ${grouped(done)} of ${grouped(of)} runs; at most ${left} left.`;
}
