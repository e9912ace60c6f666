// Every key of a scenario, described once: reading, JSON Schema, suggestions and --set all go by this one value.
import type * as z from "zod/mini";
import { costs } from "./costKeys.ts";
import { calendarKeys } from "./calendarKeys.ts";
import { delivery, valve } from "./deliveryKeys.ts";
import { byName, listOf, mapping, optional, required, section } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { text } from "#scenario/values/plainLeaf.ts";
import { orders } from "./orderKeys.ts";
import { measured } from "./measuredKeys.ts";
import { options } from "./optionKeys.ts";
import { qualityKeys } from "./qualityKeys.ts";
import { product } from "./productKeys.ts";
import { crew, run } from "./runKeys.ts";
import { stations } from "./stationKeys.ts";
import { stops } from "./stopKeys.ts";
import { takeawayKeys } from "./takeawayKeys.ts";

export const newestFormat = 1;

export const format: Leaf<number> = leaf({
  expected: "`format: 1`",
  json: { const: newestFormat },
  read: (written) => {
    if (written === newestFormat) return { value: newestFormat };
    if (typeof written !== "number") return refused(wrongType(written, "`1`"));
    const newer = written > newestFormat;
    const message = newer ? `Format ${written} is newer than this program.` : `There is no format ${written}.`;
    const remedy = newer ? "Get a newer blowcell, or write the file for format 1." : "Write `format: 1`.";
    return refused({ code: newer ? "format-newer" : "format-unknown", message, expected: "`format: 1`", remedy });
  },
});

export const glossary = mapping(
  () => ({
    $schema: optional(text("./scenario.schema.json"), "Where editors find this schema, for scenarios written as JSON."),
    format: optional(format, "Version of the scenario format."),
    title: optional(
      text("Two-station cell, 750 ml bottle"),
      "One line that says what is asked; the file's name where absent.",
    ),
    product: optional(product, "The one product of the cell."),
    products: optional(
      byName(product, "a mapping of products by name", "bottle"),
      "Several products by name; each station says which is its own.",
    ),
    delivery: required(delivery, "How melt comes to the molds."),
    valve: optional(valve, "Selector valve; needed by a reciprocating screw."),
    order: optional(
      listOf(text("left"), "a list of all station names"),
      "Every station once, in the order of ties and of the rotation.",
    ),
    stations: required(stations, "Stations one by one, or one mapping with `count`."),
    crew: section(crew, "People."),
    run: section(run, "How long and how often the cell is run."),
    costs: optional(costs, "What things cost, for the cost of a thousand good parts."),
    orders: optional(
      orders,
      "What is to be made, one product after the other; `promise` gives the chance of the due date.",
    ),
    measured: optional(measured, "What the real cell makes; the answer compares it with the model."),
    options: optional(
      options,
      "Layouts that `choose` holds against the file as it stands; other commands leave them out.",
    ),
    stops: optional(stops, "Machine stops."),
    ...qualityKeys,
    ...takeawayKeys,
    ...calendarKeys,
  }),
  "{ delivery: { kind: reciprocating-screw, recharge: 3.9 s, drop: 1.2 s }, valve: { shift: 0.3 s }, stations: { cavities: 2, steps: { close: 0.6 s, blow: 0.5 s, cool: 7.5 s, vent: 0.5 s, open: 0.6 s, remove: 0.8 s } } }",
);

/** A scenario as it was read key by key, all well. */
export type Written = z.output<typeof glossary>;
