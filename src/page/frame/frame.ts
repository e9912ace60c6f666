// The frame of the page: skip link, the scenarios, the answer, and the places.
import { h, type ComponentChild } from "preact";
import { useEffect } from "preact/hooks";
import type { Opening } from "#page/answer/openScenario.ts";
import { cautions } from "#report/words/cautions.ts";
import { Answer } from "./answer.ts";
import { followAddress } from "./followAddress.ts";
import { IssueList } from "./issueList.ts";
import { Licenses } from "./licenses.ts";
import { addressTerms, answersItself, Places, titleOfItsOwn } from "./places.ts";
import { ScenarioChoice } from "./scenarioChoice.ts";
import { UnitsOfPage } from "#page/units/unitsOfPage.ts";
import type { Session } from "./session.ts";
import { UnitsChoice } from "./unitsChoice.ts";

interface FrameProps {
  readonly session: Session;
  readonly openLicenses: () => Promise<string>;
  readonly version: string;
}

export function Frame({ session, openLicenses, version }: FrameProps): ComponentChild {
  useEffect(() => followAddress(session, addressTerms), [session]);
  return [
    h("a", { class: "skip", href: "#main" }, "Skip to the cell"),
    h("header", { class: "choices" }, h(ScenarioChoice, { session }), h(UnitsChoice, { session })),
    h(
      UnitsOfPage.Provider,
      { value: session.units.value },
      h("main", { id: "main", tabIndex: -1 }, h(Content, { session })),
    ),
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
  const { value: refusal } = session.refusal;
  const title = titleOfItsOwn(session.address.value);
  return [
    refusal === undefined ? null : h("p", { class: "finding", role: "alert" }, refusal),
    title === undefined
      ? [h(Answer, { opened, hasSentence: !answersItself(session.address.value) }), h(IssueList, { issues })]
      : h("h1", {}, title),
    h(Places, { session, opened }),
  ];
}

const faultWords = (fault: string): string =>
  `This is a fault of blowcell, not of the scenario: ${fault} Report it with the scenario file.`;
