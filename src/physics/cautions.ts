// What no computed figure replaces, shown wherever step times are.

export interface Caution {
  readonly title: string;
  /** What it is to the reader; the titles carry no claim that anything here complies with them. */
  readonly note: string;
}

/** Titles only: no compliance is claimed. */
export const safetyStandards: readonly Caution[] = [
  {
    title: "EN 422:2009, Plastics and rubber machines – Blow moulding machines – Safety requirements",
    note: "The European standard for these machines.",
  },
  {
    title:
      "ANSI/PLASTICS B151.31-2014 (R2020), Safety Requirements for the Manufacture and Use of Blow Molding Machines",
    note: "It replaced B151.15, which is withdrawn.",
  },
  { title: "29 CFR 1910.147", note: "Lockout and tagout of stored energy." },
  { title: "29 CFR 1910.212", note: "Guards of machines." },
  { title: "29 CFR 1910.219", note: "Guards of drives." },
  { title: "ISO 12100", note: "Risk assessment of machines. ISO 20430 is for injection molding only: not this." },
  { title: "ISO 13849-1", note: "Safety-related parts of controls, such as the interlock of gate and blow air." },
];

/** Said with every computed time. */
export const cautions: readonly string[] = [
  "Computed times are never safe limits.",
  "Blow pressure is vented before a mold opens.",
  "Gates and interlocks stay in use.",
  "Stored energy is locked out before anyone reaches in.",
  "Local codes, the machine's manual and licensed, qualified people come first.",
];
