// What may be bought or changed: options for `choose`, each with its settings and what it costs.
import { isMapping, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { text } from "#scenario/values/plainLeaf.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";
import { amount } from "./costKeys.ts";

const expected = "a mapping of paths and values such as `{ stations.count: 2 }`";

/** Each entry as `path=value`, as `--set` takes it; a text stays as it is, so that `-1 s` is a move. */
const settings: Leaf<readonly string[]> = leaf({
  expected,
  json: {
    title: "a mapping by path",
    type: "object",
    minProperties: 1,
    additionalProperties: { description: "The value at this path, as `--set` takes it." },
  },
  read: (written) => {
    if (!isMapping(written)) return refused(wrongType(written, expected));
    const entries = Object.entries(written);
    if (entries.length > 0)
      return {
        value: entries.map(([path, value]) => `${path}=${typeof value === "string" ? value : JSON.stringify(value)}`),
      };
    return refused({ code: "value-missing", message: "The mapping is empty.", expected, remedy: `Write ${expected}.` });
  },
});

const option = mapping(
  () => ({
    name: required(text("second station"), "Name of the option, as the ranking shows it."),
    group: optional(
      text("stations"),
      "Options of one group exclude each other, and those of different groups are also combined. An option without a group is never combined.",
    ),
    settings: required(settings, "What the option changes: paths and values, as `--set` takes them.", {
      "stations.count": 2,
    }),
    investment: optional(amount, "What the option costs to buy, in the currency, on top of `costs.investment`.", 90000),
    perHour: optional(
      quantity("costPerTime"),
      "What the option costs in each hour of planned time, on top of `costs.machine`.",
      "4 per h",
    ),
    floorSpace: optional(quantity("area"), "Floor space that the option takes, on top of that of the cell.", "6 m²"),
  }),
  "{ name: second station, settings: { stations.count: 2 }, investment: 90000 }",
);

export const options = listOf(
  option,
  "a list of options such as `- { name: second station, settings: { stations.count: 2 } }`",
);
