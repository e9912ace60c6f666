// How an elasticity was found, or why there is none: the texts of the column `elasticity_method` with their meanings.

interface MethodText {
  readonly name: string;
  readonly meaning: string;
}

export const elasticityMethods = {
  exact: {
    name: "critical path, exact for a fixed order",
    meaning: "Minus the critical share of the whole step.",
  },
  estimate: {
    name: "critical path, estimate (equal stations, first-ready)",
    meaning: "The same where equal stations may change their order.",
  },
  difference: {
    name: "paired finite difference",
    meaning: "Replications with the step 2 % longer and 2 % shorter; half width at most 0.05.",
  },
  wide: {
    name: "paired finite difference, half width above 0.05",
    meaning: "The same, not settled; `--sensitivity full` and more replications make it narrower.",
  },
  single: { name: "paired finite difference, one replication", meaning: "The same without an interval." },
  beyond: {
    name: "none: half the work of the run is spent",
    meaning: "Steps with larger critical shares took all reruns; `--sensitivity full` runs this step as well.",
  },
  short: {
    name: "none: fewer than 8 replications",
    meaning: "Reruns take at most half as many replications as the run, and a step needs four.",
  },
  minor: {
    name: "none: not a leading step",
    meaning: "Its critical share is below 0.01, or five steps have larger ones.",
  },
  stop: { name: "none: time of a stop", meaning: "A stop is not a step of the cycle." },
  off: { name: "none: sensitivity is off", meaning: "`--sensitivity off` makes no reruns." },
  noParts: { name: "none: no parts were made", meaning: "Without parts there is no output to compare." },
} as const satisfies Readonly<Record<string, MethodText>>;
