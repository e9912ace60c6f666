// The order of ties and of the rotation: as `order:` says, or by name, never as the file happens to list them.
import { codePointOrder } from "#foundation/codePointOrder.ts";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Resolution } from "./resolution.ts";

/** Ranks of the stations' names; reports an `order:` that does not name every station once. */
export function stationOrder(names: readonly string[], resolution: Resolution): readonly string[] {
  const { draft, has } = resolution;
  if (!has(["order"])) return names.toSorted(codePointOrder);
  const order = draft.order ?? [];
  if (draft.order !== undefined && has(["stations"])) checkOrder(order, names, resolution);
  return order.filter((name) => name !== undefined);
}

function checkOrder(order: readonly (string | undefined)[], names: readonly string[], { report }: Resolution): void {
  const expected = `every station once: ${names.join(", ")}`;
  for (const [index, name] of order.entries()) {
    if (name === undefined) continue;
    if (!names.includes(name)) {
      const meant = didYouMean(name, names);
      const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
      report({
        code: "order-unknown",
        message: `There is no station "${name}".`,
        expected,
        remedy,
        path: ["order", index],
      });
    } else if (order.indexOf(name) < index) {
      const message = `The station "${name}" stands in the order twice.`;
      report({ code: "order-twice", message, expected, remedy: "Keep one of them.", path: ["order", index] });
    }
  }
  const absent = names.filter((name) => !order.includes(name));
  // A name that could not be read may be the one that is looked for.
  if (absent.length === 0 || order.includes(undefined)) return;
  const message = `The order leaves out ${absent.join(", ")}.`;
  report({
    code: "order-incomplete",
    message,
    expected,
    remedy: `Add ${absent.join(", ")}, or delete \`order\`.`,
    path: ["order"],
    at: "key",
  });
}
