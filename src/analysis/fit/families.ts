// All families that a fit compares.
import { gamma } from "./gammaFamily.ts";
import { exponential, lognormal, normal, uniform } from "./plainFamilies.ts";
import { triangular } from "./triangularFamily.ts";
import { weibull } from "./weibullFamily.ts";

export const families = [normal, lognormal, gamma, weibull, exponential, triangular, uniform] as const;
