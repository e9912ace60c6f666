// From drafts to what makes a part good, with the checks that look across its keys.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { completeInput } from "#physics/window/windowInput.ts";
import { kelvin } from "./windowNumber.ts";
import type { ListedStation } from "./stationList.ts";
import type { Resolution } from "./resolution.ts";
import type { Products } from "./resolveProducts.ts";
import type { QualitySpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import type { Finding } from "#scenario/values/finding.ts";

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

type Fault = Pick<Finding, "code" | "message" | "expected" | "remedy">;

/** A limit of the demold temperature is judged at every station, and lies between mold and melt. */
export function checkDemold(stations: readonly (StationSpec | undefined)[], { draft, report }: Resolution): void {
  const limit = draft.quality?.maxDemold;
  if (limit === undefined) return;
  for (const station of stations) {
    const fault = station && faultOf(station, limit - kelvin);
    if (!fault) continue;
    report({ ...fault, path: ["quality", "maxDemold"] });
    return;
  }
}

function faultOf({ name, process }: StationSpec, limit: number): Fault | undefined {
  if (process?.values["product.wall.thickest"] === undefined) {
    return {
      code: "demold-unknown",
      message: `How the parts of ${name} cool is not known.`,
      expected: "`product.material` and `product.wall.thickest`",
      remedy: "Give both, or delete `maxDemold`.",
    };
  }
  if (process.values["station.moldResistance"] !== undefined) {
    return {
      code: "demold-mold-varies",
      message: `The mold temperature of ${name} depends on the heat load, so no single time cools its parts.`,
      expected: "`maxDemold` without `moldResistance`",
      remedy: "Give `moldTemperature` as it is at the running rate, and delete `moldResistance`.",
    };
  }
  return outsideOf(completeInput({ material: process.material, ...process.values }), limit);
}

function outsideOf(input: ReturnType<typeof completeInput>, limit: number): Fault | undefined {
  const coldest = Math.max(
    input["product.moldTemperature"],
    input["product.insideAir.transfer"] === undefined ? -Infinity : input["product.insideAir.temperature"],
  );
  const melt = input["product.meltTemperature"];
  if (limit > coldest && limit < melt) return undefined;
  const shown = (celsius: number): string => formatQuantity(celsius + kelvin, "temperature", { digits: 4 });
  return {
    code: "demold-outside",
    message: `A limit of ${shown(limit)} is not between mold or inside air of ${shown(coldest)} and melt of ${shown(melt)}.`,
    expected: `above ${shown(coldest)} and below ${shown(melt)}`,
    remedy: "Write a temperature between them, such as the demold temperature of the product.",
  };
}
