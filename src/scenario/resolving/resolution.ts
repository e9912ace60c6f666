// The shared state of the steps from a draft to a scenario: the draft, the written text and the findings.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { Written } from "#scenario/keys/glossary.ts";
import { defaults } from "#scenario/values/defaults.ts";
import type { DistributionReading } from "#scenario/distributions/distributionReading.ts";
import type { Draft } from "#scenario/reading/reading.ts";

export type ScenarioDraft = Draft<Written>;
export type StationDraft = Exclude<NonNullable<ScenarioDraft["stations"]>, readonly unknown[]>;
export type ProductDraft = NonNullable<ScenarioDraft["product"]>;

type RemoveDraft = NonNullable<NonNullable<StationDraft["steps"]>["remove"]>;
type RemoveKeys = Exclude<RemoveDraft, DistributionReading>;

export interface Resolution {
  readonly draft: ScenarioDraft;
  /** Whether the text has a value at the path; a faulty value is already reported. */
  readonly has: (path: Path) => boolean;
  readonly report: (finding: Finding) => void;
}

/** A distribution that can be drawn from; not one that waits for its column or for an estimate. */
export function settled(distribution: DistributionReading | "estimate" | undefined): Distribution | undefined {
  return distribution === undefined || distribution === "estimate" || distribution.kind === "column"
    ? undefined
    : distribution;
}

/** How parts leave the mold: a time alone is by machine. */
export function removeKeys({ steps }: StationDraft): RemoveKeys {
  const remove = steps?.remove;
  if (remove === undefined) return {};
  return "kind" in remove ? { time: remove, by: defaults["stations.*.steps.remove.by"].value } : remove;
}

/** True where every draw is zero, once rounded to a microsecond. */
export function isAlwaysZero(distribution: Distribution): boolean {
  const halfTick = 5e-7;
  switch (distribution.kind) {
    case "fixed":
      return distribution.value < halfTick;
    case "uniform":
    case "triangular":
      return distribution.max < halfTick;
    case "empirical":
      return distribution.values.every((value) => value < halfTick);
    case "normal":
    case "lognormal":
    case "gamma":
    case "exponential":
    case "weibull":
      // Their spread is above zero.
      return false;
  }
}
