// What is to be made, in this order, and by when.
import { isFault } from "#foundation/fault.ts";
import { listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { text } from "#scenario/values/plainLeaf.ts";
import { readQuantity, quantitySchema } from "#scenario/values/quantityLeaf.ts";
import { dueForm, parseDue, type DueText } from "#scenario/order/dueText.ts";
import { wholeParts } from "#scenario/order/orderText.ts";

const expectedParts = "a whole number of parts such as `200000 parts`";
const wholeQuantity: Leaf<number> = leaf({
  expected: expectedParts,
  json: { ...quantitySchema("parts"), examples: ["200000 parts"] },
  read: (written) => {
    const reading = readQuantity(written, "parts");
    if ("faults" in reading) return reading;
    const wrong = wholeParts(reading.value);
    return wrong === undefined ? reading : refused({ ...wrong, expected: expectedParts });
  },
});

const due: Leaf<DueText> = leaf({
  expected: dueForm,
  json: { title: "a due date", type: "string", pattern: String.raw`\d`, examples: ["2026-12-04 14:00", "5 d"] },
  read: (written) => {
    if (typeof written !== "string") return refused({ ...wrongType(written, dueForm), remedy: `Write ${dueForm}.` });
    const read = parseDue(written);
    return isFault(read) ? refused(read) : { value: read };
  },
});

export const orders = listOf(
  mapping(
    () => ({
      quantity: required(wholeQuantity, "Good parts to make."),
      product: optional(text("bottle"), "Product of `products`; the only product where absent."),
      due: optional(
        due,
        "When they must be made: a local date and time, a time after the start of the run, or a weekday with a time.",
      ),
    }),
    "{ quantity: 200000 parts, due: 2026-12-04 14:00 }",
  ),
  "a list of `{ quantity: 200000 parts, due: 2026-12-04 14:00 }`",
);
