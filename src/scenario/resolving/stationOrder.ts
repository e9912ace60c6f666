// The order of ties and of the rotation: `order:`, or else by name, never the order of lines in the file.
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

type Names = readonly (string | undefined)[];

function checkOrder(order: Names, names: readonly string[], { report }: Resolution): void {
  const expected = `every station once: ${names.join(", ")}`;
  for (const [index, name] of order.entries()) {
    const path = ["order", index];
    if (name === undefined) continue;
    if (!names.includes(name)) {
      const meant = didYouMean(name, names);
      const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
      report({ code: "order-unknown", message: `There is no station "${name}".`, expected, remedy, path });
    } else if (order.indexOf(name) < index) {
      const message = `The station "${name}" stands in the order twice.`;
      report({ code: "order-twice", message, expected, remedy: "Keep one of them.", path });
    }
  }
  const absent = names.filter((name) => !order.includes(name)).join(", ");
  // A name that could not be read may be the one that is looked for.
  if (absent === "" || order.includes(undefined)) return;
  const remedy = `Add ${absent}, or delete \`order\`.`;
  report({
    code: "order-incomplete",
    message: `The order leaves out ${absent}.`,
    expected,
    remedy,
    path: ["order"],
    at: "key",
  });
}
