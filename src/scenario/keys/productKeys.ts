// The bottle and what it is made of; only its masses bear on the cell so far, the rest describes it for the process window.
import { flash } from "#scenario/values/flashLeaf.ts";
import { defaulted, eitherOr, mapping, optional, required } from "#scenario/values/key.ts";
import { oneOf, text } from "#scenario/values/plainLeaf.ts";
import { mass, quantity } from "#scenario/values/quantityLeaf.ts";

/** A micrometer: no blown wall is thinner, and its cooling could not be calculated. */
const thinnestWall = 1e-6;

const material = mapping(
  () => ({
    name: optional(text("HDPE"), "Name to show."),
    density: optional(quantity("density", { above: 0 }), "Density of the solid at room temperature."),
    meltDensity: optional(
      quantity("density", { above: 0 }),
      "Density of the melt: what turns a shot's mass into volume.",
    ),
    conductivity: optional(quantity("conductivity", { atLeast: 0.01, atMost: 1000 }), "Thermal conductivity."),
    specificHeat: optional(quantity("specificHeat", { above: 0 }), "Specific heat."),
    diffusivity: optional(
      quantity("diffusivity", { above: 0 }),
      "Effective thermal diffusivity while cooling in the mold.",
    ),
    heatOfFusion: optional(quantity("specificEnergy"), "Heat of fusion."),
    viscosity: optional(quantity("viscosity", { above: 0 }), "Zero-shear viscosity of the melt: it decides the sag."),
    dieViscosity: optional(
      quantity("viscosity", { above: 0 }),
      "Viscosity at a shear rate of 100 1/s: with `powerLawIndex` it decides the stress in the die.",
    ),
    powerLawIndex: optional(
      quantity("share", { atLeast: 0.1, atMost: 1 }),
      "Index n of the power law around that rate, such as `45 %`.",
    ),
    fractureStress: optional(
      quantity("pressure", { above: 0 }),
      "Stress at the die wall from which melt fracture is to be expected, such as `0.25 MPa`.",
    ),
    meltTemperature: optional(quantity("temperature"), "Usual melt temperature."),
    moldTemperature: optional(quantity("temperature"), "Usual mold temperature."),
    demoldTemperature: optional(quantity("temperature"), "Temperature at which a part keeps its shape."),
    maxTimeAtHeat: optional(
      quantity("time", { above: 0 }),
      "Longest time at melt temperature before the material suffers.",
    ),
  }),
  "{ name: HDPE, meltDensity: 760 kg/m³ }",
);

export const product = mapping(
  () => ({
    material: optional(eitherOr(text("HDPE"), material), "Name from the catalogue, or a mapping with own values."),
    partMass: optional(
      mass({ above: 0 }),
      "Mass of one finished part; needed by rates, and for everything in kilograms.",
    ),
    flash: defaulted(
      flash,
      "product.flash",
      "Flash that leaves the mold with one part: a mass, or a share of part or shot.",
    ),
    wall: optional(
      mapping(
        () => ({
          mean: optional(quantity("length", { atLeast: thinnestWall }), "Mean wall thickness."),
          thickest: optional(
            quantity("length", { atLeast: thinnestWall }),
            "Thickest place: it controls the cooling time.",
          ),
        }),
        "{ mean: 0.9 mm, thickest: 1.3 mm }",
      ),
      "Wall of the blown part.",
    ),
    color: optional(text("natural"), "Color, for changes."),
    volume: optional(quantity("volume", { above: 0 }), "Brimful volume: air to blow, water to fill."),
    projectedArea: optional(
      quantity("area", { above: 0 }),
      "Area that the blow pressure forces the mold open over, per cavity.",
    ),
    length: optional(quantity("length", { above: 0 }), "Length of the part."),
    diameter: optional(quantity("length", { above: 0 }), "Largest diameter of the part."),
    parisonLength: optional(quantity("length", { above: 0 }), "Length of the parison at the close."),
    pinchLength: optional(quantity("length"), "Pinch-off length, per cavity."),
    pinchLoad: optional(quantity("lineLoad"), "Force per length of pinch-off."),
    die: optional(
      mapping(
        () => ({
          diameter: optional(quantity("length", { above: 0 }), "Diameter of the die bushing."),
          mandrel: optional(quantity("length", { above: 0 }), "Diameter of the mandrel."),
          gap: optional(quantity("length", { above: 0 }), "Die gap."),
        }),
        "{ diameter: 30 mm, mandrel: 27 mm }",
      ),
      "Die that the parison leaves.",
    ),
    meltTemperature: optional(quantity("temperature"), "Melt temperature at the die."),
    moldTemperature: optional(quantity("temperature"), "Temperature of the cavity's wall."),
    demoldTemperature: optional(quantity("temperature"), "Temperature to which the wall has cooled at opening."),
    coolingTo: optional(
      oneOf("inside", "mean"),
      "What must have cooled to it: the inside face of the thickest place (`inside`, where absent), or its mean.",
    ),
    insideAir: optional(
      mapping(
        () => ({
          transfer: required(quantity("heatTransfer"), "Heat transfer from the wall to the air inside."),
          temperature: optional(quantity("temperature"), "Temperature of that air; 20 °C where absent."),
        }),
        "{ transfer: 30 W/(m² K), temperature: 20 °C }",
      ),
      "Air inside that cools as well; where absent the inside counts as insulated.",
    ),
    blowPressure: optional(quantity("pressure", { above: 0 }), "Gauge pressure of the blow air."),
    ventTo: optional(quantity("pressure", { above: 0 }), "Gauge pressure under which the mold may open."),
    airConductance: optional(quantity("conductance", { above: 0 }), "Sonic conductance of the blow and vent path."),
    airCriticalRatio: optional(
      quantity("share", { above: 0, atMost: 1 }),
      "Critical pressure ratio of that path, such as `30 %`.",
    ),
    airSupply: optional(quantity("pressure", { above: 0 }), "Gauge pressure of the air before the blow valve."),
    thicknessSwell: optional(
      quantity("share", { above: 0 }),
      "Wall of the free parison over the die gap, such as `180 %`.",
    ),
    sagLimit: optional(
      quantity("share", { above: 0 }),
      "Largest growth of the parison in length that the bottle bears.",
    ),
  }),
  "{ partMass: 42 g, flash: 30 % of part }",
);
