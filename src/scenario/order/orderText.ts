// Parses an order, such as `200000 parts` or `50000 parts of blue bottle`.
import type { Fault } from "#foundation/fault.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";

export interface OrderText {
  /** Good parts. */
  readonly quantity: number;
  /** Absent where the text does not name it. */
  readonly product?: string;
}

const orderForm = '"200000 parts", or "50000 parts of PRODUCT" where the cell has several products';
const mostParts = 1_000_000_000;

export function parseOrder(text: string): OrderText | Fault {
  const [, amount = "", product] = /^(.*?)(?:\s+of\s+(.+))?$/su.exec(text.trim()) ?? [];
  // Beside `of` the unit is understood.
  const written = product !== undefined && /^\d+$/u.test(amount) ? `${amount} parts` : amount;
  const quantity = parseQuantity(written, "parts");
  if (!isQuantity(quantity)) return { ...quantity, expected: orderForm };
  const wrong = wholeParts(quantity.value);
  if (wrong !== undefined) return wrong;
  return { quantity: quantity.value, ...(product === undefined ? {} : { product: product.trim() }) };
}

/** What is wrong with a number of parts; undefined for a whole number that can be made. */
export function wholeParts(parts: number): Fault | undefined {
  const isWhole = Number.isInteger(parts);
  if (isWhole && parts >= 1 && parts <= mostParts) return undefined;
  const message = isWhole ? `${parts} parts are outside 1 to ${mostParts}.` : `${parts} parts are not a whole number.`;
  return { code: "order-form", message, expected: orderForm, remedy: `Write a whole number from 1 to ${mostParts}.` };
}
