// The sources of the material table, each spelled once.
import { dataFrom } from "./datum.ts";

/** The value is read from the table; its range is from memory of a handbook. */
export const crawford = dataFrom(
  "Crawford, Plastics Engineering, 3rd ed., 1998, table 1.8; range from memory of Osswald et al., International Plastics Handbook, 2006",
  "read",
);
export const handbook = dataFrom(
  "from memory of Osswald et al., International Plastics Handbook, 2006, and Lee, Plastic Blow Molding Handbook, 1990",
  "medium",
);
/** About the middle of the range between melt and solid. */
export const middle = dataFrom(
  "from memory of Osswald et al., International Plastics Handbook, 2006, solid and melt; solid read for HDPE and PC in Thermal Properties of Polymers, a collection of measurements, and for PP in Martienssen & Warlimont, Handbook of Condensed Matter and Materials Data, 2005, table 3.3-6",
  "medium",
);
export const measured = dataFrom(
  "about the middle of the range in Thermal Properties of Polymers, a collection of measurements; from memory of Osswald et al., International Plastics Handbook, 2006",
  "medium",
);
export const heatCapacity = dataFrom(
  "from memory of Gaur & Wunderlich, Heat Capacity of Linear Macromolecules, Journal of Physical and Chemical Reference Data 10 to 12, 1981 to 1983; solid PVC read in Chang, Journal of Research of the National Bureau of Standards 82, 1977, p. 9",
  "medium",
);
export const crystals = dataFrom(
  "from memory of Wunderlich, Macromolecular Physics 3, 1980: heat of fusion of a crystal times the usual crystallinity",
  "medium",
);
export const rheology = dataFrom(
  "from memory of Osswald et al., International Plastics Handbook, 2006, for blow molding melt flow rates (ISO 1133)",
  "low",
);
export const fracture = dataFrom(
  "from memory of Vlachopoulos & Alam, Critical stress and recoverable shear for polymer melt fracture, Polymer Engineering and Science 12, 1972, p. 184",
  "medium",
);
/** The same range, for materials that the paper did not measure. */
export const fractureByAnalogy = dataFrom(
  "by analogy, from memory of Vlachopoulos & Alam, Polymer Engineering and Science 12, 1972, p. 184",
  "low",
);
export const stability = dataFrom("from memory of Titow, PVC Technology, 4th ed., 1984, on heat stability", "low");
