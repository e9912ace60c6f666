// The keys of each kind of melt delivery: keys of another kind are errors, and so are missing ones.
import { distributionMean } from "#engine/distributions/moments.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Path } from "#scenario/values/finding.ts";
import { removeKeys, settled, type Resolution } from "./resolution.ts";
import type { DeliverySpec } from "#scenario/scenario.ts";
import type { ListedStation } from "./stationList.ts";

type Kind = DeliverySpec["kind"];

/** Keys that only some kinds have; of a station's own `delivery` the same, and its steps. */
const kindsOf: Readonly<Record<string, readonly Kind[]>> = {
  rechargeStarts: ["reciprocating-screw"],
  shotFor: ["reciprocating-screw"],
  accumulator: ["accumulator-head"],
  rate: ["continuous"],
  rateRange: ["continuous"],
  stopsScrewAfter: ["continuous"],
  removal: ["continuous"],
  dieZone: ["continuous"],
  deliveryRate: ["reciprocating-screw", "accumulator-head"],
  drop: ["reciprocating-screw", "accumulator-head"],
  shotCapacity: ["reciprocating-screw", "accumulator-head"],
  travelIn: ["continuous"],
  cut: ["continuous"],
  travelOut: ["continuous"],
};

export function checkKind(listed: readonly ListedStation[], resolution: Resolution): void {
  const kind = resolution.draft.delivery?.kind;
  if (kind === undefined) return;
  const first = listed.filter((station) => station.first);
  const places: Path[] = [
    ["delivery"],
    ...first.flatMap(({ path }) => [
      [...path, "delivery"],
      [...path, "steps"],
    ]),
  ];
  for (const place of places) refuseOthers(place, kind, resolution);
  if (kind === "continuous") checkContinuous(first, resolution);
  else if (resolution.has(["valve"])) need(["valve", "shift"], "`shift: 0.3 s`", resolution);
  const { accumulator } = resolution.draft.delivery ?? {};
  if (accumulator === "common") need(["delivery", "shotCapacity"], "`shotCapacity: 1.2 kg`", resolution);
}

function refuseOthers(place: Path, kind: Kind, { has, report }: Resolution): void {
  for (const [key, kinds] of Object.entries(kindsOf)) {
    if (kinds.includes(kind) || !has([...place, key])) continue;
    report({
      code: "other-kind",
      message: `\`${key}\` has no meaning for \`kind: ${kind}\`.`,
      expected: `only for ${kinds.map((each) => `\`${each}\``).join(" or ")}`,
      remedy: "Delete the key, or change `delivery.kind`.",
      path: [...place, key],
      at: "key",
    });
  }
}

function checkContinuous(first: readonly ListedStation[], resolution: Resolution): void {
  const { draft, has, report } = resolution;
  if (has(["valve", "shift"])) {
    report({
      code: "other-kind",
      message: "`shift` has no meaning for `kind: continuous`, which has no valve.",
      expected: "no `shift`; `dispatch` alone",
      remedy: "Delete the key.",
      path: ["valve", "shift"],
      at: "key",
    });
  }
  checkRange(resolution);
  for (const { path, draft: station } of first) {
    if (station.steps === undefined) continue;
    for (const key of ["travelIn", "cut", "travelOut"]) need([...path, "steps", key], `\`${key}: 0.8 s\``, resolution);
  }
  const { removal } = draft.delivery ?? {};
  if (removal !== "pin") return;
  for (const { path, draft: station } of first) {
    if (removeKeys(station).by !== "operator") continue;
    report({
      code: "other-kind",
      message: "Parts that a pin carries to a mask are not removed by an operator.",
      expected: "`by: machine`",
      remedy: "Write `by: machine`, or `removal: mold`.",
      path: [...path, "steps", "remove", "by"],
    });
  }
}

function checkRange({ draft, has, report }: Resolution): void {
  if (!has(["delivery", "rateRange"])) return;
  const path = ["delivery", "rateRange"];
  const { rate, rateRange, plasticatingRate } = draft.delivery ?? {};
  if (rate === "fixed") {
    report({
      code: "range-unused",
      message: "A screw of `rate: fixed` is not turned down: its range is not used.",
      remedy: "Delete `rateRange`, or write `rate: matched`.",
      path,
      at: "key",
      severity: "hint",
    });
  }
  const full = settled(plasticatingRate);
  if (rateRange?.min === undefined || full === undefined || rateRange.min <= distributionMean(full)) return;
  const [min, most] = [rateRange.min, distributionMean(full)].map((each) =>
    formatQuantity(each, "rate", { digits: 4 }),
  );
  report({
    code: "values-contradict",
    message: `\`rateRange.min\` of ${min} is above \`plasticatingRate\` of ${most}.`,
    expected: "a slowest rate below the full one",
    remedy: "Check both for a slip.",
    path: [...path, "min"],
  });
}

function need(path: Path, expected: string, { has, report }: Resolution): void {
  if (has(path)) return;
  report({
    code: "missing",
    message: `\`${path.at(-1)}\` is missing.`,
    expected,
    remedy: `Add ${expected}.`,
    path,
  });
}
