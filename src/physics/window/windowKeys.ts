// The key table of the process window: one row for each number, named by its path in a scenario.
import type { CommonProperty } from "#physics/materials/material.ts";
import type { WindowKeyRow } from "./windowKeyRow.ts";

export const windowKeys = {
  "product.partMass": {
    dimension: "mass",
    above: 0,
    meaning: "Mass of one finished part; needed by rates, and for everything in kilograms.",
  },
  "product.flash": {
    dimension: "mass",
    meaning: "Flash that leaves the mold with one part: a mass, or a share of part or shot.",
    from: "station",
  },
  // No blown wall is thinner than 1 µm, and its cooling cannot be computed.
  "product.wall.mean": { dimension: "length", example: "0.9 mm", atLeast: 1e-6, meaning: "Mean wall thickness." },
  "product.wall.thickest": {
    dimension: "length",
    example: "1.3 mm",
    atLeast: 1e-6,
    meaning: "Thickness of the thickest place. It sets the cooling time.",
  },
  "product.volume": {
    dimension: "volume",
    example: "750 mL",
    above: 0,
    meaning: "Brimful volume of the part.",
  },
  "product.projectedArea": {
    dimension: "area",
    example: "180 cm²",
    above: 0,
    meaning: "Projected area of one cavity, on which the blow pressure acts to open the mold.",
  },
  "product.length": { dimension: "length", example: "220 mm", above: 0, meaning: "Length of the part." },
  "product.diameter": { dimension: "length", example: "85 mm", above: 0, meaning: "Largest diameter of the part." },
  "product.parisonLength": {
    dimension: "length",
    example: "300 mm",
    above: 0,
    meaning: "Length of the parison before it sags.",
  },
  "product.pinchLength": { dimension: "length", example: "90 mm", meaning: "Pinch-off length, per cavity." },
  "product.pinchLoad": { dimension: "lineLoad", meaning: "Force per length of pinch-off." },
  "product.die.diameter": { dimension: "length", example: "30 mm", above: 0, meaning: "Diameter of the die bushing." },
  "product.die.mandrel": {
    dimension: "length",
    example: "27 mm",
    above: 0,
    meaning: "Diameter of the mandrel.",
    otherwise: {
      keys: ["product.die.diameter", "product.die.gap"],
      formula: (diameter: number, gap: number) => diameter - 2 * gap,
      words: "the diameter of the bushing less twice the gap",
      reason: "the gap is the same all around",
    },
  },
  "product.die.gap": { dimension: "length", example: "1.5 mm", above: 0, meaning: "Die gap." },
  "product.meltTemperature": {
    dimension: "temperature",
    example: "190 °C",
    meaning: "Melt temperature at the die.",
    otherwise: { material: "meltTemperature", words: "the material's", reason: "the middle of its usual range" },
  },
  "product.moldTemperature": {
    dimension: "temperature",
    example: "15 °C",
    meaning: "Temperature of the cavity's wall.",
    otherwise: { material: "moldTemperature", words: "the material's", reason: "the middle of its usual range" },
  },
  "product.demoldTemperature": {
    dimension: "temperature",
    example: "65 °C",
    meaning: "Temperature to which the wall has cooled when the mold opens.",
    otherwise: { material: "demoldTemperature", words: "the material's", reason: "the middle of its usual range" },
  },
  "product.insideAir.transfer": {
    dimension: "heatTransfer",
    example: "30 W/(m² K)",
    required: true,
    meaning: "Heat transfer from the wall to the air inside.",
  },
  "product.insideAir.temperature": {
    dimension: "temperature",
    example: "20 °C",
    meaning: "Temperature of the air inside the part.",
    otherwise: { value: 20, words: "20 °C", reason: "blow air comes at about room temperature" },
  },
  "product.blowPressure": { dimension: "pressure", above: 0, meaning: "Gauge pressure of the blow air." },
  "product.ventTo": {
    dimension: "pressure",
    example: "0.2 bar",
    above: 0,
    meaning: "Gauge pressure below which the mold may open.",
  },
  "product.airConductance": {
    dimension: "conductance",
    above: 0,
    meaning: "Sonic conductance of the blow and vent path.",
  },
  "product.airCriticalRatio": {
    dimension: "share",
    isRatio: true,
    example: "30 %",
    above: 0,
    atMost: 1,
    meaning: "Critical pressure ratio of the blow and vent path.",
    otherwise: { value: 0.3, words: "30 %", reason: "common practice, no published source" },
  },
  "product.airSupply": {
    dimension: "pressure",
    example: "8 bar",
    above: 0,
    meaning: "Gauge pressure of the air before the blow valve.",
  },
  "product.flush.time": {
    dimension: "time",
    example: "3 s",
    required: true,
    meaning: "Time of each cycle in which air flows through the part.",
  },
  "product.flush.conductance": {
    dimension: "conductance",
    above: 0,
    required: true,
    meaning: "Sonic conductance of the outlet during the flush.",
  },
  "product.thicknessSwell": {
    dimension: "share",
    isRatio: true,
    example: "180 %",
    atLeast: 1,
    atMost: 10,
    remedy:
      "Write the wall of the free parison over the die gap, such as `180 %` or `1.8`. A melt swells, so it is at least `100 %`.",
    meaning: "Wall of the free parison over the die gap: `180 %` or the ratio `1.8`.",
  },
  "product.sagLimit": {
    dimension: "share",
    isRatio: true,
    example: "10 %",
    above: 0,
    atMost: 1,
    remedy: "Write the growth over the length without sag, such as `10 %` or `0.1`.",
    meaning: "Largest sag of the parison that the part allows, over the parison's length: `10 %` or the ratio `0.1`.",
  },

  "station.cavities": {
    dimension: "count",
    meaning: "Cavities of the mold, and parisons of its manifold.",
    from: "station",
  },
  "station.moldContact": {
    dimension: "heatTransfer",
    atLeast: 1,
    meaning: "Heat transfer from part to mold, for the process window.",
    otherwise: {
      value: 1000,
      words: "1000 W/(m² K)",
      reason: "common practice, no published source; the cooling time with perfect contact is a row of its own",
    },
  },
  "station.airDelay": {
    dimension: "time",
    example: "0.1 s",
    meaning: "Time from the start of blow or vent until air flows: valve and line.",
    otherwise: { value: 0.1, words: "0.1 s", reason: "common practice, no published source" },
  },
  "station.deadVolume": {
    dimension: "volume",
    example: "60 mL",
    meaning: "Volume of hose and pin behind the blow valve, for each part. It is filled and vented with the part.",
    otherwise: { value: 0, words: "0 mL", reason: "it depends on the length of the hoses" },
  },
  "station.compressorEfficiency": {
    dimension: "share",
    isRatio: true,
    example: "70 %",
    above: 0,
    atMost: 1,
    meaning: "Isentropic work over the electrical work of the compressor.",
    otherwise: { value: 0.7, words: "70 %", reason: "common practice, no published source" },
  },
  "station.moldResistance": {
    dimension: "thermalResistance",
    meaning:
      "Thermal resistance from the cavity's wall to the cooling water. The mold gets hotter with the heat load, and `moldTemperature` is that without a load. Where absent, the mold temperature does not change with the rate.",
  },
  "station.waterRise": {
    dimension: "temperatureDifference",
    example: "3 °C",
    above: 0,
    meaning: "Rise of the cooling water from inlet to outlet of the mold.",
    otherwise: { value: 3, words: "3 °C", reason: "common practice, no published source" },
  },
  "station.clampForce": {
    dimension: "force",
    above: 0,
    meaning: "Clamp force of the machine, for the process window.",
  },
  "station.steps.drop": {
    dimension: "time",
    meaning: "Mean time of the parison drop; under continuous extrusion, of the growth of a parison.",
    from: "cycle",
  },
  "station.hang": {
    dimension: "time",
    meaning: "Mean time from the end of the drop to the closed mold, extra steps included.",
    otherwise: {
      keys: ["station.steps.close"],
      formula: (close: number) => close,
      words: "the close alone",
      reason: "most cells have no step between drop and close",
    },
    from: "cycle",
  },
  "station.steps.close": { dimension: "time", meaning: "Mean time of the mold closing.", from: "cycle" },
  "station.steps.blow": { dimension: "time", meaning: "Mean time of the blow.", from: "cycle" },
  "station.steps.cool": {
    dimension: "time",
    meaning: "Mean time from the end of the blow to the vent, extra steps included.",
    from: "cycle",
  },
  "station.steps.vent": { dimension: "time", meaning: "Mean time of the vent.", from: "cycle" },
  "station.steps.open": { dimension: "time", meaning: "Mean time of the mold opening.", from: "cycle" },
  "station.steps.remove": { dimension: "time", meaning: "Mean time of the removal.", from: "cycle" },
  "station.cycle": {
    dimension: "time",
    meaning:
      "Mean time of all steps of the mold in one cycle, without waits; the removal counts where the mold waits for it.",
    from: "cycle",
  },
  "station.throughput": {
    dimension: "rate",
    meaning: "Melt that passes through this mold, waits included: of the ideal cycle, or of a run.",
    from: "cycle",
  },
  "station.rejects": {
    dimension: "share",
    meaning: "Share of the parts that a run rejected; absent without a cause of rejects.",
    from: "cycle",
  },

  "delivery.plasticatingRate": {
    dimension: "rate",
    meaning: "Melt that the screw plasticates per hour; or give `recharge`.",
    from: "station",
  },
  "delivery.matchedRate": {
    dimension: "rate",
    meaning: "Plasticating rate to which a matched continuous screw is turned down.",
    otherwise: {
      keys: ["delivery.plasticatingRate"],
      formula: (rate: number) => rate,
      words: "the plasticating rate",
      reason: "all other screws turn at their full rate",
    },
    from: "cycle",
  },
  "delivery.shotCapacity": {
    dimension: "mass",
    example: "0.40 kg",
    above: 0,
    meaning: "Largest shot that the screw can hold in front of it, or capacity of an accumulator's chamber.",
  },
  "delivery.screwDiameter": {
    dimension: "length",
    example: "60 mm",
    above: 0,
    meaning: "Diameter of the screw, for the process window.",
  },
  "delivery.holdUp": {
    dimension: "mass",
    example: "2.5 kg",
    above: 0,
    meaning: "Melt between hopper and die, for the process window.",
  },
  "delivery.drivePower": {
    dimension: "power",
    above: 0,
    meaning: "Power of the screw's drive, for the process window.",
  },
  "delivery.meltRise.from": {
    dimension: "rate",
    above: 0,
    required: true,
    meaning: "Plasticating rate at which the melt has its stated temperature.",
  },
  "delivery.meltRise.rise": {
    dimension: "temperatureDifference",
    example: "4 °C",
    required: true,
    meaning: "Rise of the melt temperature when the plasticating rate increases by `per`.",
  },
  "delivery.meltRise.per": {
    dimension: "rate",
    example: "10 kg/h",
    above: 0,
    required: true,
    meaning: "Increase of the plasticating rate that raises the melt temperature by `rise`.",
  },
  "delivery.screw.channelDepth": {
    dimension: "length",
    example: "4 mm",
    above: 0,
    meaning: "Depth of the channel in the metering zone.",
  },
  "delivery.screw.helixAngle": {
    dimension: "angle",
    above: 0,
    atMost: 60,
    meaning: "Helix angle; 17.7 deg where the pitch is one diameter.",
  },
  "delivery.screw.meteringLength": {
    dimension: "length",
    example: "300 mm",
    above: 0,
    meaning: "Length of the metering zone.",
  },
  "delivery.screw.speed": {
    dimension: "speed",
    example: "60 rpm",
    above: 0,
    meaning: "Screw speed during the recharge.",
  },
  "delivery.screw.backPressure": {
    dimension: "pressure",
    example: "80 bar",
    meaning: "Gauge pressure at the end of the metering zone.",
  },
  "delivery.screw.viscosity": {
    dimension: "viscosity",
    example: "500 Pa s",
    above: 0,
    meaning: "Viscosity of the melt in the channel at its shear rate.",
  },
  "delivery.throughput": {
    dimension: "rate",
    meaning: "Melt through the screw, waits included: of the ideal cycle, or of a run.",
    from: "cycle",
  },
} as const satisfies Readonly<Record<string, WindowKeyRow>>;

type Table = typeof windowKeys;

export type WindowKey = keyof Table;

type KeyWith<Part> = { [Key in WindowKey]: Table[Key] extends Part ? Key : never }[WindowKey];

/** Numbers that the mean times of a cycle or a run give. */
export type CycleKey = KeyWith<{ readonly from: "cycle" }>;
/** Numbers that come from keys of another form. */
export type StationKey = KeyWith<{ readonly from: "station" }>;
/** Numbers that a scenario gives as a plain quantity. */
export type QuantityKey = Exclude<WindowKey, CycleKey | StationKey>;
/** Numbers that are always known, because a value or the material replaces them. */
export type AlwaysKnown = KeyWith<{
  readonly otherwise: { readonly value: number } | { readonly material: CommonProperty };
}>;
