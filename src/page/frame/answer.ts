// The answer first: the title and question of the chosen scenario, its ideal cycle and what sets the pace.
import { Fragment, h, type ComponentChild } from "preact";
import type { Session } from "./session.ts";

export function Answer({ session }: { readonly session: Session }): ComponentChild {
  const opened = session.opening.value?.opened;
  if (!opened) return h("p", { class: "quiet" }, "The cell is being run.");
  return h(
    Fragment,
    {},
    h("h1", {}, opened.scenario.title),
    opened.question === undefined ? null : h("p", { class: "quiet" }, opened.question),
    h("p", { class: "finding" }, opened.sentence),
  );
}
