// The place Order: whether the cell makes these parts by then, the form that asks it, and what is behind the answer.
import { useMemo, useRef } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { OrderAsked } from "#page/promise/openOrder.ts";
import type { Pool } from "#page/answer/pool.ts";
import type { GivenScenario } from "#page/file/given.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { CallView } from "./callView.ts";
import { callText } from "./callText.ts";
import { callOf, formOf, productsOf, type OrderForm } from "./form.ts";
import { keptOf, withKept, type Kept, type Values } from "./kept.ts";
import { OrderAnswerView } from "./orderAnswerView.ts";
import { AppliedList, OrderChanges, OrderRemedy } from "./orderChanges.ts";
import { OrderDetails, OrderNotes } from "./orderDetails.ts";
import { fieldOptions, OrderFields } from "./orderFields.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { useAnswer, type Answering } from "./useAnswer.ts";

interface OrderPlaceProps {
  readonly pool: Pool;
  readonly given: GivenScenario;
  /** As it was read. */
  readonly scenario: Scenario;
  /** What the address keeps. */
  readonly values: Values;
  readonly keepValues: (values: Values) => void;
  /** Issues that the page shows already. */
  readonly known: readonly Issue[];
  /** Shows issues that belong to no field. */
  readonly showIssues: (issues: readonly Issue[]) => ComponentChild;
}

export function OrderPlace({
  pool,
  given,
  scenario,
  values,
  keepValues,
  known,
  showIssues,
}: OrderPlaceProps): ComponentChild {
  const own = useMemo(() => formOf(scenario), [scenario]);
  const kept = useMemo(() => keptOf(values), [values]);
  const asked = useMemo(() => askedOf(given, own, kept), [given, own, kept]);
  const { answered, shown, isStopped, stop, goOn } = useAnswer(pool, asked, kept.levers);
  const units = useUnits();
  const answer = useRef<HTMLParagraphElement>(null);
  const keep = (change: Partial<Kept>): void => keepValues(withKept(values, { ...kept, ...change }, own));
  /** The button that was pressed may go away; the answer is what is waited for. */
  const change = (applied: Kept["applied"]): void => {
    answer.current?.focus();
    keep({ applied });
  };
  const { issues } = answered;
  const isOrdered = answered.study !== undefined || !issues.some(({ code }) => code === "order-missing");
  return h(
    "div",
    { class: "order" },
    h(OrderAnswerView, { answered, isStopped, stop, goOn, place: answer }),
    h(Remedy, { answered, apply: (each) => change([...kept.applied, each]) }),
    showIssues(otherIssues(issues, known)),
    h(OrderFields, {
      form: { ...own, ...kept.typed },
      products: productsOf(scenario),
      hasShifts: scenario.calendar !== undefined,
      issues: issues.filter(({ code }) => code !== "order-missing"),
      keep: (typed) => keep({ typed: { ...kept.typed, ...typed } }),
    }),
    h(AppliedList, {
      applied: kept.applied,
      remove: (index) => change(kept.applied.filter((_, i) => i !== index)),
    }),
    isOrdered ? h(CallView, { call: callText(asked, kept.levers, units) }) : null,
    h(Behind, { answered, shown, kept, keep, change }),
  );
}

interface RemedyProps extends Pick<Answering, "answered"> {
  readonly apply: (change: Kept["applied"][number]) => void;
}

/** Not before all changes are run: the words for none that fits need all. */
function Remedy({ answered: { study, levers, progress }, apply }: RemedyProps): ComponentChild {
  return study && levers && !progress ? h(OrderRemedy, { study, levers, apply }) : null;
}

interface BehindProps extends Pick<Answering, "answered" | "shown"> {
  readonly kept: Kept;
  readonly keep: (change: Partial<Kept>) => void;
  readonly change: (applied: Kept["applied"]) => void;
}

/** What is behind the answer; pale while it belongs to the answer before. */
function Behind({ answered, shown: { study, levers }, kept, keep, change }: BehindProps): ComponentChild {
  if (!study) return null;
  return h(
    "div",
    { class: answered.study ? undefined : "old", "aria-busy": !answered.study },
    h(OrderDetails, { study }),
    levers ? h(OrderChanges, { study, levers, apply: (each) => change([...kept.applied, each]) }) : null,
    study.due?.verdict === "yes"
      ? h(LeverChoice, { levers: kept.levers, choose: (chosen) => keep({ levers: chosen }) })
      : null,
    h(OrderNotes, { study }),
  );
}

/** Those that stand neither beside a field nor elsewhere on the page. */
function otherIssues(issues: readonly Issue[], known: readonly Issue[]): readonly Issue[] {
  const texts = new Set(known.map((issue) => JSON.stringify(issue)));
  return issues.filter(
    (issue) =>
      issue.code !== "order-missing" && !fieldOptions.includes(issue.option ?? "") && !texts.has(JSON.stringify(issue)),
  );
}

function askedOf(scenario: GivenScenario, own: OrderForm, { typed, applied }: Kept): OrderAsked {
  return { scenario, call: callOf(own, typed), applied: applied.flatMap(({ settings }) => settings) };
}

interface LeverChoiceProps {
  readonly levers: boolean;
  readonly choose: (levers: boolean) => void;
}

function LeverChoice({ levers, choose }: LeverChoiceProps): ComponentChild {
  return h(
    "label",
    {},
    h("input", { type: "checkbox", checked: levers, onChange: () => choose(!levers) }),
    " Also run the changes, though the order fits",
  );
}
