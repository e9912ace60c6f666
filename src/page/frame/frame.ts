// The frame of the page: skip link, the scenarios, the answer, and the places.
import { h, type ComponentChild } from "preact";
import type { Opening } from "#page/answer/openScenario.ts";
import { cautions } from "#report/words/cautions.ts";
import { Answer } from "./answer.ts";
import { IssueList } from "./issueList.ts";
import { Licenses } from "./licenses.ts";
import { Places } from "./places.ts";
import { ScenarioChoice } from "./scenarioChoice.ts";
import type { Session } from "./session.ts";

interface FrameProps {
  readonly session: Session;
  readonly openLicenses: () => Promise<string>;
  readonly version: string;
}

export function Frame({ session, openLicenses, version }: FrameProps): ComponentChild {
  return [
    h("a", { class: "skip", href: "#main" }, "Skip to the cell"),
    h("header", { class: "choices" }, h(ScenarioChoice, { session })),
    h("main", { id: "main", tabIndex: -1 }, h(Content, { session })),
    h(
      "footer",
      {},
      h("p", {}, cautions),
      h("p", {}, `blowcell ${version}. This page makes no request and stores nothing.`),
      h(Licenses, { openLicenses }),
    ),
  ];
}

function Content({ session }: { readonly session: Session }): ComponentChild {
  const { fault, opening } = session;
  if (fault.value !== undefined) return h("p", { class: "finding", role: "alert" }, faultWords(fault.value));
  if (opening.value === undefined) return h("p", { class: "quiet", role: "status" }, "The cell is read and run.");
  return h(Opened, { session, opening: opening.value });
}

interface OpenedProps {
  readonly session: Session;
  readonly opening: Opening;
}

function Opened({ session, opening: { opened, issues } }: OpenedProps): ComponentChild {
  if (!opened) return h(IssueList, { issues, file: session.chosen.value?.file ?? "" });
  return [h(Answer, { opened }), h(IssueList, { issues }), h(Places, { session, opened })];
}

const faultWords = (fault: string): string =>
  `This is a fault of blowcell, not of the scenario: ${fault} Report it with the scenario file.`;
