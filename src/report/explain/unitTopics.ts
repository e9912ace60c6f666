// Topics of the units in which quantities are written.
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { unitsOf, type Unit } from "#foundation/unit.ts";
import type { Topic } from "./topic.ts";

export function unitTopics(): readonly Topic[] {
  return (Object.keys(dimensions) as Dimension[]).flatMap((dimension) =>
    unitsOf(dimension).map((unit) => unitTopic(dimension, unit)),
  );
}

function unitTopic(dimension: Dimension, { symbol, aliases, numerator, denominator, zero }: Unit): Topic {
  const { noun, si, example } = dimensions[dimension];
  const factor = Number((numerator / denominator).toPrecision(10));
  const isShifted = zero !== 0;
  const inSi = isShifted ? `K = (value + ${zero}) × ${factor}` : `1 ${symbol} = ${factor} ${si}`;
  return {
    names: [symbol, ...aliases],
    kind: "unit",
    of: noun,
    meaning: `Unit of ${noun}.`,
    details: [["in SI", inSi], ...(aliases.length === 0 ? [] : [["also", aliases.join(", ")] as const])],
    example: symbol === dimensions[dimension].usual ? example : `1 ${symbol}`,
    more: ["units"],
  };
}
