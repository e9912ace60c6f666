// The call of `promise` that repeats the answer.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { unitsOption } from "#page/units/unitsOfPage.ts";
import { shellWord } from "#foundation/shellWord.ts";
import type { OrderAsked } from "#page/promise/openOrder.ts";
import { usualChance } from "#scenario/order/chanceText.ts";

export function callText(
  { scenario: { file, set }, call, applied }: OrderAsked,
  levers: boolean,
  units: UnitSystem,
): string {
  const { shifts, start, order = [], due, chance } = call;
  const options = [
    ...option("--shifts", shifts),
    ...option("--start", start),
    ...order.flatMap((text) => option("--order", text)),
    ...option("--due", due),
    ...option("--chance", chance === usualChance ? undefined : chance),
    ...[...set, ...applied].flatMap((text) => option("--set", text)),
    ...(levers ? ["--levers"] : []),
    ...unitsOption(units),
  ];
  return ["blowcell promise", shellWord(file), ...options].join(" ");
}

const option = (name: string, text: string | undefined): readonly string[] =>
  text === undefined ? [] : [`${name} ${shellWord(text)}`];
