// Four shipped cells without measured times, and the row of the process window that limits each of them.
import { describe, expect, it } from "vitest";
import { idealCycle, type IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { settleEstimates } from "#analysis/window/settleEstimates.ts";
import { outsideWindow, stationWindows, type StationWindow } from "#analysis/window/stationWindow.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import type { StationSpec } from "#scenario/scenario.ts";
import { scenarioOf, shippedText } from "../../../support/reported.ts";

interface Settled {
  readonly ideal: IdealCycle;
  readonly station: StationSpec;
  readonly row: (quantity: string) => StationWindow["rows"][number];
  /** Rows outside limits that are not common practice only. */
  readonly broken: readonly string[];
}

function settled(name: string, set: readonly string[] = []): Settled {
  const { scenario, findings } = settleEstimates(scenarioOf(shippedText(name), name, set));
  expect(findings).toEqual([]);
  const ideal = idealCycle(scenario);
  const windows = stationWindows(scenario, ideal);
  const row = (quantity: string) => windows[0]!.rows.find((each) => each.quantity === quantity)!;
  const broken = outsideWindow(windows)
    .filter(({ isPractice }) => !isPractice)
    .map(({ quantity, verdict }) => `${quantity}: ${verdict}`);
  return { ideal, station: scenario.stations[0]!, row, broken };
}

const criticalNames = ({ circuits }: IdealCycle): readonly string[] =>
  circuits.filter(({ critical }) => critical).map(({ name }) => name);

/** Seconds of the closed mold after the delay of the air, 0.1 s, and the slower fill. */
const inContact = ({ station, row }: Pick<Settled, "station" | "row">): number =>
  distributionMean(station.blow) + distributionMean(station.cool) - 0.1 - row("fill time, isothermal").value;

const thickest = "cooling time of the thickest place, hottest point";
const meanWall = "cooling time of the mean wall to its mean temperature";

/**
 * Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, Table 5.1, at Bi = h L / k = 10: ζ₁ = 1.4289, C₁ = 1.2620
 * [M+C]. The inside face has θ = C₁ exp(−ζ₁² Fo), so t = L² / (α ζ₁²) × ln(C₁ / θ).
 */
function coolingAtBiotTen(wall: number, diffusivity: number, share: number): number {
  return ((wall * wall) / (diffusivity * 1.4289 ** 2)) * Math.log(1.262 / share);
}

describe("a thin bottle", () => {
  const { ideal, row, broken, station } = settled("thin-bottle");

  // By hand [C]: 4 × (14 g + 15 %) = 64.4 g; at 90 kg/h 2.576 s.
  it("is limited by its molds, which wait for valve delay and vent as well", () => {
    expect(broken).toEqual([]);
    expect(criticalNames(ideal)).toEqual(["each station"]);
    expect(row("recharge time").value).toBeCloseTo((64.4 * 3600) / 90_000, 9);
    // Circuit of a station, by hand [C]: valve shift, drop at 300 kg/h, close, blow, cool, vent, open and removal, for two stations.
    const closed = distributionMean(station.blow) + distributionMean(station.cool) + distributionMean(station.vent);
    const mold = 0.25 + (64.4 * 3600) / 300_000 + 0.6 + closed + 0.6 + 0.75;
    expect(ideal.secondsPerShot).toBeCloseTo(mold / 2, 5);
    expect(inContact({ station, row })).toBeCloseTo(row(thickest).value, 9);
  });
});

describe("a container with a handle", () => {
  const { ideal, row, broken, station } = settled("handled-container", ["stations.moldContact=1800 W/(m² K)"]);

  // HDPE of the catalogue: Bi = 1800 × 0.002 / 0.36 = 10, α 1.05e-7 m²/s, θ = (65 − 10)/(190 − 10).
  it("is limited by the cooling of its thickest place, the pinch-off tail", () => {
    expect(broken).toEqual([]);
    expect(criticalNames(ideal)).toEqual(["each station"]);
    const published = coolingAtBiotTen(0.002, 1.05e-7, 55 / 180);
    expect(Math.abs(row(thickest).value / published - 1)).toBeLessThan(1e-3);
    expect(inContact({ station, row })).toBeCloseTo(row(thickest).value, 9);
    expect(row(meanWall).value).toBeLessThan(row(thickest).value / 4);
  });

  it("is limited by the recharge when the tail is as thin as the wall", () => {
    const trimmed = settled("handled-container", ["product.wall.thickest=0.9 mm"]);
    expect(criticalNames(trimmed.ideal)).toEqual(["plasticator"]);
  });
});

describe("a rigid PVC bottle on a machine that holds too much melt", () => {
  const atHeat = "mean time at heat from hopper to die";

  // Bi = 2250 × 0.0008 / 0.18 = 10, α 0.92e-7 m²/s, θ = (55 − 20)/(195 − 20). A shot of 20 g + 15 % in half a mold cycle;
  // hold-up 3.6 kg.
  it("is limited by the time at heat", () => {
    const { ideal, row, broken, station } = settled("rigid-pvc", ["stations.moldContact=2250 W/(m² K)"]);
    expect(broken).toEqual([`${atHeat}: above`]);
    const cooling = coolingAtBiotTen(0.0008, 0.92e-7, 0.2);
    // Travel in, close, cut, travel out and the mold steps; the matched screw has the pace of both molds.
    const inflation = distributionMean(station.blow) + distributionMean(station.cool) - inContact({ station, row });
    const mold =
      0.6 + 0.8 + 0.15 + 0.6 + inflation + cooling + distributionMean(station.vent) + 0.8 + (0.7 + 0.8 + 1.0) / 3;
    const residence = 3.6 / (0.023 / (mold / 2));
    expect(ideal.secondsPerShot).toBeCloseTo(mold / 2, 2);
    expect(Math.abs(row(atHeat).value / residence - 1)).toBeLessThan(1e-3);
    // Limit of rigid PVC, about ten minutes [M, low confidence].
    expect(row(atHeat).high).toBe(600);
  });

  it("is within its limit with twice the throughput", () => {
    expect(settled("rigid-pvc", ["stations.cavities=2"]).broken).toEqual([]);
  });
});

describe("a large part", () => {
  const sag = "sag of the parison when the mold has closed";

  /**
   * Exact sag by a midpoint sum: L/L₀ = (1/t_d) ∫ du / (1 − K L₀ (u/t_d)(t_d + t_h − u)) [C], with the viscosity of Trouton,
   * On the coefficient of viscous traction, Proc. R. Soc. A 77 (1906) 426 [M].
   */
  function sagged(stretch: number, delivery: number, hold: number): number {
    const parts = 20_000;
    let sum = 0;
    for (let i = 0; i < parts; i += 1) {
      const share = (i + 0.5) / parts;
      sum += 1 / (1 - stretch * share * (delivery + hold - share * delivery));
    }
    return sum / parts - 1;
  }
  // K = ρ g / (3 η₀) = 760 × 9.80665 / (3 × 1e5); parison 1.15 m; the close is the hold time.
  const stretch = ((760 * 9.80665) / 3e5) * 1.15;
  const dropAt = (kilogramsPerHour: number): number => (2.75 * 3600) / kilogramsPerHour;

  it("is limited by the sag of its parison", () => {
    const { row, broken } = settled("large-part");
    expect(broken).toEqual([`${sag}: above`]);
    // First-order sag K L₀ (t_d/6 + t_h/2) = 9.0 %, above the limit of 8 %.
    const firstOrder = stretch * (dropAt(850) / 6 + 2.4 / 2);
    expect(firstOrder).toBeGreaterThan(0.08);
    expect(row(sag).value).toBeGreaterThan(firstOrder);
    expect(row(sag).value).toBeCloseTo(sagged(stretch, dropAt(850), 2.4), 6);
  });

  it("is within its limit with a faster drop", () => {
    const { row, broken } = settled("large-part", ["delivery.deliveryRate=1300 kg/h"]);
    expect(row(sag).value).toBeCloseTo(sagged(stretch, dropAt(1300), 2.4), 6);
    expect(broken).toEqual([]);
  });
});
