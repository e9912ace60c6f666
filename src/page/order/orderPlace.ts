// The place Order: can the cell make these parts by then? The answer, the form, and what is behind the answer.
import { useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { OrderAsked } from "#page/promise/openOrder.ts";
import type { Job, Pool } from "#page/answer/pool.ts";
import type { GivenScenario } from "#page/file/given.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { CallView } from "./callView.ts";
import { callText } from "./callText.ts";
import { callOf, formOf, productsOf, type OrderForm } from "./form.ts";
import { keptOf, withKept, type Kept, type Values } from "./kept.ts";
import { OrderAnswerView, type OrderAnswerProps } from "./orderAnswerView.ts";
import { AppliedList, OrderChanges } from "./orderChanges.ts";
import { OrderDetails, OrderNotes } from "./orderDetails.ts";
import { fieldOptions, OrderFields } from "./orderFields.ts";
import { answerOrder, begun } from "./orderWork.ts";

export interface OrderPlaceProps {
  readonly pool: Pool;
  readonly given: GivenScenario;
  /** As it was read. */
  readonly scenario: Scenario;
  /** What the address keeps. */
  readonly values: Values;
  readonly keepValues: (values: Values) => void;
  /** Shows issues that belong to no field. */
  readonly showIssues: (issues: readonly Issue[]) => ComponentChild;
}

export function OrderPlace({ pool, given, scenario, values, keepValues, showIssues }: OrderPlaceProps): ComponentChild {
  const own = useMemo(() => formOf(scenario), [scenario]);
  const kept = useMemo(() => keptOf(values), [values]);
  const asked = useMemo(() => askedOf(given, own, kept), [given, own, kept]);
  const { answered, isStopped, stop, goOn } = useAnswer(pool, asked, kept.levers);
  const keep = (change: Partial<Kept>): void => keepValues(withKept(values, { ...kept, ...change }, own));
  const { issues, study, levers } = answered;
  const isOrdered = study !== undefined || !issues.some(({ code }) => code === "order-missing");
  return h(
    "div",
    { class: "order" },
    h(OrderAnswerView, { answered, isStopped, stop, goOn }),
    h(OrderFields, {
      form: { ...own, ...kept.typed },
      products: productsOf(scenario),
      hasShifts: scenario.calendar !== undefined,
      issues: issues.filter(({ code }) => code !== "order-missing"),
      keep: (typed) => keep({ typed: { ...kept.typed, ...typed } }),
    }),
    showIssues(issues.filter(isElsewhere)),
    h(AppliedList, {
      applied: kept.applied,
      remove: (index) => keep({ applied: kept.applied.filter((_, i) => i !== index) }),
    }),
    isOrdered ? h(CallView, { call: callText(asked, kept.levers) }) : null,
    study ? h(OrderDetails, { study }) : null,
    study && levers
      ? h(OrderChanges, { study, levers, apply: (change) => keep({ applied: [...kept.applied, change] }) })
      : null,
    study?.due?.verdict === "yes"
      ? h(LeverChoice, { levers: kept.levers, choose: (chosen) => keep({ levers: chosen }) })
      : null,
    study ? h(OrderNotes, { study }) : null,
  );
}

function isElsewhere({ option, code }: Issue): boolean {
  return code !== "order-missing" && !fieldOptions.includes(option ?? "");
}

function askedOf(scenario: GivenScenario, own: OrderForm, { typed, applied }: Kept): OrderAsked {
  return { scenario, call: callOf(own, typed), applied: applied.flatMap(({ settings }) => settings) };
}

/** Each other question cancels what is under way. */
function useAnswer(pool: Pool, asked: OrderAsked, levers: boolean): OrderAnswerProps {
  const answered = useSignal(begun);
  const isStopped = useSignal(false);
  const job = useRef<Job | undefined>(undefined);
  const start = (): void => {
    isStopped.value = false;
    job.current = answerOrder(pool, { asked, levers }, (next) => {
      answered.value = next;
    });
  };
  useEffect(() => {
    start();
    return () => job.current?.cancel();
  }, [JSON.stringify([asked, levers])]);
  const stop = (): void => {
    job.current?.cancel();
    isStopped.value = true;
    answered.value = { ...answered.value, progress: undefined };
  };
  return { answered: answered.value, isStopped: isStopped.value, stop, goOn: start };
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
