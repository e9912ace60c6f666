// One invented bottle of 0.8 L on an invented two-cavity machine, with every key that the process window asks for.
import { highDensityPolyethylene } from "#physics/highDensityPolyethylene.ts";
import type { WindowInput } from "#physics/windowInput.ts";

/** No pinch line load was published, so that a user may well not know it. */
export const bottleWithoutPinchLoad = {
  material: highDensityPolyethylene,
  "product.partMass": 0.042,
  "product.flash": 0.0126,
  "product.wall.mean": 0.9e-3,
  "product.wall.thickest": 1.3e-3,
  "product.volume": 0.8e-3,
  "product.projectedArea": 0.018,
  "product.length": 0.22,
  "product.diameter": 0.08,
  "product.parisonLength": 0.26,
  "product.pinchLength": 0.06,
  "product.die.diameter": 0.03,
  "product.die.mandrel": 0.027,
  "product.thicknessSwell": 1.4,
  "product.sagLimit": 0.1,
  "product.blowPressure": 6e5,
  "product.ventTo": 1e4,
  "product.airConductance": 5e-8,
  "product.airSupply": 7.5e5,
  "station.cavities": 2,
  "station.moldContact": 1000,
  "station.clampForce": 6e4,
  "station.steps.drop": 1.2,
  "station.steps.close": 0.6,
  "station.steps.blow": 0.5,
  "station.steps.cool": 12,
  "station.steps.vent": 0.5,
  "station.steps.open": 0.6,
  "station.steps.remove": 0.8,
  "delivery.plasticatingRate": 80 / 3600,
  "delivery.shotCapacity": 0.4,
  "delivery.screwDiameter": 0.0635,
  "delivery.drivePower": 15_000,
  "delivery.holdUp": 1.2,
  "delivery.throughput": 60 / 3600,
} as const satisfies WindowInput;

export const bottle: WindowInput = { ...bottleWithoutPinchLoad, "product.pinchLoad": 1e5 };
