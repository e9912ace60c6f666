// The answer first: the title and question of the chosen scenario, its ideal cycle and what sets the pace.
import { h, type ComponentChild } from "preact";
import type { OpenedScenario } from "#page/answer/openScenario.ts";

export function Answer({ opened }: { readonly opened: OpenedScenario }): ComponentChild {
  const { scenario, question, sentence } = opened;
  return [
    h("h1", {}, scenario.title),
    question === undefined ? null : h("p", { class: "quiet" }, question),
    h("p", { class: "finding" }, sentence),
  ];
}
