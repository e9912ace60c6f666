// The answer first: the title and question of the chosen scenario, its ideal cycle and what sets the pace.
import { h, type ComponentChild } from "preact";
import type { OpenedScenario } from "#page/answer/openScenario.ts";

interface AnswerProps {
  readonly opened: OpenedScenario;
  /** Not where the place has an answer of its own. */
  readonly hasSentence: boolean;
}

export function Answer({ opened, hasSentence }: AnswerProps): ComponentChild {
  const { scenario, question, sentence } = opened;
  return [
    h("h1", {}, scenario.title),
    question === undefined ? null : h("p", { class: "quiet" }, question),
    hasSentence ? h("p", { class: "finding" }, sentence) : null,
  ];
}
