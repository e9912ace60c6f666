// Recharge and drop of a station: a measured time or a rate, its own or the cell's, never both.
import type { Path } from "#scenario/values/finding.ts";
import type { DistributionReading } from "#scenario/distributions/distributionReading.ts";
import { settled, type Resolution } from "./resolution.ts";
import type { TimeOrRate } from "#scenario/scenario.ts";

type RateKey = "plasticatingRate" | "deliveryRate";
type TimeKey = "recharge" | "drop";
type Values = { readonly [Key in RateKey | TimeKey]?: DistributionReading | undefined };

const pairs: readonly (readonly [RateKey, TimeKey])[] = [
  ["plasticatingRate", "recharge"],
  ["deliveryRate", "drop"],
];

/** Reports a rate beside a measured time of the same thing: two answers to one question. */
export function checkEither(path: Path, { has, report }: Resolution): void {
  for (const [rate, time] of pairs) {
    if (!has([...path, rate]) || !has([...path, time])) continue;
    const message = `Both \`${rate}\` and \`${time}\` are given.`;
    report({
      code: "rate-and-time",
      message,
      expected: "one of the two",
      remedy: `Delete \`${rate}\` or \`${time}\`.`,
      path: [...path, time],
      at: "key",
    });
  }
}

/** Reports what no station and not the cell gives; `own` are the paths of the stations' delivery. */
export function checkGiven(own: readonly Path[], { draft, has, report }: Resolution): void {
  const isContinuous = draft.delivery?.kind === "continuous";
  for (const [rate, time] of isContinuous ? pairs.slice(0, 1) : pairs) {
    const givenAt = (path: Path): boolean => has([...path, rate]) || has([...path, time]);
    if (!has(["delivery"]) || givenAt(["delivery"]) || (own.length > 0 && own.every(givenAt))) continue;
    if (draft.delivery === undefined) continue;
    const expected =
      rate === "plasticatingRate"
        ? "`plasticatingRate: 110 kg/h` or `recharge: 3.9 s`"
        : "`deliveryRate: 420 kg/h` or `drop: 1.2 s`";
    report({
      code: "missing",
      message: `Neither \`${rate}\` nor \`${time}\` is given.`,
      expected,
      remedy: `Add ${expected}.`,
      path: ["delivery", rate],
    });
  }
}

/** A station's own value overrides the cell's value. */
function levelOf(rate: RateKey, time: TimeKey, levels: readonly (Values | undefined)[]): Values | undefined {
  return levels.find((values) => values?.[rate] !== undefined || values?.[time] !== undefined);
}

/** Whether the time follows from a rate, and so from a mass. */
export function isByRate(rate: RateKey, time: TimeKey, ...levels: readonly (Values | undefined)[]): boolean {
  const level = levelOf(rate, time, levels);
  return level?.[rate] !== undefined && level[time] === undefined;
}

export function timeOrRate(
  rate: RateKey,
  time: TimeKey,
  ...levels: readonly (Values | undefined)[]
): TimeOrRate | undefined {
  const level = levelOf(rate, time, levels);
  const [own, measured] = [settled(level?.[rate]), settled(level?.[time])];
  if (measured !== undefined) return { by: "time", time: measured };
  return own === undefined ? undefined : { by: "rate", rate: own };
}
