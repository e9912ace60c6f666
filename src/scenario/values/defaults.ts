// The defaults of the keys that a cell needs, each with its reason.

export const defaults = {
  "product.flash": {
    value: "0 g",
    reason:
      "without flash the shot is the mass of the parts alone; give it, because every extrusion-blown part has some",
  },
  "delivery.rechargeStarts": { value: "valve-neutral", reason: "the screw needs only a closed port to recharge" },
  "delivery.shotFor": { value: "served", reason: "a recharge replaces what was just delivered" },
  "valve.dispatch": {
    value: "first-ready",
    reason: "the first station that waits gets the shot, so that no station waits for another",
  },
  "stations.*.priority": { value: 1, reason: "all stations rank equally" },
  "stations.*.steps.remove.by": { value: "machine", reason: "most cells remove parts by machine" },
  "stations.*.steps.clear.by": { value: "machine", reason: "an operator is called only where one is named" },
  "stops.*.clock": { value: "working", reason: "a resource that stands still does not wear" },
  "stops.*.by": { value: "itself", reason: "a repair waits for an operator only where one is named" },
  "stops.*.start": { value: "running", reason: "a run is a piece of the life of a cell that has run before" },
  "stops.*.step": { value: "hold", reason: "a machine that fails stops where it is" },
  "takeaway.*.places": { value: 1, reason: "one part at a time" },
  "takeaway.*.buffer": { value: 0, reason: "room to wait is counted only where it is given" },
  "takeaway.*.by": { value: "machine", reason: "an operator is called only where one is named" },
  "calendar.at": { value: "00:00", reason: "a week is read from midnight to midnight" },
  "calendar.breaks": { value: "run on", reason: "an automatic cell runs while its operators rest" },
  "crew.operators": { value: 0, reason: "no operator is needed while every removal is by machine" },
  "run.length": { value: "8 h", reason: "one shift" },
  "run.replications": { value: 20, reason: "enough for a stable interval in a short time" },
  "run.seed": { value: "1", reason: "the same scenario gives the same bytes" },
  "run.warmup": { value: "auto", reason: "the warm-up is detected in the run itself and left out" },
  "run.start": {
    value: "running",
    reason: "a cell is judged in production; write `cold` to begin with an empty screw",
  },
} as const satisfies Readonly<Record<string, { readonly value: unknown; readonly reason: string }>>;

/** Where a stop does not say whether its repair waits for a shift, it depends on `by`. */
export function shiftAssumed(by: unknown): { readonly value: "in" | "any"; readonly reason: string } {
  return by === "operator"
    ? { value: "in", reason: "operators are present on their shifts; write `any` where one is on call" }
    : { value: "any", reason: "a repair without an operator goes on outside shifts" };
}

/** Of a screw that turns while every station is stopped; only for continuous extrusion with stops. */
export const screwAssumed = {
  value: "never",
  reason: "plants differ in when they turn the screw off; about ten minutes are common practice, no published source",
} as const;

/** Of the travel of molds; only for continuous extrusion with several stations. */
export const dieZoneAssumed = {
  value: "shared",
  reason: "on most machines one mold travels out while the next travels in; common practice, no published source",
} as const;

export type DefaultPath = keyof typeof defaults;
