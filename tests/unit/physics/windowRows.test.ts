// Every row of one bottle's process window: value, limits and verdict, calculated independently.
import { describe, expect, test } from "vitest";
import { processWindow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import type { Verdict, WindowRow } from "#physics/window/windowRule.ts";
import { bottle } from "./inventedBottle.ts";
import { expectPrinted } from "./printed.ts";

type Printed = readonly [
  quantity: string,
  value: string,
  unit: string,
  low: string | null,
  high: string | null,
  verdict: Verdict,
];

// An independent computation [C] with the formulas and material values of the sources in the other tests of this folder. Its root
// finding and its sums of 100,000 strips share no code with this project.
const printed: readonly Printed[] = [
  // Bi = 1000 · 1.3e-3/0.36 = 3.6111, ζ = 1.24002, C₁ = 1.22259: 1.69e-6/(1.05e-7 · 1.53765) · ln(1.22259 · 180/55). Blow and
  // cool 12.5 s less 0.1 s of delay and 0.124 s of filling.
  ["cooling time of the thickest place, hottest point", "14.514", "s", null, "12.276", "above"],
  ["cooling time of the mean wall to its mean temperature", "6.725", "s", null, "12.276", "inside"],
  // 4 · 1.69e-6/(π² · 1.05e-7) · ln(4/π · 180/55) = 6.5231 · 1.42720
  ["cooling time of the thickest place, perfect contact", "9.310", "s", null, null, "no limit"],
  ["contact of wall and mold", "1000", "W/(m² K)", null, null, "no limit"],
  // 10 + 180 · 1.22259 · exp(−1.53765 · 1.05e-7 · 12.276/1.69e-6)
  ["hottest point of the thickest place at the vent", "78.11", "°C", null, "65", "above"],
  ["thickest place that the cooling time allows", "1.1729e-3", "m", "1.3e-3", null, "below"],
  // 60/3600 · (2200 · (130 − 23) + 200e3 + 2500 · (190 − 130))
  ["heat into the melt", "9757", "W", null, null, "no limit"],
  // 30/3600 · (2200 · (130 − 65) + 200e3 + 2500 · (190 − 130))
  ["heat into the mold", "4108.3", "W", null, null, "no limit"],
  // 4108.3/(999 · 4187 · 3); water at 15 °C of Incropera et al., Fundamentals of Heat and Mass Transfer, table A.6 [M]
  ["cooling water for the mold", "3.2740e-4", "m³/s", null, null, "no limit"],
  // twice the heat of one mold
  ["heat into all molds", "8217", "W", null, null, "no limit"],
  // 0.0546/(760 · π · 0.0285 · √1.4 · 0.0015 · 1.4)
  ["parison length before sag", "0.3229", "m", "0.22", null, "inside"],
  // 0.3229/0.26; 1/1.25 to 1.25: common practice, no published source
  ["parison length from die and mass, of the given length", "1.242", "1", "0.8", "1.25", "inside"],
  // Q = 0.0546/760/1.2 = 5.98684e-5; 6 Q/(π · 0.0285 · 2.25e-6) = 1783.1, · 1.9/1.35
  ["shear rate at the die wall", "2509.5", "1/s", null, null, "no limit"],
  // Lowest viscosity and index and highest stress of the material: 1783.1 · 1.6/0.9 = 3169.9; 1000 · 100 · 31.699^0.3
  ["shear stress at the die wall, at least", "0.28204e6", "Pa", null, "0.3e6", "inside"],
  // K = 760 · 9.80665/3e5 = 0.0248435; first order 0.0248435 · 0.26 · (1.2/6 + 0.6/2) = 0.00323
  ["sag of the parison when the mold has closed", "0.0032417", "1", null, "0.1", "inside"],
  // Low: 3169.9 · 1.2/3893.9, with 100 · (0.3e6/0.1e6)^(1/0.3) = 3893.9. High: where the sag is 0.1.
  ["drop time between melt fracture and sag", "1.2", "s", "0.97685", "81.127", "inside"],
  // 1.5 · 1.4 · √1.4 · 28.5/80 mm
  ["mean wall from die gap, swell and blow-up", "0.8852e-3", "m", null, null, "no limit"],
  // 2 · (42 + 12.6) g
  ["shot mass", "0.1092", "kg", null, "0.4", "inside"],
  // 0.1092/760 m³ over π · 0.0635²/4; 4 · 63.5 mm, common practice, no published source
  ["stroke of the screw for one shot, without cushion", "0.04537", "m", null, "0.254", "inside"],
  // 0.4/0.1092 − 1
  ["unused shot capacity, of the shot", "2.663", "1", null, null, "no limit"],
  // 0.1092 kg at 80 kg/h
  ["recharge time", "4.914", "s", null, null, "no limit"],
  // 16 · 2.5^2.2 = 120.11 lb/h = 54.48 kg/h; the limits of the given rate are half and twice of it.
  ["plasticating rate by rule of thumb", "0.015134", "kg/s", null, null, "no limit"],
  ["plasticating rate", "0.02222", "kg/s", "0.0075670", "0.030268", "inside"],
  // 760 · ½ π² · 0.0635² · 1.5 · 0.0045 · sin 17.66° cos 17.66°
  ["drag flow of the metering zone", "0.029508", "kg/s", null, null, "no limit"],
  // less 760 · 100e5 · π · 0.0635 · 0.0045³ sin² 17.66°/(12 · 800 · 0.4)
  ["output of the metering zone against the back pressure", "0.026197", "kg/s", null, null, "no limit"],
  // The given rate, at most the row above.
  ["plasticating rate against the metering zone", "0.02222", "kg/s", null, "0.026197", "inside"],
  // 15 kW at 80 kg/h; 15 and 5 lb/h per hp: Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976 [R].
  ["drive energy per mass", "675.0e3", "J/kg", "394.6e3", "1183.7e3", "inside"],
  // 1.2 kg at 60 kg/h
  ["mean time at heat from hopper to die", "72.0", "s", null, null, "no limit"],
  // The same: 1.2 kg at 60 kg/h.
  ["travel of a colored pellet from hopper to die", "72.0", "s", null, null, "no limit"],
  // 48 s of 60 kg/h; 650 · π (63.5 − 7.1755) 7.1755 mm² · 1.27 m · 0.9: common practice, no published source
  ["melt from hopper to screw tip if a pellet takes 48 s", "0.800", "kg", null, "0.9433", "inside"],
  // The limit is the given time less 0.1 s of delay. 0.8 L to 7.01325 bar absolute from 8.51325, C 5 dm³/(s bar), b 0.3, 20 °C; flow of ISO 6358-1:2013 [M], strips.
  ["fill time, isothermal", "0.12400", "s", null, "0.4", "inside"],
  ["fill time, adiabatic", "0.08857", "s", null, "0.4", "inside"],
  // The same from 7.01325 to 1.11325 bar absolute against 1.01325.
  ["vent time, isothermal", "0.32266", "s", null, "0.4", "inside"],
  ["vent time, adiabatic", "0.26602", "s", null, "0.4", "inside"],
  // 0.8 L · 6 bar/1 bar
  ["free air that the compressor adds for one bottle", "4.8e-3", "m³", null, null, "no limit"],
  // 30 kg/h over 54.6 g · 4.8 L · 1.185 kg/m³ · 246.51 kJ/kg over 0.7; 1.4/0.4 · 287.05 · 293.15 · (8.4020^(1/3.5) − 1)
  ["compressor power for the air of this mold", "305.72", "W", null, null, "no limit"],
  // 2 · (0.018 · 6e5 + 0.06 · 1e5)
  ["clamp force, without margin", "33600", "N", null, "60000", "inside"],
  // 60000/33600 − 1
  ["margin of the clamp force, of the force needed", "0.7857", "1", null, null, "no limit"],
  // The limits of all rows below are common practice, no published source, except the blow pressure.
  // 12/(1.2 + 0.6 + 0.5 + 12 + 0.5 + 0.6 + 0.8) = 12/16.2
  ["cooling share of the cycle", "0.741", "1", "0.6", "0.8", "inside"],
  // The given drop.
  ["parison drop of a reciprocating screw", "1.2", "s", "1.0", "3.0", "inside"],
  // 0.6 + 0.6
  ["close and open together", "1.2", "s", "1.5", "3.0", "below"],
  // The vent is exactly at its lower limit.
  ["vent", "0.5", "s", "0.5", "1.5", "inside"],
  ["removal", "0.8", "s", "0.5", "1.0", "inside"],
  // (30 − 27)/2 mm
  ["die gap", "1.5e-3", "m", "0.8e-3", "3.0e-3", "inside"],
  // 12.6/42, then 12.6/54.6
  ["flash, of the part", "0.3", "1", "0.1", "0.45", "inside"],
  ["flash, of all that is extruded", "0.23077", "1", null, null, "no limit"],
  // Kalpakjian and Schmid, Manufacturing Engineering and Technology, section on blow molding [M].
  ["blow pressure", "600e3", "Pa", "350e3", "700e3", "inside"],
];

function expectLimit(actual: number | null, text: string | null): void {
  if (text === null || actual === null) expect(actual).toBe(text);
  else expectPrinted(actual, text);
}

function rowOf(input: WindowInput, quantity: string): WindowRow {
  const found = processWindow(input).find((row) => row.quantity === quantity);
  if (found === undefined) throw new Error(`no row ${quantity}`);
  return found;
}

describe("a bottle of 0.8 L", () => {
  test("has the listed rows in this order", () => {
    expect(processWindow(bottle).map(({ quantity }) => quantity)).toEqual(printed.map(([quantity]) => quantity));
  });

  test.each(printed)("has a %s of %s %s", (quantity, value, unit, low, high, verdict) => {
    const row = rowOf(bottle, quantity);
    expectPrinted(row.value, value);
    expectLimit(row.low, low);
    expectLimit(row.high, high);
    expect([row.unit, row.verdict]).toEqual([unit, verdict]);
  });
});

describe("a given value replaces", () => {
  const perfect = "cooling time of the thickest place, perfect contact";
  test.each<readonly [string, WindowInput, string, string]>([
    // By hand [C]: 6.5231 · ln(4/π · 190/55), then 6.5231 · ln(4/π · 180/70), the second term added.
    ["the material's melt temperature", { ...bottle, "product.meltTemperature": 200 }, perfect, "9.662"],
    ["the material's demold temperature", { ...bottle, "product.demoldTemperature": 80 }, perfect, "7.736"],
    // By hand [C]: 6.5231 · ln(4/π · 170/45).
    ["the material's mold temperature", { ...bottle, "product.moldTemperature": 20 }, perfect, "10.246"],
    // Choked flow throughout, V Δp/(R T C p ρ₀) [C]: 0.8e-3 · 6e5/(287.05 · 293.15 · 5e-8 · 8.51325e5 · 1.185)
    [
      "the usual critical ratio of an air path",
      { ...bottle, "product.airCriticalRatio": 0.9 },
      "fill time, isothermal",
      "0.11309",
    ],
  ])("%s", (_name, input, quantity, value) => {
    expectPrinted(rowOf(input, quantity).value, value);
  });

  test("the default contact, which is 1000 W/(m² K) and named as an assumption", () => {
    // Common practice, no published source.
    const { "station.moldContact": contact, ...withoutContact } = bottle;
    expect(contact).toBe(1000);
    expectPrinted(rowOf(withoutContact, "cooling time of the thickest place, hottest point").value, "14.514");
    expect(rowOf(withoutContact, "contact of wall and mold, assumed").value).toBe(1000);
  });
});
