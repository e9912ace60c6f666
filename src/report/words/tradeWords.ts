// The trade's nouns for steps and resources in sentences.

const nouns: Readonly<Record<string, string>> = {
  recharge: "recharging",
  "shift to port": "shifting to the port",
  "shift to head": "shifting to the head",
  "shift to neutral": "shifting to neutral",
  "fill beyond the shot": "filling beyond the shot",
  drop: "parison drop",
  close: "closing",
  blow: "blowing",
  cool: "cooling",
  vent: "venting",
  open: "opening",
  remove: "removal",
  parison: "extruding a parison",
  "travel in": "travel in",
  "heat up": "heating up",
  purge: "purging",
};

/** A step that the user named keeps its name. */
export function nounOf(step: string): string {
  if (step.startsWith("walk to ")) return `walk to ${nounOf(step.slice("walk to ".length))}`;
  return nouns[step] ?? step;
}

/** "cooling, left and right"; a server with one step of its own name is named once. */
export function stepOf(step: string, resources: readonly string[]): string {
  const names = namesOf(resources);
  return names === step ? names : `${nounOf(step)}, ${names}`;
}

const owners: Readonly<Record<string, string>> = {
  plasticator: "the screw",
  valve: "the valve",
  ram: "the ram",
  chambers: "the chambers",
  "die zone": "the die zone",
  crew: "the crew",
  stations: "the stations",
  masks: "the masks",
};

/** A station goes by its own name. */
export function ownerName(resource: string): string {
  return owners[resource] ?? resource;
}

const mostNames = 3;

/** "left and right"; above three names only their number. */
export function namesOf(resources: readonly string[]): string {
  if (resources.length > mostNames) return `all ${resources.length} stations`;
  const last = ownerName(resources.at(-1) ?? "");
  return resources.length < 2 ? last : `${resources.slice(0, -1).map(ownerName).join(", ")} and ${last}`;
}

/** A circuit of the ideal cycle by the words of the screen. */
export function circuitName(circuit: string): string {
  return circuit.replace(/^plasticator/u, "screw");
}
