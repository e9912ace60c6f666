// What is assumed where a scenario is silent, each with its reason.

export const defaults = {
  "product.flash": {
    value: "0 g",
    reason: "without it the shot is the parts alone; every extrusion-blown part has some flash, so better give it",
  },
  "delivery.rechargeStarts": { value: "valve-neutral", reason: "the screw needs only a closed port to push back" },
  "delivery.shotFor": { value: "served", reason: "a recharge replaces what was just delivered" },
  "valve.dispatch": { value: "first-ready", reason: "whoever waits gets the shot; no station is held up by another" },
  "stations.*.priority": { value: 1, reason: "all stations rank alike until told otherwise" },
  "stations.*.steps.remove.by": { value: "machine", reason: "most cells take parts out without a hand" },
  "stations.*.steps.clear.by": { value: "machine", reason: "a hand is only called where one is named" },
  "stops.*.clock": { value: "working", reason: "what stands still does not wear" },
  "stops.*.by": { value: "itself", reason: "a repair waits for nobody until told so" },
  "stops.*.step": { value: "hold", reason: "a machine that fails stands where it is" },
  "takeaway.*.places": { value: 1, reason: "one part at a time" },
  "takeaway.*.buffer": { value: 0, reason: "no room to wait is assumed that nobody has measured out" },
  "takeaway.*.by": { value: "machine", reason: "a hand is only called where one is named" },
  "calendar.at": { value: "00:00", reason: "a week is looked at from midnight to midnight" },
  "calendar.breaks": { value: "run on", reason: "an automatic cell goes on while people rest" },
  "crew.operators": { value: 0, reason: "nobody is needed while every removal is by machine" },
  "run.length": { value: "8 h", reason: "one shift" },
  "run.replications": { value: 20, reason: "enough for an interval that is neither lucky nor slow to get" },
  "run.seed": { value: "1", reason: "the same scenario gives the same bytes" },
  "run.warmup": { value: "auto", reason: "the start-up is found from the run itself and left out" },
  "run.start": { value: "running", reason: "a cell is judged at work; say `cold` to begin with an empty screw" },
} as const satisfies Readonly<Record<string, { readonly value: unknown; readonly reason: string }>>;

/** Where a stop does not say whether its repair waits for a shift, that goes by who repairs. */
export function shiftAssumed(by: unknown): { readonly value: "in" | "any"; readonly reason: string } {
  return by === "operator"
    ? { value: "in", reason: "operators are there on their shifts; say `any` where one is on call" }
    : { value: "any", reason: "what needs nobody goes on at night as well" };
}

/** Of a screw that turns while every station is stopped; only where there are stops and a die that never stops. */
export const screwAssumed = {
  value: "never",
  reason: "when somebody turns the screw off is his habit; some ten minutes are common practice, no published source",
} as const;

export type DefaultPath = keyof typeof defaults;
