// Published values of the parison and the die.
import { annularDie } from "#physics/parison/annularDie.ts";
import { blownWall } from "#physics/parison/blownWall.ts";
import { diameterSwell } from "#physics/parison/diameterSwell.ts";
import { elongationalViscosity } from "#physics/parison/elongationalViscosity.ts";
import { materialAt } from "#physics/parison/materialAt.ts";
import { powerLawShearRate } from "#physics/parison/powerLawShearRate.ts";
import { wallShearStress } from "#physics/parison/wallShearStress.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

const crawford = valuesOf("parison and die", "R", "Crawford, Plastics Engineering, 3rd ed., 1998, example 4.4");

/**
 * Share of the apparent rate in a slit at which the viscosity times the apparent rate is the stress: η(e γ) γ = τ. For a power law with
 * η = K γ^(n − 1) this is e = (τ/(K γⁿ))^(1/(n − 1)).
 */
function representativeShare(index: number): number {
  const apparent = 100;
  const relative = wallShearStress(1, index, powerLawShearRate(apparent, index)) / wallShearStress(1, index, apparent);
  return relative ** (1 / (index - 1));
}

/** Slope of the logarithm of the viscosity of LDPE in the die against temperature, 1/K. */
function temperatureCoefficient(): number {
  const ldpe = ownMaterial(materials.get("LDPE")!, { powerLawIndex: 0.3286 });
  const logarithm = (temperature: number) => Math.log(materialAt(ldpe, temperature).dieViscosity.value);
  return logarithm(195.5) - logarithm(194.5);
}

export const parison: readonly PublishedValue[] = [
  crawford(
    "wall of a bottle of 50 mm from a 30/27 mm die, thickness swell 2",
    "2.42",
    "mm",
    () => 1000 * blownWall(annularDie(0.03, 0.027), 2, 0.05),
  ),
  crawford("diameter swell at thickness swell 2", "1.414", "1", () => diameterSwell(2)),
  valuesOf(
    "parison and die",
    "R",
    "Petrie, Extensional flows, p. 613, on Trouton, Proceedings of the Royal Society A 77, 1906, p. 426",
  )("elongational viscosity over shear viscosity", "3", "1", () => elongationalViscosity(1), {
    share: 1e-9,
    because: "the ratio is exact",
  }),
  valuesOf("parison and die", "M", "Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 2.1")(
    "representative shear rate of a slit over the apparent one",
    "0.772",
    "1",
    () => representativeShare(0.4),
    { share: 0.02, because: "one value stands for all melts; here n = 0.4" },
  ),
  valuesOf(
    "parison and die",
    "R",
    "Rao and Schumacher, Design Formulas for Plastics Engineers, 2nd ed., 2004, example of section 1.3.7",
  )("temperature coefficient of the viscosity of LDPE, n = 0.3286", "-0.00863", "1/K", temperatureCoefficient, {
    share: 0.01,
    because: "the grade of the example against the middle of the catalog",
  }),
];
