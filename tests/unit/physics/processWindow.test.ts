// The process window of four invented parts, each with its limiting row calculated by hand [C].
import { describe, expect, test } from "vitest";
import { materials } from "#physics/materials/materials.ts";
import { plausibleRanges, rangeOfPart, sizedRanges } from "#physics/window/plausibleRanges.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { shotCooling } from "#physics/window/shotCooling.ts";
import { missingRows, processWindow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import type { WindowRow } from "#physics/window/windowRule.ts";
import { bottle, bottleWithoutPinchLoad } from "./inventedBottle.ts";

const outside = (input: WindowInput) =>
  processWindow(input)
    .filter(({ verdict, isPractice }) => !isPractice && (verdict === "below" || verdict === "above"))
    .map(({ quantity }) => quantity);

function rowOf(input: WindowInput, quantity: string): WindowRow {
  const found = processWindow(input).find((row) => row.quantity === quantity);
  if (found === undefined) throw new Error(`no row ${quantity}`);
  return found;
}

const material = materials.get("HDPE")!;

test("a thin bottle cools within its time: 0.6 mm take 1.98 s of 4 s", () => {
  // By hand, one term: 4 · 0.36e-6/(π² · 1.05e-7) · ln(4/π · 180/55) = 1.3895 s · 1.4272 = 1.983 s
  const input = {
    material,
    "product.wall.thickest": 0.6e-3,
    "station.moldContact": Infinity,
    "station.steps.cool": 4,
  };
  const row = rowOf(input, "cooling time of the thickest place, hottest point");
  expect(row.value).toBeCloseTo(1.983, 2);
  expect(row).toMatchObject({ unit: "s", low: null, high: 4, verdict: "inside", remedy: "" });
  expect(outside(input)).toEqual([]);
});

test("a handled container is limited by its pinch-off tail, not by its mean wall", () => {
  // By hand: tail of 3.2 mm 4 · 10.24e-6/(π² · 1.05e-7) · 1.4272 = 39.5254 s · 1.4272 = 56.4 s. Mean wall of 1.1 mm to its
  // mean 4 · 1.21e-6/(π² · 1.05e-7) · ln(8/π² · 180/55) = 4.6705 s · 0.9757 = 4.56 s; of 18 s 0.5 s are the
  // inflation.
  const input = {
    material,
    "product.wall.thickest": 3.2e-3,
    "product.wall.mean": 1.1e-3,
    "station.moldContact": Infinity,
    "station.steps.cool": 17.5,
    "station.steps.blow": 0.5,
  };
  const tail = rowOf(input, "cooling time of the thickest place, hottest point");
  expect(tail.value).toBeCloseTo(56.4, 1);
  expect(tail).toMatchObject({ verdict: "above", high: 17.5 });
  expect(tail.remedy).toContain("thinner");
  const mean = rowOf(input, "cooling time of the mean wall to its mean temperature");
  expect(mean.value).toBeCloseTo(4.56, 1);
  expect(mean.verdict).toBe("inside");
  // By hand: √(17.5/56.4) · 3.2 mm = 1.78 mm.
  expect(rowOf(input, "thickest place that the cooling time allows").value * 1000).toBeCloseTo(1.78, 2);
});

test("a rigid PVC bottle is limited by its time at heat", () => {
  // By hand: 6 kg at 30 kg/h take 720 s, 600 s are allowed.
  const input = { material: materials.get("PVC-U")!, "delivery.holdUp": 6, "delivery.throughput": 30 / 3600 };
  expect(outside(input)).toEqual(["mean time at heat from hopper to die"]);
  expect(rowOf(input, "mean time at heat from hopper to die").value).toBeCloseTo(720, 9);
  // HDPE has no such limit.
  expect(processWindow({ ...input, material }).at(-1)?.verdict).toBe("no limit");
});

test("a large part is limited by sag", () => {
  // By hand, first order: 760 · 9.80665/(3 · 1e5) · 1.4 m · (5/6 + 3/2) s = 0.02484 · 1.4 · 2.333 = 0.0811; 0.05 is allowed.
  const input = {
    material,
    "product.parisonLength": 1.4,
    "station.steps.drop": 5,
    "station.steps.close": 3,
    "product.sagLimit": 0.05,
  };
  expect(outside(input)).toEqual(["sag of the parison when the mold has closed"]);
  const row = rowOf(input, "sag of the parison when the mold has closed");
  expect(row.value).toBeGreaterThan(0.0811);
  expect(row.value).toBeLessThan(0.0811 * 1.15);
});

test("a shot touches the mold when the air has filled it, and from the end of the blow where the fill is not known", () => {
  const { "station.moldResistance": _, ...given } = bottle;
  const [cool, blow] = [given["station.steps.cool"]!, given["station.steps.blow"]!];
  // The window holds the cooling time against the rest of blow and cool: by the same instant.
  const contact = rowOf(given, "cooling time of the thickest place, hottest point").high!;
  expect(shotCooling(given)!.inflation).toBeCloseTo(cool + blow - contact, 9);
  const { "product.airConductance": unknown, ...others } = given;
  expect(unknown).toBeGreaterThan(0);
  expect(shotCooling(others)!.inflation).toBeNull();
});

describe("the window", () => {
  test("has every row when all inputs are given, and lists the missing keys when none is", () => {
    expect(missingRows(bottle)).toEqual([]);
    expect(processWindow({ material })).toEqual([]);
    const shown = processWindow(bottle).map(({ quantity }) => quantity);
    const aboutThisScrew = /screw tip/u;
    const missing = missingRows({ material }).map(({ quantity }) => quantity);
    expect(missing).toEqual(shown.filter((quantity) => !aboutThisScrew.test(quantity)));
    expect(missingRows(bottleWithoutPinchLoad).map(({ quantity, keys }) => [quantity, keys])).toEqual([
      ["clamp force, without margin", ["product.pinchLoad"]],
      ["margin of the clamp force, of the force needed", ["product.pinchLoad"]],
    ]);
  });

  test("has finite values, a source in every row, a remedy for every row outside its limits, and unique names", () => {
    const rows = processWindow(bottle);
    expect(new Set(rows.map(({ quantity }) => quantity)).size).toBe(rows.length);
    for (const row of rows) {
      expect(Number.isFinite(row.value), row.quantity).toBe(true);
      expect(row.source, row.quantity).not.toBe("");
      expect(row.remedy === "", row.quantity).toBe(row.verdict === "inside" || row.verdict === "no limit");
    }
  });

  test("holds the thickest place that it allows itself, whatever the rounding, and nothing thicker", () => {
    const verdictAt = (cool: number, factor: number) => {
      const timed = {
        material,
        "product.wall.thickest": 1e-3,
        "station.moldContact": Infinity,
        "station.steps.cool": cool,
      };
      const allowed = rowOf(timed, "thickest place that the cooling time allows").value;
      const input = { ...timed, "product.wall.thickest": allowed * factor };
      return rowOf(input, "cooling time of the thickest place, hottest point").verdict;
    };
    const times = Array.from({ length: 40 }, (_, k) => 1.3 + 0.7 * k);
    expect(times.filter((cool) => verdictAt(cool, 1) !== "inside")).toEqual([]);
    expect(times.filter((cool) => verdictAt(cool, 1 + 1e-6) !== "above")).toEqual([]);
  });

  test("warns of melt fracture by stress and by drop time at the same limit", () => {
    // The stress at the lowest viscosity exceeds 0.3 MPa exactly when the drop is shorter than its lower limit.
    for (const drop of [0.3, 0.9, 0.98, 1.2, 5, 20, 60]) {
      const input = { ...bottle, "station.steps.drop": drop, "product.sagLimit": 5 };
      const stress = rowOf(input, "shear stress at the die wall, at least").verdict;
      const time = rowOf(input, "drop time between melt fracture and sag").verdict;
      expect(stress === "above", `${drop} s`).toBe(time === "below");
    }
    const fast = { ...bottle, "station.steps.drop": 0.5 };
    expect(rowOf(fast, "drop time between melt fracture and sag").verdict).toBe("below");
  });

  test("warns when the ranges of stress no longer overlap, or when a user's own melt exceeds its own limit", () => {
    // By hand: 2500 · 100 · 25.095^0.45 = 1.07 MPa is above 0.3 MPa, 1000 · 100 · 31.70^0.3 = 0.28 MPa is not
    const quantity = "shear stress at the die wall, at least";
    expect(rowOf(bottle, quantity).verdict).toBe("inside");
    const own = ownMaterial(material, { dieViscosity: 2500, powerLawIndex: 0.45, fractureStress: 0.2e6 });
    const row = rowOf({ ...bottle, material: own }, quantity);
    expect(row).toMatchObject({ verdict: "above", high: 0.2e6 });
    expect(row.value / 1.066e6).toBeCloseTo(1, 3);
    expect(rowOf({ ...bottle, material: own }, "drop time between melt fracture and sag").low).toBeCloseTo(49.446, 2);
  });

  test("judges the plasticating rate by what the screw delivers against the head pressure, not by the drag flow alone", () => {
    // Groover, Fundamentals of Modern Manufacturing, 4th ed., examples 13.1 and 13.2 [M+C]: Q_d 53.53e-6, Q_b 18.28e-6 and
    // Q_x 35.25e-6 m³/s at 7 MPa and 100 Pa s; at 20.5 MPa Q_b = 53.53e-6 m³/s leaves nothing.
    const groover = (cubicMeters: number, pressure?: number) => {
      const input = {
        material,
        "delivery.screwDiameter": 0.075,
        "delivery.screw.channelDepth": 0.006,
        "delivery.screw.helixAngle": 20,
        "delivery.screw.meteringLength": 1.9,
        "delivery.screw.speed": 1,
        "delivery.plasticatingRate": cubicMeters * material.meltDensity.value,
      };
      const pressed = { ...input, "delivery.screw.backPressure": pressure, "delivery.screw.viscosity": 100 };
      const row = rowOf(pressure === undefined ? input : pressed, "plasticating rate against the metering zone");
      return [(row.high ?? 0) / material.meltDensity.value, row.verdict] as const;
    };
    for (const [rate, pressure, high, verdict] of [
      [35e-6, 7e6, 35.25e-6, "inside"],
      [36e-6, 7e6, 35.25e-6, "above"],
      [36e-6, undefined, 53.53e-6, "inside"],
      [54e-6, undefined, 53.53e-6, "above"],
      [1e-6, 20.5e6, 0, "above"],
    ] as const) {
      const [limit, found] = groover(rate, pressure);
      expect(Math.abs(limit - high)).toBeLessThan(0.01e-6);
      expect(found).toBe(verdict);
    }
  });

  test("compares the given parison length with that from die and mass", () => {
    // By hand [C]: the die gives 0.3229 m.
    const quantity = "parison length from die and mass, of the given length";
    expect(rowOf({ ...bottle, "product.parisonLength": 0.32 }, quantity).value).toBeCloseTo(1.009, 3);
    expect(rowOf({ ...bottle, "product.parisonLength": 0.9 }, quantity).verdict).toBe("below");
    expect(rowOf({ ...bottle, "product.parisonLength": 0.1 }, quantity).verdict).toBe("above");
  });

  test("compares the drop with common practice for the kind of delivery", () => {
    // Common practice, no published source, for a bottle: 1-3 s reciprocating screw, 1-5 s accumulator head
    const drops = (input: WindowInput) =>
      processWindow(input).flatMap((row) => (row.quantity.startsWith("parison drop") ? [[row.low, row.high]] : []));
    expect(drops(bottle)).toEqual([[1, 3]]);
    expect(drops({ ...bottle, deliveryKind: "accumulator-head" })).toEqual([[1, 5]]);
    expect(drops({ ...bottle, deliveryKind: "continuous" })).toEqual([]);
  });

  test("has a row of rejects only when a run can have rejects", () => {
    const rejects = (share: number) => rowOf({ ...bottle, "station.rejects": share }, "rejects").verdict;
    expect([rejects(0.005), rejects(0.03), rejects(0.08)]).toEqual(["below", "inside", "above"]);
    expect(processWindow(bottle).some(({ quantity }) => quantity === "rejects")).toBe(false);
  });

  test("compares the pellet's travel with 48 s only for a screw near 2½ inches", () => {
    const quantity = "melt from hopper to screw tip if a pellet takes 48 s";
    const wide = { ...bottle, "delivery.screwDiameter": 0.09 };
    expect(processWindow(wide).some((row) => row.quantity === quantity)).toBe(false);
    // By hand: 48 s at 75 kg/h need 1.0 kg, more than the 0.943 kg of a full channel.
    expect(rowOf({ ...bottle, "delivery.throughput": 75 / 3600 }, quantity)).toMatchObject({
      verdict: "above",
      isPractice: true,
    });
  });

  test("has an upper limit of the drop exactly where the sag reaches its limit", () => {
    // A wide die never reaches melt fracture, so that only the sag limits the drop.
    const wide = { ...bottle, "product.die.mandrel": 0.02 };
    for (const drop of [2, 10, 20, 40, 60, 90]) {
      const input = { ...wide, "station.steps.drop": drop };
      const sag = rowOf(input, "sag of the parison when the mold has closed").verdict;
      const time = rowOf(input, "drop time between melt fracture and sag").verdict;
      expect(sag === "above", `${drop} s`).toBe(time === "above");
    }
    expect(outside({ ...wide, "station.steps.drop": 90 })).toContain("drop time between melt fracture and sag");
    expect(outside({ ...wide, "station.steps.drop": 10 })).not.toContain("drop time between melt fracture and sag");
  });

  test("uses a given value instead of the material's", () => {
    const hotter = { ...bottle, "product.moldTemperature": 40 };
    const quantity = "cooling time of the thickest place, hottest point";
    expect(rowOf(hotter, quantity).value).toBeGreaterThan(rowOf(bottle, quantity).value);
  });

  test("accepts a value exactly at its limit", () => {
    const atLimit = { ...bottle, "delivery.shotCapacity": 0.1092 };
    expect(rowOf(atLimit, "shot mass").verdict).toBe("inside");
    expect(rowOf({ ...bottle, "delivery.shotCapacity": 0.109 }, "shot mass").verdict).toBe("above");
  });
});

test("the ranges of common practice are marked as such", () => {
  // Common practice, no published source; blow pressure 350-700 kPa: Kalpakjian and Schmid, Manufacturing Engineering and
  // Technology, section on blow molding [M].
  const ranges = [...Object.values(plausibleRanges), ...Object.values(sizedRanges)];
  expect(
    ranges.filter(({ source }) => source !== "common practice, no published source").map((each) => each.quantity),
  ).toEqual(["blow pressure"]);
  const of = ({ low, high }: { readonly low: number; readonly high: number }) => [low, high];
  expect(of(plausibleRanges.dieGap)).toEqual([0.8e-3, 3e-3]);
  expect(of(plausibleRanges.simpleFlash)).toEqual([0.1, 0.15]);
  expect(of(plausibleRanges.handleFlash)).toEqual([0.25, 0.45]);
  expect(of(plausibleRanges.rejects)).toEqual([0.01, 0.05]);
  expect(of(plausibleRanges.blowPressure)).toEqual([350e3, 700e3]);
  // By hand: 30 % of all that is extruded is 0.3/0.7 = 43 % of the part.
  expect(0.3 / (1 - 0.3)).toBeCloseTo(0.43, 2);
});

describe("a range that depends on the part", () => {
  // Common practice, no published source. Parts of 19 g, 42 g, 950 g and 2.2 kg: a sample bottle, a bottle, a canister, a drum.
  test.each([
    ["coolingShare", [0.5, 0.8], [0.6, 0.8], [0.6, 0.8], [0.6, 0.9]],
    ["screwDrop", [0.5, 3], [1, 3], [1, 5], [2, 6]],
    ["accumulatorDrop", [1, 3], [1, 5], [2, 6], [2, 10]],
    ["closeAndOpen", [1, 3], [1.5, 3], [2, 5], [3, 10]],
    ["vent", [0.5, 1.5], [0.5, 1.5], [0.5, 3], [1, 10]],
    ["removal", [0.5, 1], [0.5, 1], [1, 5], [3, 20]],
    ["removalByOperator", [1, 8], [1, 8], [2, 10], [3, 30]],
  ] as const)("%s", (name, ...expected) => {
    const ranges = [0.019, 0.042, 0.95, 2.2].map((partMass) => rangeOfPart(sizedRanges[name], partMass));
    expect(ranges.map(({ low, high }) => [low, high])).toEqual(expected);
  });

  test("covers all sizes where the part mass is unknown", () => {
    expect(rangeOfPart(sizedRanges.closeAndOpen, undefined)).toEqual({ low: 1, high: 10 });
    expect(rangeOfPart(sizedRanges.coolingShare, undefined)).toEqual({ low: 0.5, high: 0.9 });
  });

  test("belongs to the lighter size at its border", () => {
    expect(rangeOfPart(sizedRanges.removal, 0.25).high).toBe(1);
    expect(rangeOfPart(sizedRanges.removal, 0.250_001).high).toBe(5);
  });

  test("judges a removal by an operator by its own range, and no cooling share then", () => {
    const byHand = { ...bottle, removedBy: "operator", "station.steps.remove": 5 } as const;
    expect(rowOf(byHand, "removal by an operator").verdict).toBe("inside");
    expect(rowOf({ ...bottle, "station.steps.remove": 5 }, "removal").verdict).toBe("above");
    const shown = processWindow(byHand).map(({ quantity }) => quantity);
    expect(shown).not.toContain("removal");
    expect(shown).not.toContain("cooling share of the cycle");
  });

  test("has the cooling share of the mold's own cycle: 12 s of 16.2 s", () => {
    expect(rowOf(bottle, "cooling share of the cycle").value).toBeCloseTo(12 / 16.2, 12);
  });
});
