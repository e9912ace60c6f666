// What the place Order keeps in the address: what was typed, and the changes that were applied.
import type { OrderForm, OrderLine, TypedForm } from "./form.ts";

export type Values = Readonly<Record<string, readonly string[]>>;

/** A change of the scenario that was applied with a click. */
export interface AppliedChange {
  readonly name: string;
  /** Each as `path=value`. */
  readonly settings: readonly string[];
}

export interface Kept {
  readonly typed: TypedForm;
  readonly applied: readonly AppliedChange[];
  /** Whether the changes are run also where the order fits. */
  readonly levers: boolean;
}

export const orderKeys = ["order", "due", "start", "shifts", "chance", "change", "levers"] as const;

const textKeys = ["due", "start", "shifts", "chance"] as const;

export function keptOf(values: Values): Kept {
  const texts = textKeys.flatMap((key) => (values[key]?.[0] === undefined ? [] : [[key, values[key][0]] as const]));
  return {
    typed: {
      ...(values["order"] === undefined ? {} : { lines: values["order"].map(lineOf) }),
      ...Object.fromEntries(texts),
    },
    applied: (values["change"] ?? []).map((text) => {
      const [name = "", ...settings] = text.split("\n");
      return { name, settings };
    }),
    levers: values["levers"] !== undefined,
  };
}

/** The values with these in place of those of this place; what is as in the scenario is not kept. */
export function withKept(values: Values, { typed, applied, levers }: Kept, own: OrderForm): Values {
  const others = Object.entries(values).filter(([key]) => !(orderKeys as readonly string[]).includes(key));
  const texts = textKeys.flatMap((key) => {
    const text = typed[key];
    return text === undefined || text === own[key] ? [] : [[key, [text]] as const];
  });
  const lines = typed.lines?.map(lineText);
  const isOwn = lines === undefined || lines.join("\n") === own.lines.map(lineText).join("\n");
  return Object.fromEntries([
    ...others,
    ...(isOwn ? [] : [["order", lines] as const]),
    ...texts,
    ...(applied.length === 0 ? [] : [["change", applied.map(changeText)] as const]),
    ...(levers ? [["levers", ["yes"]] as const] : []),
  ]);
}

const changeText = ({ name, settings }: AppliedChange): string => [name, ...settings].join("\n");

const lineText = ({ quantity, product }: OrderLine): string =>
  product === "" ? quantity : `${quantity} of ${product}`;

function lineOf(text: string): OrderLine {
  const [quantity = "", product = ""] = text.split(/ of (.*)/su);
  return { quantity, product };
}
