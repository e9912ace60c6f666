// Lists the numbers of a range as exact decimals: 0.1 steps end at 0.3, not at 0.30000000000000004.

/** Decimals of a step that is no short decimal, such as a third. */
const mostDecimals = 12;

/** A sign, digits and at most one point. */
export const decimalPattern = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)`;

function decimalsOf(text: string): number {
  return text.split(".")[1]?.length ?? 0;
}

/** The number times a power of ten. */
function scaled(text: string, decimals: number): bigint {
  const [, sign = "", whole = "", part = ""] = /^([+-]?)(\d*)\.?(\d*)$/u.exec(text) ?? [];
  const size = BigInt(`${whole}${part.padEnd(decimals, "0")}`);
  return sign === "-" ? -size : size;
}

function unscaled(value: bigint, decimals: number): string {
  const digits = String(value < 0n ? -value : value).padStart(decimals + 1, "0");
  const whole = digits.slice(0, digits.length - decimals);
  const part = digits.slice(digits.length - decimals).replace(/0+$/u, "");
  return `${value < 0n ? "-" : ""}${whole}${part === "" ? "" : `.${part}`}`;
}

const sizeOf = (value: bigint): bigint => (value < 0n ? -value : value);

/** How many numbers `stepRange` has; 0 where the step is 0. */
export function stepCount(from: string, to: string, by: string): number {
  const decimals = Math.max(...[from, to, by].map(decimalsOf));
  const [first, last, step] = [from, to, by].map((text) => scaled(text, decimals));
  if (first === undefined || last === undefined || step === undefined || step === 0n) return 0;
  return Number(sizeOf(last - first) / sizeOf(step)) + 1;
}

/** From `from` toward `to`, never beyond it; the sign of the step follows. */
export function stepRange(from: string, to: string, by: string): readonly string[] {
  const decimals = Math.max(...[from, to, by].map(decimalsOf));
  const [first, last, step] = [scaled(from, decimals), scaled(to, decimals), sizeOf(scaled(by, decimals))];
  const towards = last < first ? -step : step;
  return Array.from({ length: stepCount(from, to, by) }, (_, i) => unscaled(first + BigInt(i) * towards, decimals));
}

/** So many numbers at equal distances, both ends included. */
export function evenRange(from: string, to: string, count: number): readonly string[] {
  const decimals = Math.max(decimalsOf(from), decimalsOf(to), mostDecimals);
  const [first, last] = [scaled(from, decimals), scaled(to, decimals)];
  return Array.from({ length: count }, (_, i) =>
    unscaled(first + ((last - first) * BigInt(i)) / BigInt(count - 1), decimals),
  );
}
