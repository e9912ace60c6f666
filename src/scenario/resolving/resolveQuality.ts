// From drafts to what makes a part good, with the checks that look across its keys.
import { kelvin } from "./windowNumber.ts";
import type { ListedStation } from "./stationList.ts";
import type { Resolution } from "./resolution.ts";
import type { Products } from "./resolveProducts.ts";
import type { QualitySpec, Scenario } from "#scenario/scenario.ts";

const milligramsPerKilogram = 1_000_000;

type Judged = Pick<Scenario, "quality" | "maxInMold" | "maxHang">;

export function resolveQuality(products: Products, listed: readonly ListedStation[], resolution: Resolution): Judged {
  const { quality, maxInMold, maxHang } = resolution.draft;
  checkLimits(products, resolution);
  checkSpreads(resolution);
  checkHang(listed, resolution);
  return {
    ...(quality === undefined ? {} : { quality: qualityOf(quality) }),
    ...(maxInMold === undefined ? {} : { maxInMold }),
    ...(maxHang === undefined ? {} : { maxHang }),
  };
}

function qualityOf({
  lightest,
  heaviest,
  shotSpread = 0,
  cavitySpread = 0,
  rejects = 0,
  maxDemold,
}: NonNullable<Resolution["draft"]["quality"]>): QualitySpec {
  return {
    shotSpread,
    cavitySpread,
    rejects,
    ...(lightest === undefined ? {} : { lightest: lightest / milligramsPerKilogram }),
    ...(heaviest === undefined ? {} : { heaviest: heaviest / milligramsPerKilogram }),
    ...(maxDemold === undefined ? {} : { maxDemold: maxDemold - kelvin }),
  };
}

/** Limits that shut out the mean mass make nothing but rejects. */
function checkLimits(products: Products, { draft, report }: Resolution): void {
  const { lightest, heaviest } = draft.quality ?? {};
  for (const [name, { masses }] of products) {
    if (masses === undefined) continue;
    const mean = masses.partMilligrams;
    const of = products.size > 1 ? ` of ${name}` : "";
    if (lightest !== undefined && lightest > mean) {
      report({
        code: "limits-miss-mean",
        message: `The mean mass${of}, ${mean / 1000} g, is below the lightest good part.`,
        expected: `at most ${mean / 1000} g`,
        remedy: "Lower the limit, or give the mass of the part that is meant.",
        path: ["quality", "lightest"],
      });
    }
    if (heaviest !== undefined && heaviest < mean) {
      report({
        code: "limits-miss-mean",
        message: `The mean mass${of}, ${mean / 1000} g, is above the heaviest good part.`,
        expected: `at least ${mean / 1000} g`,
        remedy: "Raise the limit, or give the mass of the part that is meant.",
        path: ["quality", "heaviest"],
      });
    }
  }
}

/** Limits mean nothing without a spread, nor a spread without limits. */
function checkSpreads({ draft, report }: Resolution): void {
  const { lightest, heaviest, shotSpread, cavitySpread } = draft.quality ?? {};
  const isLimited = lightest !== undefined || heaviest !== undefined;
  const varies = (shotSpread ?? 0) > 0 || (cavitySpread ?? 0) > 0;
  if (isLimited === varies) return;
  report({
    code: "mass-unjudged",
    message: isLimited
      ? "Limits of mass are given, but every part has the mean mass."
      : "Masses spread, but no limit judges them.",
    expected: isLimited ? "`shotSpread: 1 %` or `cavitySpread: 1 %`" : "`lightest: 41 g` or `heaviest: 44 g`",
    remedy: "Add it, or delete the other.",
    path: ["quality"],
    at: "key",
    severity: "hint",
  });
}

function checkHang(listed: readonly ListedStation[], { draft, report }: Resolution): void {
  if (draft.maxHang === undefined) return;
  for (const { first, path, draft: station } of listed) {
    if (!first || station.steps === undefined || station.steps.clear !== undefined) continue;
    report({
      code: "clear-missing",
      message: "A parison that hangs too long is lost, and nothing says how the mold is cleared.",
      expected: "`clear: { time: 90 s, by: operator }`",
      remedy: "Add it to the steps, or delete `maxHang`.",
      path: [...path, "steps", "clear"],
    });
  }
}
