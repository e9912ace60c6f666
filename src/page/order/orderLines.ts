// The quantities of an order, one after another; a cell with several products makes each of one product.
import { h, type ComponentChild } from "preact";
import type { Issue } from "#foundation/issue.ts";
import type { OrderLine, TypedForm } from "./form.ts";
import { TextField } from "./textField.ts";

interface OrderLinesProps {
  readonly lines: readonly OrderLine[];
  /** Those that the cell knows; none where it makes one. */
  readonly products: readonly string[];
  readonly issues: readonly Issue[];
  readonly keep: (typed: TypedForm) => void;
}

export function OrderLines({ lines, products, issues, keep }: OrderLinesProps): ComponentChild {
  const hasProducts = products.length > 0;
  const rows = lines.map((line, i) =>
    h(Line, {
      key: i,
      line,
      place: i,
      mark: lines.length > 1 ? ` ${i + 1}` : "",
      hasProduct: hasProducts,
      issues: i === 0 ? issues : [],
      change: (part) => keep({ lines: lines.map((each, j) => (j === i ? { ...each, ...part } : each)) }),
      remove: () => keep({ lines: lines.filter((_, j) => j !== i) }),
    }),
  );
  const add = (): void => keep({ lines: [...lines, { quantity: "", product: products[0]! }] });
  return h(
    "fieldset",
    { class: "lines" },
    h("legend", {}, hasProducts ? "Good parts, made in this order" : "Good parts"),
    rows,
    hasProducts ? h(Products, { products }) : null,
    hasProducts ? h("button", { type: "button", onClick: add }, "Add a quantity") : null,
  );
}

interface LineProps extends Pick<OrderLinesProps, "issues"> {
  readonly line: OrderLine;
  readonly place: number;
  /** Behind each label; empty where there is one line. */
  readonly mark: string;
  readonly hasProduct: boolean;
  readonly change: (part: Partial<OrderLine>) => void;
  readonly remove: () => void;
}

function Line({ line, place, mark, hasProduct, issues, change, remove }: LineProps): ComponentChild {
  const quantity = h(TextField, {
    id: `order-quantity-${place}`,
    label: `Quantity${mark}`,
    value: line.quantity,
    issues,
    keep: (text) => change({ quantity: text }),
  });
  const product = h(TextField, {
    id: `order-product-${place}`,
    label: `Product${mark}`,
    value: line.product,
    issues: [],
    list: productList,
    keep: (text) => change({ product: text }),
  });
  return h(
    "div",
    { class: "line" },
    quantity,
    hasProduct ? product : null,
    mark === "" ? null : h("button", { type: "button", onClick: remove }, `Remove quantity${mark}`),
  );
}

const productList = "order-products";

function Products({ products }: Pick<OrderLinesProps, "products">): ComponentChild {
  return h(
    "datalist",
    { id: productList },
    products.map((name) => h("option", { value: name })),
  );
}
