// What things cost: rates in the user's own currency, each for what it is charged by.
import { eitherOr, mapping, optional, required } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { text } from "#scenario/values/plainLeaf.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";

/** Far above any price of a cell. */
const largest = 1e15;

const expected = "an amount in the currency, a plain number such as `24000`";

/** An amount of money: its unit is the currency, which stands once for all. */
export const amount: Leaf<number> = leaf({
  expected,
  json: { title: "an amount in the currency", type: "number", minimum: 0 },
  read: (written) => {
    if (typeof written !== "number") return refused({ ...wrongType(written, expected), remedy: `Write ${expected}.` });
    if (written >= 0 && written <= largest) return { value: written };
    const remedy = written >= 0 ? "Check the number." : "Write 0 or more.";
    return refused({ code: "out-of-range", message: `${written} is no price.`, expected, remedy });
  },
});

const tooling = mapping(
  () => ({
    price: required(amount, "Price of a set of molds for the whole cell, in the currency."),
    life: required(quantity("parts", { above: 0 }), "Parts that this set makes in its life."),
  }),
  "{ price: 24000, life: 2000000 parts }",
);

export const costs = mapping(
  () => ({
    currency: required(text("EUR"), "Name of the currency; it stands beside every amount."),
    resin: optional(quantity("costPerMass"), "Virgin resin."),
    regrindCredit: optional(
      quantity("costPerMass"),
      "What surplus regrind brings; nothing where absent.",
      "0.40 per kg",
    ),
    energy: optional(quantity("costPerEnergy"), "Electricity of the screw's drive."),
    heating: optional(quantity("costPerTime"), "Heaters of barrel and head, for each hour of planned time.", "2 per h"),
    air: optional(quantity("costPerVolume"), "Compressed air, for each cubic meter of free air."),
    cooling: optional(quantity("costPerMass"), "Cooling of the molds, for each kilogram of melt.", "0.05 per kg"),
    operator: optional(quantity("costPerTime"), "One operator, for each hour of planned time.", "28 per h"),
    machine: optional(quantity("costPerTime"), "The cell, for each hour of planned time."),
    station: optional(
      quantity("costPerTime"),
      "Each station, for each hour of planned time, on top of `machine`.",
      "6 per h",
    ),
    tooling: optional(
      eitherOr(quantity("costPerPart"), tooling),
      "Molds: a cost per part made, or their price and their life.",
    ),
    packing: optional(quantity("costPerPart"), "Packing, for each good part."),
    price: optional(
      quantity("costPerPart"),
      "What a good part sells for; `compare` then counts more good parts as more margin.",
      "0.19 per part",
    ),
    investment: optional(
      amount,
      "What this layout costs to buy, in the currency, for the payback in `compare`; leave depreciation out of the rates.",
      180000,
    ),
  }),
  "{ currency: EUR, resin: 1.40 per kg, machine: 35 per h }",
);
